/** A picture under the plan is on paper where it lies on the plan, turned and faded alike, under all else. */
import { readFileSync } from "node:fs";
import { crc32, deflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { type Project, projectSchema } from "../../src/document/schema";
import { type SitePlanOptions, sitePlan } from "../../src/sheets";
import { createSolver } from "../../src/solve/pipeline";
import { cornersOnPlan } from "../../src/underlay";
import { site } from "../solve/sites";
import { type PdfPage, readPdf } from "./readPdf";

const font = (name: string) => new Uint8Array(readFileSync(`assets/fonts/SourceSans3-${name}.ttf`));
const fonts = { regular: font("Regular"), semibold: font("SemiBold") };
const date = { year: 2026, month: 11, day: 25 };

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(data.length, 0);
  around.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([around.subarray(0, 4), body, around.subarray(4)]);
}

/** A real PNG of one colour; with `alpha` half seen through. */
function png(width: number, height: number, alpha: boolean): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, alpha ? 6 : 2], 8);
  const pixel = alpha ? [200, 90, 40, 128] : [200, 90, 40];
  const row = [0, ...Array.from({ length: width }, () => pixel).flat()];
  const rows = Buffer.from(Array.from({ length: height }, () => row).flat());
  const end = chunk("IEND", new Uint8Array());
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([signature, chunk("IHDR", head), chunk("IDAT", deflateSync(rows)), end]);
}

const picture = {
  id: "p",
  name: "plat",
  media: "image/png",
  data: png(40, 30, false).toString("base64"),
  width: 40,
  height: 30,
  at: [4, -2],
  scale: 0.5,
  turn: 0.3,
  strength: 0.4,
};

function planWith(part: Record<string, unknown>, drawing: Record<string, unknown> = {}): Project {
  const rest = { drawing: { underlays: [{ ...picture, ...part }], ...drawing } };
  return projectSchema.parse(site({ reach: 30, rest }));
}

async function pages(project: Project, options: Partial<SitePlanOptions> = {}): Promise<readonly PdfPage[]> {
  const given = { fonts, date, paper: "a3", scale: 200, compress: false, ...options } as const;
  return readPdf(await sitePlan(project, createSolver().solve(project), given));
}

const first = async (project: Project, options?: Partial<SitePlanOptions>) =>
  (await pages(project, options))[0] as PdfPage;
const written = (all: readonly PdfPage[]) =>
  all.flatMap(({ texts }) => texts.map(({ text }) => text)).join(" ");

describe("a picture under the plan", () => {
  it.each([0, 0.7, -2])("lies on paper as on a plan turned by %d", async (turn) => {
    const project = planWith({}, { turn });
    const { images } = await first(project);
    expect(images).toHaveLength(1);
    const [image] = images;
    expect(image).toMatchObject({ width: 40, height: 30, opacity: 0.4, filter: "FlateDecode", painted: 0 });
    // Side by side with the building's corners, which the sheet draws at 1:200: 5 mm a metre.
    const underlay = project.drawing.underlays[0];
    if (!underlay || !image) throw new Error("no picture");
    const corners = cornersOnPlan(underlay);
    const [c, s] = [5 * Math.cos(turn), 5 * Math.sin(turn)];
    const [x0, y0] = corners[0];
    const [px, py] = image.corners[0] ?? [0, 0];
    corners.forEach(([x, y], i) => {
      const [dx, dy] = [x - x0, y - y0];
      expect(image.corners[i]?.[0]).toBeCloseTo(px + dx * c - dy * s, 2);
      expect(image.corners[i]?.[1]).toBeCloseTo(py - (dx * s + dy * c), 2);
    });
  });

  it("lies about the place it is given: a picture on corner A has its middle there", async () => {
    const page = await first(planWith({ at: [0, 0], turn: 0, scale: 0.5 }));
    const corners = page.images[0]?.corners ?? [];
    const middle = [0, 1].map(
      (axis) => corners.reduce((sum, at) => sum + (at[axis as 0 | 1] as number), 0) / 4,
    );
    // The footing's and walls' lines start at the building's corners.
    const hit = page.paths.some(({ subpaths }) =>
      subpaths.some((points) =>
        points.some(
          (_, i) =>
            i % 2 === 0 &&
            Math.hypot(
              (points[i] as number) - (middle[0] as number),
              (points[i + 1] as number) - (middle[1] as number),
            ) < 0.01,
        ),
      ),
    );
    expect(hit).toBe(true);
  });

  it("may be seen through in parts", async () => {
    const page = await first(planWith({ data: png(40, 30, true).toString("base64") }));
    expect(page.images[0]).toMatchObject({ width: 40, height: 30 });
  });

  it("goes in as it is when it is a JPEG", async () => {
    const head = [
      0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 30, 0, 40, 1, 1, 0x11, 0, 0xff, 0xda, 0, 2, 7, 0xff, 0xd9,
    ];
    const page = await first(planWith({ media: "image/jpeg", data: Buffer.from(head).toString("base64") }));
    expect(page.images[0]).toMatchObject({ width: 40, height: 30, filter: "DCTDecode", opacity: 0.4 });
  });

  it.each<[string, Project, Partial<SitePlanOptions>]>([
    ["left away by choice", planWith({}), { pictures: false }],
    ["hidden on the plan", planWith({}, { hidden: ["underlay:p"] }), {}],
    ["faded to nothing", planWith({ strength: 0 }), {}],
  ])("is away where it is %s, and nothing is said", async (_why, project, options) => {
    const all = await pages(project, options);
    expect(all.flatMap(({ images }) => images)).toEqual([]);
    expect(written(all)).not.toContain("plat");
  });

  it("says which can't be printed, and draws the rest of the sheet", async () => {
    const webp = Buffer.from("RIFF\x24\0\0\0WEBPVP8X\x0a\0\0\0\0\0\0\0\x27\0\0\x1d\0\0", "latin1");
    const cut = png(40, 30, false).subarray(0, 60);
    for (const [data, said] of [
      [webp, /the picture “plat”: WebP can’t go on paper|the picture “plat”: WebP can't go on paper/],
      [cut, /the picture “plat”: Its bytes are damaged/],
      [Buffer.from("no picture"), /the picture “plat”: Its bytes are damaged/],
    ] as const) {
      const all = await pages(planWith({ data: data.toString("base64") }));
      expect(all.flatMap(({ images }) => images)).toEqual([]);
      expect(written(all)).toMatch(said);
      expect(all[0]?.paths.length).toBeGreaterThan(50);
    }
  });

  it("gives the same bytes for the same plan", async () => {
    const project = planWith({ data: png(40, 30, true).toString("base64") });
    const make = () => sitePlan(project, createSolver().solve(project), { fonts, date });
    expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
  });
});
