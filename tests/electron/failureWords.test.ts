import { homedir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openFailure, saveFailure, shownFolder } from "../../electron/failureWords";

const file = join(homedir(), "plans", "studio.drysill.json");
const failed = (code: string) => Object.assign(new Error(`${code}, open 'x'`), { code });

describe("why a save failed", () => {
  it.each([
    ["ENOSPC", "no room left", "Free some space"],
    ["EDQUOT", "no room left", "Free some space"],
    ["EROFS", "disk of “~/plans” is read-only", "another disk"],
    ["EACCES", "read-only for you", "another folder"],
    ["EPERM", "read-only for you", "another folder"],
    ["ENOENT", "isn't there any more", "save somewhere else"],
    ["EISDIR", "a folder has that name", "another name"],
    ["EIO", "EIO, open 'x'", "Try again"],
  ])("%s: what, where and how to mend it", (code, what, mend) => {
    const words = saveFailure(failed(code), file);
    expect(words).toContain("“studio.drysill.json” couldn't be saved");
    expect(words).toContain(what);
    expect(words).toContain(mend);
    expect(words).toContain("still open here; nothing on the disk was changed");
  });

  it("a name that is too long", () =>
    expect(saveFailure(failed("ENAMETOOLONG"), file)).toContain("Choose a shorter one"));

  it("something that is no error at all", () => expect(saveFailure("odd", file)).toContain("(odd)"));
});

describe("why a file can't be opened", () => {
  it.each([
    ["ENOENT", "isn't in “~/plans” any more"],
    ["EACCES", "may not be read by you"],
    ["EISDIR", "is a folder"],
    ["EIO", "couldn't be read (EIO, open 'x')"],
  ])("%s", (code, words) => expect(openFailure(failed(code), file)).toContain(words));
});

describe("a folder for people", () => {
  it("starts at home where it can", () => {
    expect(shownFolder(homedir())).toBe("~");
    expect(shownFolder(join(homedir(), "a"))).toBe(join("~", "a"));
    expect(shownFolder(`${homedir()}-other`)).toBe(`${homedir()}-other`);
    expect(shownFolder("/srv/plans")).toBe("/srv/plans");
  });
});
