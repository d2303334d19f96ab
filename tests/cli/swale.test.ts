import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

import { swale } from "../../src/cli/swale";
import { run } from "./fakeIo";

const files = { "p.json": readFileSync("demo-projects/pottery-studio.drysill.json", "utf8") };

describe("swale", () => {
  it("lays a line that drains, its bed falling from station to station, as JSON", async () => {
    const done = await run(["swale", "p.json", "--from=-12,18", "--to", "25,-2", "--json"], [swale], files);
    expect(done.code).toBe(0);
    const { route } = JSON.parse(done.out);
    expect(route.result.drains).toBe(true);
    const beds: number[] = route.result.stations.map(({ bed }: { bed: number }) => bed);
    beds.slice(1).forEach((bed, i) => {
      expect(bed).toBeLessThan(beds[i] ?? 0);
    });
  });

  it("prints the stakes", async () => {
    const done = await run(["swale", "p.json", "--from=-12,18", "--to", "25,-2"], [swale], files);
    expect(done.out).toMatch(/^It drains\./);
    expect(done.out).toMatch(/on, at .*: bed .* deep/);
    expect(done.out).toContain("The floor that goes with its bed");
  });

  it("refuses a place that is none", async () => {
    const done = await run(["swale", "p.json", "--from", "here", "--to", "1,2"], [swale], files);
    expect(done.code).toBe(2);
    expect(done.said).toContain("--from: expected two numbers");
  });
});
