/** What goes out comes back: points, lines, contours and triangles, to the last digit. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Incoming, readIncoming } from "../../../src/files/incoming";
import { dxfFile, geoJsonFile, landXmlFile, type Outgoing, pointsCsv } from "../../../src/files/outgoing";
import { auditDxf, missingEzdxf } from "../../support/ezdxf";
import { grounds, trianglesOf } from "./drawn";

async function back(file: string, text: string): Promise<Incoming> {
  const read = await readIncoming(file, new TextEncoder().encode(text));
  if (!read.ok) throw new Error(read.message);
  return read.incoming;
}

const placed = (x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>) =>
  Array.from(x, (_, i) => [(x[i] as number) + 0, (y[i] as number) + 0, (z[i] as number) + 0]);
const pointsIn = ({ points: { x, y, z } }: Incoming) => placed(x, y, z);
const pointsOut = ({ points }: Outgoing) =>
  points.map(({ x, y, z }) => [x + 0, y + 0, (z ?? Number.NaN) + 0]);
const marksIn = ({ marks: { names, x, y, z } }: Incoming) => ({ names, places: placed(x, y, z) });
const marksOut = ({ marks }: Outgoing) => ({
  names: marks.map(({ name }) => name),
  places: marks.map(({ x, y, z }) => [x + 0, y + 0, (z ?? Number.NaN) + 0]),
});
const kindsIn = ({ lines }: Incoming) => lines.map(({ kind }) => kind);
const kindsOut = ({ lines, contours }: Outgoing) => [
  ...lines.map(({ kind }) => kind),
  ...contours.map(() => "contour"),
];
const linesIn = ({ lines }: Incoming) =>
  lines.map(({ closed, xyz }) => ({ closed, xyz: [...xyz].map((v) => v + 0) }));

function linesOut({ lines, contours }: Outgoing) {
  const drawn = lines.map(({ closed, points }) => ({
    closed,
    xyz: points.flat().map((v) => (v ?? Number.NaN) + 0),
  }));
  const contoured = contours.flatMap(({ height, lines: runs }) =>
    runs.map((run) => {
      const closed = run[0] === run.at(-2) && run[1] === run.at(-1);
      const xyz: number[] = [];
      for (let i = 0; i < run.length - (closed ? 2 : 0); i += 2)
        xyz.push((run[i] as number) + 0, (run[i + 1] as number) + 0, height);
      return { closed, xyz };
    }),
  );
  return [...drawn, ...contoured];
}

describe("round trips", () => {
  it("CSV gives points and names back", () =>
    fc.assert(
      fc.asyncProperty(grounds, async (out) => {
        const incoming = await back("p.csv", pointsCsv(out));
        expect(incoming.units).toEqual(
          out.points.length > 0 ? { known: true, unit: "m" } : expect.anything(),
        );
        expect(pointsIn(incoming)).toEqual(pointsOut(out));
        expect(marksIn(incoming)).toEqual(marksOut(out));
        expect(incoming.points.names).toEqual(out.points.map(({ name }) => name));
      }),
    ));

  it("DXF gives everything back, in metres", () =>
    fc.assert(
      fc.asyncProperty(grounds, async (out) => {
        const incoming = await back("g.dxf", dxfFile(out));
        expect(incoming.units).toEqual({ known: true, unit: "m" });
        expect(pointsIn(incoming)).toEqual(pointsOut(out));
        expect(marksIn(incoming)).toEqual(marksOut(out));
        expect(incoming.points.names).toEqual(out.points.map(({ name }) => name));
        expect(linesIn(incoming)).toEqual(linesOut(out));
        expect(kindsIn(incoming)).toEqual(kindsOut(out));
        expect(incoming.lines.slice(0, out.lines.length).map(({ name }) => name)).toEqual(
          out.lines.map(({ name }) => name),
        );
        expect(trianglesOf(incoming.faces)).toEqual(trianglesOf(out.surface));
      }),
    ));

  it("LandXML gives everything back, in metres", () =>
    fc.assert(
      fc.asyncProperty(grounds, async (out) => {
        const incoming = await back("g.xml", landXmlFile(out, "2026-05-04"));
        expect(incoming.units).toEqual({ known: true, unit: "m" });
        expect(pointsIn(incoming)).toEqual(pointsOut(out));
        expect(marksIn(incoming)).toEqual(marksOut(out));
        expect(trianglesOf(incoming.faces)).toEqual(trianglesOf(out.surface));
        expect(linesIn(incoming)).toEqual(linesOut(out));
        expect(kindsIn(incoming)).toEqual(kindsOut(out));
      }),
    ));

  it("GeoJSON gives everything back, in metres of the plan", () =>
    fc.assert(
      fc.asyncProperty(grounds, async (out) => {
        const incoming = await back("g.geojson", geoJsonFile(out));
        expect(incoming.units).toEqual({ known: true, unit: "m" });
        expect(pointsIn(incoming)).toEqual(pointsOut(out));
        expect(marksIn(incoming)).toEqual(marksOut(out));
        expect(linesIn(incoming)).toEqual(linesOut(out));
        expect(kindsIn(incoming)).toEqual(kindsOut(out));
        expect(trianglesOf(incoming.faces)).toEqual(trianglesOf(out.surface));
      }),
    ));

  it.each([
    ["g.dxf", dxfFile],
    ["g.geojson", (out: Outgoing) => geoJsonFile(out)],
  ])("%s keeps corners without a height", async (file, write) => {
    const points = [
      [1, 2, null],
      [3, 4, 5],
      [6, 7, null],
    ] as const;
    const line = { name: "ditch", kind: "ditch", closed: false, points };
    const out = { name: "p", points: [], marks: [], lines: [line], contours: [], surface: null };
    expect(linesIn(await back(file, write(out)))).toEqual(linesOut(out));
  });

  it("GeoJSON in degrees comes back within a millimetre, as far apart as it was", async () => {
    const [out] = fc.sample(grounds, { numRuns: 1, seed: 7 }) as [Outgoing];
    const incoming = await back("g.geojson", geoJsonFile(out, { latitude: 47.2, longitude: -122.5 }));
    const { x, y } = incoming.points;
    const [a, b] = out.points as [Outgoing["points"][number], Outgoing["points"][number]];
    const apart = Math.hypot((x[1] as number) - (x[0] as number), (y[1] as number) - (y[0] as number));
    expect(apart).toBeCloseTo(Math.hypot(b.x - a.x, b.y - a.y), 3);
  });
});

describe("an independent reader of DXF (Python's ezdxf)", () => {
  const missing = missingEzdxf();
  if (missing) console.warn(missing);

  it.skipIf(missing !== null)(
    "finds nothing to mend, and reads what was written",
    { timeout: 60_000 },
    () => {
      for (const out of fc.sample(grounds, { numRuns: 4, seed: 5 })) {
        const audit = auditDxf(dxfFile(out));
        expect([audit.errors, audit.fixes]).toEqual([[], []]);
        expect([audit.version, audit.units]).toEqual(["AC1021", 6]);
        expect(audit.points).toEqual(
          [...out.points, ...out.marks].map(({ name, x, y, z }) => [name, x, y, z]),
        );
        expect(audit.polylines).toEqual(
          out.lines.map(({ name, closed, points }) => ({ layer: name, closed, corners: points })),
        );
        expect(audit.contours.map(({ height, closed }) => [height, closed])).toEqual(
          out.contours.map(({ height }, i) => [height, i === 1]),
        );
        const corners = (face: readonly (readonly number[])[]) =>
          face
            .map((at) => at.map((v) => v + 0).join(" "))
            .sort()
            .join(" | ");
        expect(audit.faces.map(corners).sort()).toEqual(trianglesOf(out.surface));
      }
    },
  );
});
