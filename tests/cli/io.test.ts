import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { InputError } from "../../src/cli/command";
import { nodeIo } from "../../src/cli/io";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "drysill-io-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("reading", () => {
  it.each<[string, Uint8Array]>([
    ["UTF-8", Buffer.from("5′ 2⅝″ é")],
    ["UTF-8 with a byte-order mark", Buffer.from("\ufeff5′ 2⅝″ é")],
    ["UTF-16 with a byte-order mark", Buffer.from("\ufeff5′ 2⅝″ é", "utf16le")],
    ["UTF-16, the other way round", Buffer.from("\ufeff5′ 2⅝″ é", "utf16le").swap16()],
  ])("%s", (_what, bytes) => {
    writeFileSync(join(folder, "a.txt"), bytes);
    expect(nodeIo(folder).readText("a.txt")).toBe("5′ 2⅝″ é");
  });

  it("the old Western code page", () => {
    writeFileSync(join(folder, "a.txt"), Buffer.from([0x31, 0xbd, 0x20, 0xe9]));
    expect(nodeIo(folder).readText("a.txt")).toBe("1½ é");
  });

  it("says why a file can't be read", () => {
    mkdirSync(join(folder, "sub"));
    const io = nodeIo(folder);
    expect(() => io.readText("none.csv")).toThrow(
      new InputError("Can't read none.csv: there is no such file."),
    );
    expect(() => io.readText("sub")).toThrow("Can't read sub: it is a folder, not a file.");
    expect(() => io.readText("")).toThrow("it is a folder, not a file");
    writeFileSync(join(folder, "vast.csv"), "");
    truncateSync(join(folder, "vast.csv"), 2_200_000_000);
    expect(() => io.readText("vast.csv")).toThrow("it is larger than 2 GB; cut it to the lot");
  });
});

describe("writing", () => {
  it("makes the folders it needs and leaves no half file", () => {
    nodeIo(folder).writeBytes("new/deep/a.pdf", new Uint8Array([1, 2, 3]));
    expect([...readFileSync(join(folder, "new/deep/a.pdf"))]).toEqual([1, 2, 3]);
    expect(readdirSync(join(folder, "new/deep"))).toEqual(["a.pdf"]);
  });

  it("says why a file can't be written", () => {
    writeFileSync(join(folder, "file"), "x");
    mkdirSync(join(folder, "taken"));
    const io = nodeIo(folder);
    expect(() => io.writeBytes("file/a.pdf", new Uint8Array(1))).toThrow(/^Can't write file\/a\.pdf: /);
    expect(() => io.writeBytes("taken", new Uint8Array(1))).toThrow(InputError);
    expect(readdirSync(folder).sort()).toEqual(["file", "taken"]);
    if (existsSync("/proc/self")) {
      expect(() => io.writeBytes("/proc/none/a.pdf", new Uint8Array(1))).toThrow(
        "its folder can't be made there",
      );
    }
  });
});
