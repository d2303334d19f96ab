import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { mimeType } from "../../src/start/mimeTypes.mjs";
import { pageFile } from "../../src/start/pageFile.mjs";
import { contentSecurityPolicy } from "../../src/start/policy.mjs";
import { servePage } from "../../src/start/serve.mjs";

const folder = mkdtempSync(join(tmpdir(), "drysill-serve-"));
const page = join(folder, "dist");
let server: Awaited<ReturnType<typeof servePage>>;

beforeAll(async () => {
  mkdirSync(join(page, "assets"), { recursive: true });
  writeFileSync(join(page, "index.html"), "<p>page</p>");
  writeFileSync(join(page, "assets/page.js"), "export {};");
  writeFileSync(join(page, "assets/a b.css"), "p {}");
  writeFileSync(join(folder, "secret.txt"), "secret");
  server = await servePage({ folder: page });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Asks for a path exactly as written: fetch would tidy it first. */
function ask(path: string, { method = "GET", host }: { method?: string; host?: string } = {}) {
  const { hostname, port } = new URL(server.address);
  return new Promise<{ status: number; type: string; policy: string; body: string }>((resolve, reject) => {
    const headers = host ? { host } : undefined;
    const asked = request({ hostname, port, path, method, headers }, (response) => {
      let body = "";
      response.on("data", (chunk) => {
        body += chunk;
      });
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          type: String(response.headers["content-type"]),
          policy: String(response.headers["content-security-policy"]),
          body,
        }),
      );
    });
    asked.on("error", reject).end();
  });
}

describe("the loopback server", () => {
  it("serves the page with its policy", async () => {
    const { status, type, policy, body } = await ask("/?demo=pottery-studio");
    expect([status, type, body]).toEqual([200, "text/html; charset=utf-8", "<p>page</p>"]);
    expect(policy).toBe(`${contentSecurityPolicy}; frame-ancestors 'none'`);
  });

  it("serves files with their types, policy and decoded names", async () => {
    expect(await ask("/assets/page.js")).toMatchObject({
      status: 200,
      type: "text/javascript; charset=utf-8",
    });
    expect((await ask("/assets/page.js")).policy).toContain("default-src 'self'");
    expect(await ask("/assets/a%20b.css")).toMatchObject({ status: 200, body: "p {}" });
    expect(await ask("/assets/page.js", { method: "HEAD" })).toMatchObject({ status: 200, body: "" });
  });

  it.each([
    ["/../secret.txt"],
    ["/assets/../../secret.txt"],
    ["/%2e%2e/secret.txt"],
    ["/..%2fsecret.txt"],
    ["/assets/..%2f..%2fsecret.txt"],
    ["/..%5csecret.txt"],
    ["//../secret.txt"],
    ["/%00"],
    ["/%zz"],
  ])("refuses %s", async (path) => {
    const { status, body } = await ask(path);
    expect([400, 404]).toContain(status);
    expect(body).not.toContain("secret\n");
    expect(body).not.toBe("secret");
  });

  it("says when there is no such file, and lists no folder", async () => {
    expect((await ask("/gone.js")).status).toBe(404);
    expect((await ask("/assets")).status).toBe(404);
    expect((await ask("/assets/")).status).toBe(404);
  });

  it("answers nothing but reading, and only under its own name", async () => {
    expect((await ask("/", { method: "POST" })).status).toBe(405);
    expect((await ask("/", { host: "evil.example" })).status).toBe(403);
    expect((await ask("/", { host: "localhost:1234" })).status).toBe(200);
  });

  it("listens on the loopback address only", async () => {
    expect(server.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    const { port } = new URL(server.address);
    const outward = Object.values(networkInterfaces())
      .flat()
      .filter((one) => one && !one.internal && one.family === "IPv4");
    for (const one of outward) {
      await expect(fetch(`http://${one?.address}:${port}/`)).rejects.toThrow();
    }
  });

  it("takes a free port each time", async () => {
    const second = await servePage({ folder: page });
    expect(second.address).not.toBe(server.address);
    await second.close();
  });

  it("says so when the port asked for is taken", async () => {
    const port = Number(new URL(server.address).port);
    await expect(servePage({ folder: page, port })).rejects.toMatchObject({ code: "EADDRINUSE" });
  });
});

describe("the file behind an address", () => {
  it("lies in the folder or is refused", () => {
    expect(pageFile("/srv/dist", "/assets/a.js")).toBe(join("/srv/dist", "assets/a.js"));
    expect(pageFile("/srv/dist", "/")).toBe(join("/srv/dist", "index.html"));
    expect(pageFile("/srv/dist", "/../dist-other/a.js")).toBeNull();
    expect(pageFile("/srv/dist", "/..%2fdist-other/a.js")).toBeNull();
  });

  it("has a type by its ending", () => {
    expect(mimeType("/a/b.WOFF2")).toBe("font/woff2");
    expect(mimeType("/a/b.unknown")).toBe("application/octet-stream");
    expect(mimeType("/a/b")).toBe("application/octet-stream");
  });
});
