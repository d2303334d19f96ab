import { describe, expect, it } from "vitest";
import { bill } from "../../src/cli/bill";
import { createSolver } from "../../src/solve/pipeline";
import { site } from "../solve/sites";
import { run } from "./fakeIo";

const metric = { ...site().display, area: "m2" as const, volume: "m3" as const };
const project = { ...site(), display: metric, prices: { slab: 200 } };
const files = { "a.json": JSON.stringify(project), "bare.json": JSON.stringify(site({ building: null })) };

describe("bill FILE", () => {
  it("prints each item with its figures, and what the typed prices come to", async () => {
    const ran = await run(["bill", "a.json"], [bill], files);
    const lines = ran.out.split("\r\n");
    const { bill: items, cost } = createSolver().solve(project);
    expect(ran.code).toBe(0);
    expect(lines[0]).toBe("stage,item,quantity,unit,least,most,waste,loose_m3,tonnes,loads,price,cost,how");
    expect(lines).toHaveLength(items.length + 2);
    const slab = items.find(({ id }) => id === "slab");
    const line = lines.find((each) => each.startsWith('foundation,"Concrete, slab"'));
    const wanted = (slab?.quantity ?? 0) * 1.1 * 200;
    expect(line).toContain(`,m3,,,0.1,,,,200,${wanted.toFixed(2)},`);
    expect(lines.at(-1)).toBe(`,"Together, of what has a price",,,,,,,,,,${cost.total.toFixed(2)},`);
    expect(cost.total).toBeCloseTo(wanted, 9);
  });

  it("counts and prices in the plan's own units: yards, feet, tons", async () => {
    const display = { ...project.display, length: "ft-in", area: "ft2", volume: "yd3" };
    const feet = { ...project, display, prices: { slab: 150 / 0.764554857984 } };
    const ran = await run(["bill", "f.json"], [bill], { "f.json": JSON.stringify(feet) });
    const { bill: items } = createSolver().solve({ ...project, prices: feet.prices });
    const [head, ...lines] = ran.out.split("\r\n");
    expect(head).toContain("loose_yd3,tons_of_2000_lb,loads,price");
    const [slab, base] = ["slab", "base"].map((id) => items.find((item) => item.id === id));
    const row = (start: string) => lines.find((line) => line.startsWith(start)) ?? "";
    const yards = Math.round(((slab?.quantity ?? 0) / 0.764554857984) * 1000) / 1000;
    expect(row('foundation,"Concrete, slab"')).toContain(`,${yards},yd3,,,0.1,,,,150,`);
    const tons = Math.round(((base?.trucked?.mass ?? 0) / 907.18474) * 1000) / 1000;
    expect(row("base,")).toContain(`,${tons},${base?.trucked?.loads},`);
    expect(row('foundation,"Forms')).toContain(",ft2,");
  });

  it("says what is missing where there is no building", async () => {
    const ran = await run(["bill", "bare.json"], [bill], files);
    expect(ran.code).toBe(2);
    expect(ran.said).toContain("it needs ground, a building and its floor");
  });
});
