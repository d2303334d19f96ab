import { readFile } from "node:fs/promises";
import { protocol } from "electron";
import { mimeType } from "../src/start/mimeTypes.mjs";
import { pageFile } from "../src/start/pageFile.mjs";
import { contentSecurityPolicy } from "../src/start/policy.mjs";

const scheme = "drysill";
export const pageOrigin = `${scheme}://page`;
export const pageAddress = `${pageOrigin}/index.html`;

interface PageAnswer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly body: Buffer;
}

/** Must run before the app is ready. */
export function registerScheme(): void {
  const privileges = { standard: true, secure: true, supportFetchAPI: true, codeCache: true };
  protocol.registerSchemesAsPrivileged([{ scheme, privileges }]);
}

/** Serves the built page from its folder, and nothing else. `protocol.handle` came with Electron 25. */
export function servePageFiles(folder: string): void {
  if (typeof protocol.handle === "function") {
    protocol.handle(scheme, async ({ url, method }) => {
      const { status, headers, body } = await answerFor(folder, url, method);
      return new Response(new Uint8Array(body), { status, headers });
    });
    return;
  }
  protocol.registerBufferProtocol(scheme, ({ url, method }, reply) => {
    void answerFor(folder, url, method).then(({ status, headers, body }) =>
      reply({ statusCode: status, headers, mimeType: headers["content-type"], data: body }),
    );
  });
}

export async function answerFor(folder: string, url: string, method: string): Promise<PageAnswer> {
  const { host, pathname } = new URL(url);
  const file = host === "page" && method === "GET" ? pageFile(folder, pathname) : null;
  const body = file === null ? null : await readFile(file).catch(() => null);
  if (file === null || body === null) {
    return {
      status: 404,
      headers: { "content-type": "text/plain" },
      body: Buffer.from("There is no such file.\n"),
    };
  }
  const headers = {
    "content-type": mimeType(file),
    "content-security-policy": `${contentSecurityPolicy}; frame-ancestors 'none'`,
    "x-content-type-options": "nosniff",
  };
  return { status: 200, headers, body };
}
