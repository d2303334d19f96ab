import { join } from "node:path";
import { BrowserWindow, dialog, nativeTheme, screen } from "electron";
import { channel, type Message, type Messages } from "./channels";
import { CloseGuard } from "./closeGuard";
import { readJson, writeJson } from "./jsonFile";
import { placeWindow } from "./windowPlace";
import { windowSettings } from "./windowSettings";

export interface MainWindow {
  readonly window: BrowserWindow;
  readonly guard: CloseGuard;
  say<M extends Message>(name: M, message: Messages[M]): void;
  setTitle(name: string, dirty: boolean): void;
}

/** How long a live page may take to notice that it should close, ms. */
const patience = 4000;

/**
 * Makes the one window, still empty, where it stood the last time. `beforeClose` is waited for once closing is
 * settled; it is told whether the page agreed.
 */
export async function makeMainWindow(
  placeFile: string,
  beforeClose: (agreed: boolean) => Promise<void>,
): Promise<MainWindow> {
  const window = await placedWindow(placeFile);
  const say: MainWindow["say"] = (name, message) => {
    if (!window.isDestroyed()) window.webContents.send(channel(name), message);
  };
  const settle = async (agreed: boolean) => {
    if (window.isDestroyed()) return;
    const place = { ...window.getNormalBounds(), maximized: window.isMaximized() };
    await Promise.allSettled([writeJson(placeFile, place), beforeClose(agreed)]);
    if (!window.isDestroyed()) window.destroy();
  };
  const guard = new CloseGuard({
    askPage: () => say("closeAsked", null),
    askPerson: () => askWhetherToClose(window),
    close: (agreed) => void settle(agreed),
    patience,
  });
  window.on("close", (event) => {
    event.preventDefault();
    // A page that isn't there yet holds no work and can't be asked.
    if (window.webContents.isLoadingMainFrame()) void settle(false);
    else guard.wanted();
  });
  return { window, guard, say, setTitle: (name, dirty) => showTitle(window, name, dirty) };
}

async function placedWindow(placeFile: string): Promise<BrowserWindow> {
  const screens = [screen.getPrimaryDisplay(), ...screen.getAllDisplays()].map((display) => display.workArea);
  const place = placeWindow(await readJson(placeFile), screens);
  const preload = join(__dirname, "preload.cjs");
  const icon = join(__dirname, "../assets/icons/icon-256.png");
  const window = new BrowserWindow(windowSettings(place, preload, nativeTheme.shouldUseDarkColors, icon));
  if (place.maximized) window.maximize();
  window.once("ready-to-show", () => window.show());
  window.on("page-title-updated", (event) => event.preventDefault());
  return window;
}

function showTitle(window: BrowserWindow, name: string, dirty: boolean): void {
  const plan = name === "" ? "" : `${name}${dirty && process.platform !== "darwin" ? " (edited)" : ""} – `;
  window.setTitle(`${plan}Drysill`);
  window.setDocumentEdited(dirty);
}

async function askWhetherToClose(window: BrowserWindow): Promise<boolean> {
  const { response } = await dialog.showMessageBox(window, {
    type: "warning",
    message: "The plan hasn't answered. Close the window without saving?",
    detail: "Unsaved work is kept as it was last noted, and offered when Drysill starts the next time.",
    buttons: ["Keep Open", "Close Without Saving"],
    defaultId: 0,
    cancelId: 0,
  });
  return response === 1;
}
