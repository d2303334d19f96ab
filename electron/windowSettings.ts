import type { BrowserWindowConstructorOptions, WebPreferences } from "electron";
import { palettes } from "../src/look/tokens";
import type { WindowPlace } from "./windowPlace";

/** The page is treated as a stranger: no Node, a world of its own for the preload, the system's sandbox. */
export const securePreferences = {
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  safeDialogs: true,
  spellcheck: false,
} as const satisfies WebPreferences;

export function windowSettings(
  place: WindowPlace,
  preload: string,
  dark: boolean,
  icon: string,
): BrowserWindowConstructorOptions {
  return {
    ...place.bounds,
    minWidth: 960,
    minHeight: 640,
    show: false,
    title: "Drysill",
    icon,
    backgroundColor: palettes[dark ? "dark" : "light"].paper,
    webPreferences: { ...securePreferences, preload },
  };
}
