import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Ask, Note } from "../../electron/channels";
import { BadArgument, checks, fileName } from "../../electron/validate";
import { limits } from "../../src/host/bridge";

const token = "0123456789abcdef0123456789abcdef";
const work = { name: "studio", text: "{}", token };

const right: [Ask | Note, unknown[]][] = [
  ["openProject", []],
  ["openRecent", [token]],
  ["openPicture", []],
  ["recentFiles", []],
  ["saveProject", [token, "{}"]],
  ["saveProjectAs", ["studio", "{}"]],
  ["exportFile", ["plan.pdf", new Uint8Array([1, 2])]],
  ["recovered", []],
  ["setTitle", ["studio", true]],
  ["keepUnsaved", [work]],
  ["keepUnsaved", [{ ...work, token: null }]],
  ["keepUnsaved", [null]],
  ["offerCommands", [[{ id: "plan.new", name: "New plan…", place: "Plan", keys: ["Mod+N"] }]]],
  ["listening", []],
  ["closeHeard", []],
  ["closeAnswered", [false]],
  ["closeFailed", []],
];

const wrong: [string, Ask | Note, unknown[]][] = [
  ["a command without a name", "offerCommands", [[{ id: "plan.new", place: "Plan", keys: [] }]]],
  ["a command of two lines", "offerCommands", [[{ id: "a", name: "a\nb", place: "Plan", keys: [] }]]],
  ["commands without end", "offerCommands", [Array(limits.commands + 1).fill({})]],
  ["an argument too many", "openProject", [1]],
  ["an argument too few", "openRecent", []],
  ["a path for the picture picker", "openPicture", ["/etc/passwd"]],
  ["a path for a token", "openRecent", ["/etc/passwd"]],
  ["a token that goes on", "openRecent", [`${token}0`]],
  ["a token in a list", "openRecent", [[token]]],
  ["no text", "saveProject", [token, null]],
  ["bytes for text", "saveProject", [token, new Uint8Array(1)]],
  ["a name that is no text", "saveProjectAs", [{}, "{}"]],
  ["a name that is too long", "saveProjectAs", ["n".repeat(limits.nameCharacters + 1), "{}"]],
  ["text for bytes", "exportFile", ["plan.pdf", "%PDF"]],
  ["a plain list for bytes", "exportFile", ["plan.pdf", [1, 2]]],
  ["something for a flag", "setTitle", ["studio", 1]],
  ["unsaved work without text", "keepUnsaved", [{ name: "studio", token: null }]],
  ["unsaved work with a path", "keepUnsaved", [{ ...work, token: "/etc/passwd" }]],
  ["nothing at all for unsaved work", "keepUnsaved", [undefined]],
  ["an answer that is no answer", "closeAnswered", ["yes"]],
];

describe("what comes over the bridge", () => {
  it.each(right)("%s takes %j", (name, given) => expect(checks[name](given)).toEqual(given));

  it("has a sound example here for every channel", () =>
    expect(new Set(right.map(([name]) => name))).toEqual(new Set(Object.keys(checks))));

  it.each(wrong)("%s is refused", (_why, name, given) =>
    expect(() => checks[name](given)).toThrow(BadArgument),
  );

  it("too much text is refused before it is used", () => {
    const most = "a".repeat(limits.textCharacters);
    expect(checks.saveProject([token, most])[1]).toBe(most);
    expect(() => checks.saveProject([token, `${most}a`])).toThrow("too long");
    const bytes = new Uint8Array(0);
    Object.defineProperty(bytes, "length", { value: limits.exportBytes + 1 });
    expect(() => checks.exportFile(["plan.pdf", bytes])).toThrow("too large");
  });

  it("never throws anything but a refusal, whatever it is given", () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(checks)),
        fc.array(fc.anything(), { maxLength: 3 }),
        (name, given) => {
          try {
            checks[name as Ask | Note](given);
          } catch (error) {
            expect(error).toBeInstanceOf(BadArgument);
          }
        },
      ),
    ));

  it("passes on nothing of unsaved work but what it knows", () =>
    expect(checks.keepUnsaved([{ ...work, path: "/etc/passwd" }])).toEqual([work]));
});

describe("a file's name", () => {
  it.each([
    ["Pottery studio (2).drysill.json", "Pottery studio (2).drysill.json"],
    ["../../etc/passwd", "..-..-etc-passwd"],
    ["C:\\plans\\a", "C--plans-a"],
    ["a\u0000b\nc", "a-b-c"],
    ["Töpferei Nordhang", "Töpferei Nordhang"],
  ])("%j becomes %j", (given, name) => expect(fileName(given)).toBe(name));

  it("never holds what separates folders", () =>
    fc.assert(
      fc.property(
        fc.string({ maxLength: 50, unit: "binary" }),
        (text) => !/[/\\:\p{Cc}]/u.test(fileName(text)),
      ),
    ));
});
