import { browserHost } from "./browser";
import { electronHost, findBridge } from "./electron";
import type { Host } from "./host";

export type * from "./host";
export { readPicture } from "./pickPicture";
export { isPictureName } from "./pictureFile";

/** The Electron window's host where its bridge is there, the browser's otherwise. */
export function chooseHost(): Host {
  const bridge = findBridge();
  return bridge ? electronHost(bridge) : browserHost();
}
