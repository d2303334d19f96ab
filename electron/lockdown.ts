import type { App, Session, WebContents } from "electron";

/** The page asks for nothing, goes nowhere, and opens nothing. */
export function lockDown(app: App, pageAddress: string): void {
  app.on("web-contents-created", (_event, contents) => refuseLeaving(contents, pageAddress));
}

function refuseLeaving(contents: WebContents, pageAddress: string): void {
  contents.setWindowOpenHandler(() => ({ action: "deny" }));
  contents.on("will-attach-webview", (event) => event.preventDefault());
  contents.on("will-redirect", (event) => event.preventDefault());
  contents.on("will-navigate", (event, address: string) => {
    if (withoutHash(address) !== pageAddress) event.preventDefault();
  });
}

/** Copying and pasting by keys and menu need no permission; everything that does is refused. */
export function refusePermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, reply) => reply(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

/** Only the page's own files, the developer tools' and data made by the page itself are ever fetched. */
export function refuseNetwork(session: Session, pageOrigin: string): void {
  const allowed = [`${pageOrigin}/`, "blob:", "data:", "devtools:"];
  session.webRequest.onBeforeRequest(({ url }, reply) =>
    reply({ cancel: !allowed.some((start) => url.startsWith(start)) }),
  );
}

const withoutHash = (address: string): string => address.replace(/#.*$/, "");
