// @ts-check
/** What the built page is made of, by file ending. */
const types = new Map([
  ["html", "text/html; charset=utf-8"],
  ["js", "text/javascript; charset=utf-8"],
  ["css", "text/css; charset=utf-8"],
  ["json", "application/json; charset=utf-8"],
  ["map", "application/json; charset=utf-8"],
  ["txt", "text/plain; charset=utf-8"],
  ["svg", "image/svg+xml"],
  ["png", "image/png"],
  ["jpg", "image/jpeg"],
  ["woff", "font/woff"],
  ["woff2", "font/woff2"],
  ["ttf", "font/ttf"],
  ["wasm", "application/wasm"],
]);

/** The MIME type of a file by its ending; plain bytes where it isn't known.
 * @param {string} path */
export function mimeType(path) {
  return types.get(path.slice(path.lastIndexOf(".") + 1).toLowerCase()) ?? "application/octet-stream";
}
