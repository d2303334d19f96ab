/** Serving the page under its own scheme, the way old Electrons and new ones offer it. */
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { answerFor, pageAddress, servePageFiles } from "../../electron/appProtocol";

type Handler = (request: { url: string; method: string }) => Promise<Response>;
interface Reply {
  statusCode: number;
  mimeType: string;
  data: Buffer;
  headers: Record<string, string>;
}
type OldHandler = (request: { url: string; method: string }, reply: (answer: Reply) => void) => void;

const protocol = vi.hoisted(() => ({}) as { handle?: unknown; registerBufferProtocol?: unknown });
vi.mock("electron", () => ({ protocol }));

let folder: string;
beforeAll(async () => {
  folder = join(await mkdtemp(join(tmpdir(), "drysill-protocol-")), "dist");
  await mkdir(folder);
  await writeFile(join(folder, "index.html"), "<p>page</p>");
  await writeFile(join(folder, "..", "secret.txt"), "secret");
});
afterAll(() => rm(join(folder, ".."), { recursive: true, force: true }));
beforeEach(() => {
  delete protocol.handle;
  delete protocol.registerBufferProtocol;
});

describe("the page under its own scheme", () => {
  it("is served by protocol.handle where there is one", async () => {
    let handler: Handler | undefined;
    protocol.handle = (_scheme: string, given: Handler) => {
      handler = given;
    };
    servePageFiles(folder);
    const page = await handler?.({ url: pageAddress, method: "GET" });
    expect(page?.status).toBe(200);
    expect(page?.headers.get("content-type")).toBe("text/html; charset=utf-8");
    expect(page?.headers.get("content-security-policy")).toContain("default-src 'self'");
    expect(await page?.text()).toBe("<p>page</p>");
    expect((await handler?.({ url: "drysill://page/gone.js", method: "GET" }))?.status).toBe(404);
  });

  it("is served by registerBufferProtocol where there isn't", async () => {
    let handler: OldHandler | undefined;
    protocol.registerBufferProtocol = (_scheme: string, given: OldHandler) => {
      handler = given;
    };
    servePageFiles(folder);
    const page = await new Promise<Reply>((reply) => handler?.({ url: pageAddress, method: "GET" }, reply));
    expect(page).toMatchObject({ statusCode: 200, mimeType: "text/html; charset=utf-8" });
    expect(page.headers["content-security-policy"]).toContain("default-src 'self'");
    expect(page.data.toString()).toBe("<p>page</p>");
  });
});

describe("what is not the page", () => {
  it.each([
    ["a file beside the folder", "drysill://page/..%2fsecret.txt", "GET"],
    ["another host of the scheme", "drysill://elsewhere/index.html", "GET"],
    ["anything but reading", pageAddress, "POST"],
    ["a missing file", "drysill://page/gone.js", "GET"],
  ])("is not served: %s", async (_what, url, method) => {
    const { status, body } = await answerFor(folder, url, method);
    expect(status).toBe(404);
    expect(body.toString()).not.toContain("secret");
  });
});
