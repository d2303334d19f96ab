import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sheets } from "../../src/cli/sheets";
import { run } from "./fakeIo";

const studio = readFileSync("demo-projects/pottery-studio.drysill.json", "utf8");
const sheetsOf = (...args: string[]) => run(["sheets", ...args], [sheets], { "studio.json": studio });
const date = ["--date", "2026-11-25"];

describe("sheets FILE --out DIR", () => {
  it("writes the site plan and the foundation there and prints their paths", async () => {
    const { code, out, said, written } = await sheetsOf("studio.json", "--out", "plans/", ...date);
    const paths = ["plans/site-plan.pdf", "plans/foundation.pdf"];
    expect({ code, out, said }).toEqual({ code: 0, out: paths.join("\n"), said: "" });
    for (const path of paths) {
      const bytes = written.get(path) ?? new Uint8Array();
      expect(new TextDecoder("latin1").decode(bytes.subarray(0, 8))).toBe("%PDF-1.7");
    }
  });

  it("on the paper that is asked for: A4 is 841.89 by 595.28 points", async () => {
    const { written } = await sheetsOf("studio.json", "--out", "p", "--paper", "A4", ...date);
    const file = new TextDecoder("latin1").decode(written.get("p/site-plan.pdf"));
    expect(/MediaBox \[0 0 (841\.8\d+) (595\.2\d+)\]/.test(file)).toBe(true);
  });

  it("gives the same bytes for the same day, others for another", async () => {
    const bytesOn = async (day: string) =>
      (await sheetsOf("studio.json", "--out", "p", "--date", day)).written.get("p/site-plan.pdf") ?? [];
    const [one, again, later] = [
      await bytesOn("2026-11-25"),
      await bytesOn("2026-11-25"),
      await bytesOn("2026-11-26"),
    ];
    expect(Buffer.compare(Buffer.from(one), Buffer.from(again))).toBe(0);
    expect(Buffer.compare(Buffer.from(one), Buffer.from(later))).not.toBe(0);
  });

  it.each([
    [["studio.json"], "--out"],
    [["studio.json", "--out", "p", "--paper", "a9"], "letter, tabloid, a4, a3"],
    [["studio.json", "--out", "p", "--date", "2026-02-30"], "a day like"],
    [["studio.json", "--out", "p", "--date", "tomorrow"], "a day like"],
    [["other.json", "--out", "p"], "no such file"],
    [["--out", "p"], "Expected FILE"],
  ])("%j: exit 2 and a message that says %s", async (args, part) => {
    const { code, out, said, written } = await sheetsOf(...args);
    expect({ code, out, files: written.size }).toEqual({ code: 2, out: "", files: 0 });
    expect(said).toContain(part);
  });
});
