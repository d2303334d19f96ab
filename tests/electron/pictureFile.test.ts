import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readPicture } from "../../electron/pictureFile";
import { limits } from "../../src/host/bridge";

const folder = mkdtempSync(join(tmpdir(), "drysill-picture-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, bytes: number[], size = bytes.length): string => {
  const path = join(folder, name);
  writeFileSync(path, Uint8Array.from(bytes));
  truncateSync(path, size);
  return path;
};

describe("the picture that a person chose", () => {
  it.each(["plat.png", "Plat.JPG", "site.jpeg", "sketch.webp", "deed.pdf"])(
    "%s is handed on by its bytes",
    async (name) =>
      expect(await readPicture(put(name, [1, 2, 3]))).toEqual({ name, bytes: Uint8Array.of(1, 2, 3) }),
  );

  it("up to the limit; one byte more is refused unread, in words", async () => {
    const most = await readPicture(put("most.png", [1], limits.pictureBytes));
    expect("bytes" in most && most.bytes.length).toBe(limits.pictureBytes);
    const more = await readPicture(put("more.png", [1], limits.pictureBytes + 1));
    expect(more).toEqual({
      failed:
        "“more.png” has 81 MB; a picture under the plan may have 80 MB. Save it smaller, or cut out the part that you need.",
    });
  });

  it("no other kind of file, whatever the dialog let through", async () => {
    for (const name of ["notes.txt", "png", "plan.drysill.json"])
      expect(await readPicture(put(name, [1]))).toEqual({
        failed: `“${name}” is no picture. Choose a PNG, JPEG, WebP or PDF file.`,
      });
  });

  it("a file that is gone, or a folder, in words", async () => {
    const gone = await readPicture(join(folder, "gone.png"));
    expect("failed" in gone && gone.failed).toContain("any more");
    mkdirSync(join(folder, "folder.png"));
    const odd = await readPicture(join(folder, "folder.png"));
    expect("failed" in odd && odd.failed).toContain("is a folder");
  });
});
