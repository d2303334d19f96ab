import { basename, dirname, join } from "node:path";
import { app, dialog, Menu, session } from "electron";
import type { OfferedCommand } from "../src/host/host";
import { pageAddress, pageOrigin, registerScheme, servePageFiles } from "./appProtocol";
import { fileOfArguments } from "./argumentFile";
import { shownFolder } from "./failureWords";
import { FileTokens } from "./fileTokens";
import { lockDown, refuseNetwork, refusePermissions } from "./lockdown";
import { type MainWindow, makeMainWindow } from "./mainWindow";
import { menuTemplate } from "./menu";
import { openDoor } from "./pageDoor";
import { ProjectFiles } from "./projectFiles";
import { RecentFiles } from "./recentFiles";
import { Recovery } from "./recovery";
import { Requests } from "./requests";
import { isOurPage } from "./sender";

/** Set once the program runs; until then files to open wait here. */
let openFile: (path: string) => void = (path) => filesToOpen.push(path);
const filesToOpen: string[] = [];
const askedFor = fileOfArguments(process.argv, process.cwd());
if (askedFor !== null) filesToOpen.push(askedFor);

app.on("open-file", (event, path) => {
  event.preventDefault();
  openFile(path);
});

for (const name of [
  "disable-background-networking",
  "disable-component-update",
  "disable-domain-reliability",
]) {
  app.commandLine.appendSwitch(name);
}
registerScheme();
lockDown(app, pageAddress);
app.on("window-all-closed", () => app.quit());

if (app.requestSingleInstanceLock()) void app.whenReady().then(run);
else app.quit();

async function run(): Promise<void> {
  const inUserData = (name: string) => join(app.getPath("userData"), name);
  servePageFiles(join(__dirname, "../dist"));
  refusePermissions(session.defaultSession);
  refuseNetwork(session.defaultSession, pageOrigin);

  const tokens = new FileTokens();
  const recent = await RecentFiles.load(inUserData("recent.json"));
  const recovery = new Recovery(inUserData("recovery"), tokens);
  const main = await makeMainWindow(inUserData("window.json"), async (agreed) => {
    // Saved or given up; a page that was cut off leaves its work to be found.
    if (agreed) recovery.keep(null);
    await recovery.settled();
  });
  const requests = new Requests((request) => main.say("request", request));
  const files = new ProjectFiles(main.window, tokens, recent, join(app.getAppPath(), "demo-projects"));

  let offered: readonly OfferedCommand[] = [];
  const showMenu = () => setMenu(recent, offered, requests, openFile);
  const takeCommands = (commands: readonly OfferedCommand[]) => {
    offered = commands;
    showMenu();
  };
  recent.onChange = showMenu;
  openFile = (path) => void openIn(main, files, requests, path);
  showMenu();
  attendToPage(main, files, recovery, requests, takeCommands);
  app.on("second-instance", (_event, args, folder) => {
    if (main.window.isMinimized()) main.window.restore();
    main.window.focus();
    const path = fileOfArguments(args, folder);
    if (path !== null) openFile(path);
  });
  for (const path of filesToOpen) openFile(path);
  await main.window.loadURL(pageAddress);
}

/** Opens a file that the system or the menu named, and hands it to the page. */
async function openIn(
  main: MainWindow,
  files: ProjectFiles,
  requests: Requests,
  path: string,
): Promise<void> {
  const opened = await files.openPath(path);
  if ("text" in opened) requests.send({ openFile: opened });
  else await dialog.showMessageBox(main.window, { type: "error", message: opened.failed });
}

function setMenu(
  recent: RecentFiles,
  offered: readonly OfferedCommand[],
  requests: Requests,
  open: (path: string) => void,
): void {
  const items = recent.paths.map((path) => ({
    path,
    label: `${basename(path)} – ${shownFolder(dirname(path))}`,
  }));
  const acts = {
    runCommand: (id: string) => requests.send({ command: id }),
    openRecent: open,
  };
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(process.platform, items, offered, acts)));
}

function attendToPage(
  main: MainWindow,
  files: ProjectFiles,
  recovery: Recovery,
  requests: Requests,
  takeCommands: (commands: readonly OfferedCommand[]) => void,
): void {
  const { window, guard } = main;
  openDoor(
    (event) => !window.isDestroyed() && isOurPage(event, window.webContents, pageOrigin),
    {
      openProject: () => files.openProject(),
      openRecent: (token) => files.openRecent(token),
      openPicture: () => files.openPicture(),
      recentFiles: () => files.recentFiles(),
      saveProject: (token, text) => files.saveProject(token, text),
      saveProjectAs: (name, text) => files.saveProjectAs(name, text),
      exportFile: (name, bytes) => files.exportFile(name, bytes),
      recovered: () => recovery.found(),
    },
    {
      setTitle: (name, dirty) => main.setTitle(name, dirty),
      keepUnsaved: (work) => recovery.keep(work),
      offerCommands: takeCommands,
      listening: () => requests.pageListens(),
      closeHeard: () => guard.heard(),
      closeAnswered: (may) => guard.answered(may),
      closeFailed: () => guard.failed(),
    },
  );
  window.webContents.on("render-process-gone", () => void replaceLostPage(main, recovery, requests));
}

/** A page that crashed is never left blank: the person decides whether to open it again. */
async function replaceLostPage(main: MainWindow, recovery: Recovery, requests: Requests): Promise<void> {
  main.guard.pageLost();
  requests.pageLost();
  await recovery.pageLost();
  const { response } = await dialog.showMessageBox(main.window, {
    type: "error",
    message: "The plan stopped working and has to be opened again.",
    detail: "Unsaved work is kept as it was last noted, and will be offered.",
    buttons: ["Open Again", "Close Drysill"],
    defaultId: 0,
    cancelId: 0,
  });
  if (response === 0) main.window.reload();
  else main.window.destroy();
}
