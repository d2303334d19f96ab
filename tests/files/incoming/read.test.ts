import fc from "fast-check";
import { writeArrayBuffer } from "geotiff";
import { describe, expect, it } from "vitest";
import {
  type Incoming,
  type ReadOptions,
  readIncoming,
  suggestedOrigin,
  tooLarge,
} from "../../../src/files/incoming";
import { dxfFile, geoJsonFile, landXmlFile } from "../../../src/files/outgoing";
import { grounds } from "../outgoing/drawn";

const bytes = (text: string) => new TextEncoder().encode(text);
const reading = (text: string, options?: ReadOptions) => readIncoming("f", bytes(text), options);
async function read(text: string, options?: ReadOptions): Promise<Incoming> {
  const result = await reading(text, options);
  if (!result.ok) throw new Error(result.message);
  return result.incoming;
}
async function refusal(text: string | Uint8Array): Promise<string> {
  const result = await readIncoming("f", typeof text === "string" ? bytes(text) : text);
  if (result.ok) throw new Error("It was read.");
  return result.message;
}
const tags = (...pairs: (string | number)[]) => pairs.join("\n");
const dxf = (entities: string, units = 2) =>
  `${tags(0, "SECTION", 2, "HEADER", 9, "$INSUNITS", 70, units, 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES")}\n${entities}\n${tags(0, "ENDSEC", 0, "EOF")}\n`;

describe("wrong files are refused in words", () => {
  it.each([
    ["nothing", "", "is empty"],
    ["a DWG drawing", "AC1032\0\0\0", "DWG"],
    ["a binary DXF", "AutoCAD Binary DXF\r\n\x1a\0", "binary"],
    ["a spreadsheet", "PK\x03\x04", "packed"],
    ["a picture", "\x7fPNG\0\0\0", "no file of ground"],
    ["other XML", "<kml></kml>", "not LandXML"],
    ["other JSON", '{"a":1}', "not GeoJSON"],
    ["a letter", "Dear all,\nthe ground is wet.\n", "no place can be read"],
    ["an empty drawing", dxf(tags(0, "TEXT", 8, "0", 1, "hi")), "passed over what isn't ground: 1 TEXT"],
  ])("%s", async (_what, text, words) => expect(await refusal(text)).toContain(words));

  it("refuses two gigabytes by their size", () => {
    expect(tooLarge("big.csv", 2 * 2 ** 30)).toContain("big.csv is 2.1 GB; at most 268 MB can be read.");
    expect(tooLarge("small.csv", 1000)).toBeNull();
  });

  it("reads any cut-off file of any kind without a throw: refused, or told", async () => {
    const cut = fc.tuple(
      grounds,
      fc.constantFrom("dxf", "xml", "json"),
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    );
    await fc.assert(
      fc.asyncProperty(cut, async ([out, kind, share]) => {
        const whole =
          kind === "dxf" ? dxfFile(out) : kind === "xml" ? landXmlFile(out, "2026-01-01") : geoJsonFile(out);
        const result = await reading(whole.slice(0, Math.floor(whole.length * share)));
        if (result.ok) expect(result.incoming.warnings.join()).toContain("breaks off");
        else expect(result.message.length).toBeGreaterThan(10);
      }),
    );
  });
});

describe("DXF", () => {
  it.each([
    [1, "in"],
    [2, "ft"],
    [6, "m"],
    [21, "ft-us"],
  ])("takes unit %i as %s", async (code, unit) => {
    expect((await read(dxf(tags(0, "POINT", 8, "0", 10, 1, 20, 2, 30, 3), code))).units).toEqual({
      known: true,
      unit,
    });
  });

  it("asks where it names no unit", async () => {
    expect((await read(dxf(tags(0, "POINT", 8, "0", 10, 1, 20, 2, 30, 3), 0))).units).toEqual({
      known: false,
    });
  });

  it("reads lines, light and heavy polylines and faces of four corners", async () => {
    const { lines, faces } = await read(
      dxf(
        [
          tags(0, "LINE", 8, "ditch", 10, 0, 20, 0, 30, 1, 11, 4, 21, 0, 31, 2),
          tags(0, "LWPOLYLINE", 8, "c", 90, 3, 70, 1, 38, 7.5, 10, 0, 20, 0, 10, 1, 20, 0, 10, 1, 20, 1),
          tags(0, "POLYLINE", 8, "p", 66, 1, 70, 8, 0, "VERTEX", 8, "p", 10, 1, 20, 2, 30, 3),
          tags(0, "VERTEX", 8, "p", 10, 4, 20, 5, 30, 6, 0, "SEQEND"),
          tags(
            0,
            "3DFACE",
            8,
            "f",
            10,
            0,
            20,
            0,
            30,
            0,
            11,
            1,
            21,
            0,
            31,
            0,
            12,
            1,
            22,
            1,
            32,
            0,
            13,
            0,
            23,
            1,
            33,
            0,
          ),
        ].join("\n"),
      ),
    );
    expect(lines.map(({ name, closed, xyz }) => [name, closed, [...xyz]])).toEqual([
      ["ditch", false, [0, 0, 1, 4, 0, 2]],
      ["c", true, [0, 0, 7.5, 1, 0, 7.5, 1, 1, 7.5]],
      ["p", false, [1, 2, 3, 4, 5, 6]],
    ]);
    expect(faces.x.length).toBe(4);
    expect([...faces.triangles]).toEqual([0, 1, 2, 0, 2, 3]);
  });

  it("names the line where groups stop making sense", async () => {
    expect(await refusal("0\nSECTION\n2\nENTITIES\nrubbish\nmore\n0\nEOF\n")).toBe(
      'f, line 5: found "rubbish", expected the number of a group. Is the file whole?',
    );
  });
});

describe("LandXML", () => {
  const xml = (inside: string, unit = '<Imperial linearUnit="USSurveyFoot"/>') =>
    `<?xml version="1.0"?><LandXML version="1.2"><Units>${unit}</Units>${inside}</LandXML>`;
  const tin =
    '<Surfaces><Surface name="a"><Definition surfType="TIN"><Pnts><P id="7">20 10 1</P><P id="9">20 11 2</P><P id="12">21 10 3</P></Pnts>';

  it("reads northing first, ids that aren't in order, and the survey foot", async () => {
    const { units, faces } = await read(
      xml(`${tin}<Faces><F>7 9 12</F></Faces></Definition></Surface></Surfaces>`),
    );
    expect(units).toEqual({ known: true, unit: "ft-us" });
    expect([[...faces.x], [...faces.y], [...faces.z]]).toEqual([
      [10, 11, 10],
      [20, 20, 21],
      [1, 2, 3],
    ]);
    expect([...faces.triangles]).toEqual([0, 1, 2]);
  });

  it("takes a face of four corners as two triangles, and corners from named points, wherever those stand", async () => {
    const corners =
      '<P id="1">0 0 1</P><P id="2" pntRef="SE"/><P id="3" pntRef="NE"/><P id="4">10 0 4</P><P id="5" pntRef="gone"/>';
    const grid = `<Surfaces><Surface name="a"><Definition surfType="grid"><Pnts>${corners}</Pnts><Faces><F>1 2 3 4</F><F>1 2 5 4</F></Faces></Definition></Surface></Surfaces>`;
    const named =
      '<CgPoints><CgPoint name="SE">0 20 2</CgPoint><CgPoint name="NE">10 20 3</CgPoint></CgPoints>';
    const { faces, warnings } = await read(xml(grid + named));
    expect([[...faces.x], [...faces.y], [...faces.z]]).toEqual([
      [0, 20, 20, 0],
      [0, 0, 10, 10],
      [1, 2, 3, 4],
    ]);
    expect([...faces.triangles]).toEqual([0, 1, 2, 0, 2, 3]);
    expect(warnings).toEqual([
      "f: 2 triangles name a corner that isn't there and were passed over.",
      "f: 1 places can't be read as numbers and were passed over.",
    ]);
  });

  it("reads a chain of named points as a line, and tells what it passes over", async () => {
    const points =
      '<CgPoints><CgPoint name="a">1 2 3</CgPoint><CgPoint name="b">4 5 6</CgPoint><CgPoint name="c">7 8</CgPoint></CgPoints>';
    const chains = '<Chain name="ditch">a b c</Chain><Chain>a gone</Chain>';
    const { lines, warnings } = await read(
      xml(
        `${points}<Surfaces><Surface name="s"><SourceData>${chains}</SourceData></Surface></Surfaces><Alignments><Alignment name="x"><CoordGeom/></Alignment></Alignments><PlanFeatures><PlanFeature><CoordGeom/></PlanFeature><PlanFeature/></PlanFeatures>`,
      ),
    );
    expect(lines.map(({ name, closed, xyz }) => [name, closed, ...xyz])).toEqual([
      ["ditch", false, 2, 1, 3, 5, 4, 6, 8, 7, Number.NaN],
    ]);
    expect(warnings).toContain("f: 1 alignments: not read; only points, surfaces and their lines are.");
    expect(warnings).toContain("f: 1 plan features: not read; only points, surfaces and their lines are.");
    expect(warnings).toContain("f: 1 places can't be read as numbers and were passed over.");
  });

  it("reads the foot of a wall as a line", async () => {
    const wall =
      '<RetWall name="bank"><RetWallPnt height="1" offset="0">5 1 2</RetWallPnt><RetWallPnt height="1" offset="0">6 1 2.5</RetWallPnt></RetWall>';
    const { lines } = await read(
      xml(
        `${tin}<Faces><F>7 9 12</F></Faces></Definition><SourceData><Breaklines>${wall}</Breaklines></SourceData></Surface></Surfaces>`,
      ),
    );
    expect(lines.map(({ name, xyz }) => [name, ...xyz])).toEqual([["bank", 1, 5, 2, 1, 6, 2.5]]);
  });

  it("leaves out faces that are not seen, and tells of corners that aren't there", async () => {
    const { faces, warnings } = await read(
      xml(`${tin}<Faces><F i="1">7 9 12</F><F>7 9 13</F></Faces></Definition></Surface></Surfaces>`),
    );
    expect(faces.triangles.length).toBe(0);
    expect(warnings).toEqual([
      "f: 1 triangles are marked as not seen and were passed over.",
      "f: 1 triangles name a corner that isn't there and were passed over.",
    ]);
  });
});

describe("grids", () => {
  const head = "ncols 3\nnrows 2\nxllcorner 100\nyllcorner 200\ncellsize 10\nNODATA_value -1\n";

  it("puts heights at the centres of cells, north row first", async () => {
    const { points } = await read(`${head}1 2 3\n4 -1 6\n`);
    expect([...points.x]).toEqual([105, 115, 125, 105, 125]);
    expect([...points.y]).toEqual([215, 215, 215, 205, 205]);
    expect([...points.z]).toEqual([1, 2, 3, 4, 6]);
  });

  it("refuses a grid that breaks off", async () => {
    expect(await refusal(`${head}1 2 3\n4`)).toBe("f breaks off: found 4 heights, expected 2 rows of 3.");
  });

  it("cuts to a window, and states what thinning costs", async () => {
    const size = 21;
    const z = Array.from({ length: size * size }, (_, i) => ((i % size) - 10) ** 2);
    const grid = `ncols ${size}\nnrows ${size}\nxllcenter 0\nyllcenter 0\ncellsize 1\n${z.join(" ")}`;
    const cut = await read(grid, { raster: { window: { minX: 2, minY: 3, maxX: 4, maxY: 3.5 } } });
    expect([...cut.points.x]).toEqual([2, 3, 4]);
    const thin = await read(grid, { raster: { most: 121 } });
    expect(thin.points.x.length).toBe(121);
    // A parabola z = x² lies 1 below its chord over a step of 2.
    expect(thin.warnings[0]).toContain("121 of 441 heights. What was left out differs by at most 1 ");
    expect(thin.warnings[0]).not.toContain("gaps");
  });

  it("says how many heights stand beside a gap, where thinning isn't held against them", async () => {
    const size = 21;
    // A kept height at the middle is missing: its four squares have no ground to compare, but along the lines of others.
    const z = Array.from({ length: size * size }, (_, i) => (i === 10 * size + 10 ? -1 : i % size));
    const lines = `ncols ${size}\nnrows ${size}\nxllcenter 0\nyllcenter 0\ncellsize 1\nNODATA_value -1`;
    const thin = await read(`${lines}\n${z.join(" ")}`, { raster: { most: 121 } });
    expect(thin.warnings[0]).toMatch(/120 of 440 heights\..* leaves out \d+ heights beside gaps/);
    expect(thin.warnings[0]).toContain("differs by at most 0 ");
  });

  it("reads GeoTIFF: place, unit of its zone, heights", async () => {
    const tiff = await writeArrayBuffer(new Float32Array([1, 2, 3, 4, 5, 6]), {
      width: 3,
      height: 2,
      ModelPixelScale: [10, 10, 0],
      ModelTiepoint: [0, 0, 0, 500_000, 5_000_000, 0],
      GTModelTypeGeoKey: 1,
      GTRasterTypeGeoKey: 1,
      ProjectedCSTypeGeoKey: 32632,
      GeographicTypeGeoKey: 4326,
    });
    const result = await readIncoming("t.tif", new Uint8Array(tiff as ArrayBuffer));
    if (!result.ok) throw new Error(result.message);
    const { points, units, crs } = result.incoming;
    expect([[...points.x], [...points.y], [...points.z]]).toEqual([
      [500_005, 500_015, 500_025, 500_005, 500_015, 500_025],
      [4_999_995, 4_999_995, 4_999_995, 4_999_985, 4_999_985, 4_999_985],
      [1, 2, 3, 4, 5, 6],
    ]);
    expect([units, crs]).toEqual([{ known: true, unit: "m" }, "EPSG:32632"]);
    expect(suggestedOrigin(result.incoming.bounds as never)).toEqual([500_000, 4_999_000]);
    const half = await readIncoming("t.tif", new Uint8Array(tiff as ArrayBuffer).slice(0, 40));
    expect(half).toMatchObject({
      ok: false,
      message: "t.tif can't be unpacked as a GeoTIFF. Is the file whole?",
    });
  });
});
