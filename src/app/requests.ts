/** What the native menu or the system asks the page for, answered by the same commands. */
import type { Host, HostRequest } from "../host";
import type { AppCommand } from "../panels/command";
import { appStore } from "../store/store";
import type { Files } from "./files";

const commandOf: Readonly<Record<Exclude<HostRequest, object>, string>> = {
  new: "plan.new",
  open: "plan.open",
  save: "plan.save",
  "save-as": "plan.saveAs",
  "export-site-plan": "plan.exportSitePlan",
  undo: "edit.undo",
  redo: "edit.redo",
  "find-command": "help.find",
  "zoom-fit": "view.fit",
  "toggle-theme": "view.theme",
  "show-shortcuts": "help.shortcuts",
};

export function answerHost(host: Host, files: Files, commands: readonly AppCommand[]): void {
  host.onRequest((request) => {
    if (typeof request === "object") return void files.openFile(request.openFile);
    if ((request === "undo" || request === "redo") && undoneInField(request)) return;
    runCommand(commands, commandOf[request]);
  });
  host.onCloseAsked(() => files.mayLeave());
}

export function runCommand(commands: readonly AppCommand[], id: string): void {
  const command = commands.find((each) => each.id === id);
  if (command && (command.enabled?.(appStore.getState()) ?? true)) command.run();
}

/** A native menu takes Ctrl+Z before the page sees it; while a field holds typing, it is the typing that goes back. */
function undoneInField(act: "undo" | "redo"): boolean {
  const field = document.activeElement;
  return field instanceof HTMLInputElement && field.dataset.typed === "true" && document.execCommand(act);
}
