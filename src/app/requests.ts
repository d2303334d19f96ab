/** What the native menu or the system asks the page for, answered by the same commands. */
import { fileEnding } from "../document";
import type { Host } from "../host";
import { type AppCommand, canRun } from "../panels/command";
import { tell } from "../store/actions";
import { appStore } from "../store/store";
import type { Files } from "./files";
import { takeDroppedGround } from "./import/importing";
import { takeDroppedPicture } from "./pictures/drops";
import { takeTyping } from "./typing";

export function answerHost(host: Host, files: Files, commands: readonly AppCommand[]): void {
  host.offerCommands(
    commands
      .filter(({ finderOnly }) => !finderOnly)
      .map(({ id, name, place, keys = [] }) => ({ id, name, place, keys })),
  );
  host.onRequest((request) => {
    if ("openFile" in request) return void files.openFile(request.openFile);
    if (undoneInField(request.command)) return;
    takeTyping();
    runCommand(commands, request.command);
  });
  host.onCloseAsked(() => {
    takeTyping();
    return files.mayLeave();
  });
  window.addEventListener("drop", tellStrangeDrop);
}

export function runCommand(commands: readonly AppCommand[], id: string): void {
  const command = commands.find((each) => each.id === id);
  if (command && canRun(command, appStore.getState())) command.run();
}

/** The host opens dropped project files, pictures go under the plan; about any other a person should hear. */
function tellStrangeDrop(event: DragEvent): void {
  const names = [...(event.dataTransfer?.files ?? [])].map((file) => file.name);
  if (names.length === 0 || names.some((name) => name.endsWith(".json"))) return;
  if (takeDroppedPicture(event) || takeDroppedGround(event)) return;
  tell({
    tone: "caution",
    text: `${names[0]} is not a Drysill project: their names end in ${fileEnding}. Points and surfaces of other programs come in by “Import ground…”.`,
  });
}

/** A native menu takes Ctrl+Z before the page sees it; while a field holds typing, it is the typing that goes back. */
function undoneInField(command: string): boolean {
  const act = command === "edit.undo" ? "undo" : command === "edit.redo" ? "redo" : null;
  const field = document.activeElement;
  return (
    act !== null &&
    field instanceof HTMLInputElement &&
    field.dataset.typed === "true" &&
    document.execCommand(act)
  );
}
