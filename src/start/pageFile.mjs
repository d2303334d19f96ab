// @ts-check
import { join, normalize, sep } from "node:path";

/**
 * The file of the built page that a path of an address asks for, or null where it points outside the folder
 * or can't be decoded.
 * @param {string} folder absolute
 * @param {string} urlPath as in the address: starts with a slash, may be percent-encoded
 */
export function pageFile(folder, urlPath) {
  let path;
  try {
    path = decodeURIComponent(urlPath);
  } catch {
    return null;
  }
  if (path.includes("\0") || path.includes("\\")) return null;
  const root = normalize(folder);
  const file = join(root, path.endsWith("/") ? `${path}index.html` : path);
  return file.startsWith(root + sep) ? file : null;
}
