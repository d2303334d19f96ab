// @ts-check
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { mimeType } from "./mimeTypes.mjs";
import { pageFile } from "./pageFile.mjs";
import { contentSecurityPolicy } from "./policy.mjs";

const builtPage = join(dirname(fileURLToPath(import.meta.url)), "../../dist");

/**
 * Serves the built page on the loopback address only. Port 0 takes a free one.
 * @param {{ folder?: string, port?: number }} [options]
 * @returns {Promise<{ address: string, close: () => Promise<void> }>}
 */
export async function servePage({ folder = builtPage, port = 0 } = {}) {
  const server = createServer((request, response) => void answer(folder, request, response));
  await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => resolve(undefined));
  });
  const bound = server.address();
  if (bound === null || typeof bound === "string") throw new Error("the server has no port");
  const close = () =>
    new Promise((/** @type {(value: void) => void} */ resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
  return { address: `http://127.0.0.1:${bound.port}`, close };
}

/**
 * @param {string} folder
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 */
async function answer(folder, request, response) {
  const refuse = (/** @type {number} */ status, /** @type {string} */ why) =>
    response.writeHead(status, { "content-type": "text/plain; charset=utf-8" }).end(`${why}\n`);
  if (request.method !== "GET" && request.method !== "HEAD") return refuse(405, "Only GET is answered here.");
  // A name that other machines resolve to this one (rebinding) must not read the page.
  if (!/^(127\.0\.0\.1|localhost)(:\d+)?$/.test(request.headers.host ?? ""))
    return refuse(403, "Wrong host.");
  const path = (request.url ?? "/").replace(/[?#].*$/s, "");
  const file = pageFile(folder, path);
  if (file === null) return refuse(400, "Not a path of this page.");
  try {
    const body = await readFile(file);
    response.writeHead(200, {
      "content-type": mimeType(file),
      "content-length": body.length,
      "content-security-policy": `${contentSecurityPolicy}; frame-ancestors 'none'`,
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cache-control": "no-cache",
    });
    response.end(request.method === "HEAD" ? undefined : body);
  } catch {
    refuse(404, "There is no such file.");
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const port = Number(process.argv[2] ?? 0);
  const { address } = await servePage({ port });
  console.log(`Drysill's page is at ${address}/`);
}
