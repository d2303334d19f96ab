import type { WebContents } from "electron";

/** Who sent a message over the bridge. */
export interface Sender {
  readonly sender: WebContents;
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

/** True where a message comes from the top frame of the page we served, in the window we opened. */
export function isOurPage(
  { sender, senderFrame }: Sender,
  window: WebContents | null,
  pageOrigin: string,
): boolean {
  if (sender !== window || senderFrame === null) return false;
  return senderFrame.parent === null && senderFrame.url.startsWith(`${pageOrigin}/`);
}
