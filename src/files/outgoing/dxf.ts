/**
 * DXF (release 2007, text, UTF-8): points as POINT with their names in extended data (marks, which
 * aren't ground, on a layer of their own), breaklines as 3D POLYLINE with their kind in extended data, contours as
 * LWPOLYLINE at their height, triangles as 3DFACE; a layer each. Metres ($INSUNITS 6).
 *
 * Source  the format's published structure.
 */
import { type Outgoing, type OutgoingPoint, plain } from "./outgoing";

const LAYERS = [
  ["POINTS", 7],
  ["MARKS", 3],
  ["BREAKLINES", 1],
  ["CONTOURS", 8],
  ["CONTOURS-MAJOR", 30],
  ["TRIANGLES", 9],
] as const;

type Value = string | number;

/** Tags in pairs: code, value. Handles are given out as they are asked for. */
class Tags {
  private readonly lines: string[] = [];
  private next = 0x100;

  add(...pairs: Value[]): this {
    for (let i = 0; i < pairs.length; i += 2) {
      const value = pairs[i + 1] as Value;
      this.lines.push(`${pairs[i]}\n${typeof value === "number" ? plain(value) : value}`);
    }
    return this;
  }

  handle(): string {
    return (this.next++).toString(16).toUpperCase();
  }

  text(seed = false): string {
    return seed ? this.next.toString(16).toUpperCase() : this.lines.join("\n");
  }
}

const BLOCKS = { "*Model_Space": "1F", "*Paper_Space": "1B" } as const;
const ROOT = "C";
const GROUPS = "D";

export function dxfFile(out: Outgoing): string {
  const body = new Tags();
  tables(body, layersOf(out));
  blocks(body);
  entities(body, out);
  objects(body);
  body.add(0, "EOF");
  const head = new Tags();
  head.add(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1021", 9, "$DWGCODEPAGE", 3, "UTF-8");
  head.add(9, "$HANDSEED", 5, body.text(true), 9, "$INSUNITS", 70, 6, 9, "$MEASUREMENT", 70, 1, 0, "ENDSEC");
  return `${head.text()}\n${body.text()}\n`;
}

/** Layers of breaklines carry their names, so that they come back with them. */
function layersOf({ lines }: Outgoing): Map<string, number> {
  const layers = new Map<string, number>(LAYERS);
  for (const { name } of lines) if (!layers.has(layerName(name))) layers.set(layerName(name), 1);
  return layers;
}

/** A layer's name may hold none of the signs that the format keeps for itself. */
function layerName(name: string): string {
  return (
    name
      .replace(/[<>/\\":;?*|=`,\p{Cc}]/gu, "_")
      .trim()
      .slice(0, 200) || "BREAKLINES"
  );
}

function table(tags: Tags, name: string, rows: readonly ((owner: string) => void)[]): void {
  const handle = tags.handle();
  tags.add(0, "TABLE", 2, name, 5, handle, 330, "0", 100, "AcDbSymbolTable", 70, rows.length);
  if (name === "DIMSTYLE") tags.add(100, "AcDbDimStyleTable");
  for (const row of rows) row(handle);
  tags.add(0, "ENDTAB");
}

function record(tags: Tags, kind: string, subclass: string, name: string, ...rest: Value[]) {
  return (owner: string) => {
    const code = kind === "DIMSTYLE" ? 105 : 5;
    tags.add(
      0,
      kind,
      code,
      tags.handle(),
      330,
      owner,
      100,
      "AcDbSymbolTableRecord",
      100,
      subclass,
      2,
      name,
      70,
      0,
      ...rest,
    );
  };
}

function tables(tags: Tags, layers: ReadonlyMap<string, number>): void {
  tags.add(0, "SECTION", 2, "TABLES");
  table(tags, "VPORT", [record(tags, "VPORT", "AcDbViewportTableRecord", "*Active")]);
  const lineType = (name: string) =>
    record(tags, "LTYPE", "AcDbLinetypeTableRecord", name, 3, "", 72, 65, 73, 0, 40, 0);
  table(tags, "LTYPE", ["ByBlock", "ByLayer", "Continuous"].map(lineType));
  const layer = ([name, colour]: readonly [string, number]) =>
    record(tags, "LAYER", "AcDbLayerTableRecord", name, 62, colour, 6, "Continuous");
  table(tags, "LAYER", [layer(["0", 7]), ...[...layers].filter(([name]) => name !== "0").map(layer)]);
  const style = record(
    tags,
    "STYLE",
    "AcDbTextStyleTableRecord",
    "Standard",
    40,
    0,
    41,
    1,
    50,
    0,
    71,
    0,
    42,
    2.5,
    3,
    "txt",
    4,
    "",
  );
  table(tags, "STYLE", [style]);
  table(tags, "VIEW", []);
  table(tags, "UCS", []);
  const application = (name: string) => record(tags, "APPID", "AcDbRegAppTableRecord", name);
  table(tags, "APPID", [application("ACAD"), application("DRYSILL")]);
  table(tags, "DIMSTYLE", [record(tags, "DIMSTYLE", "AcDbDimStyleTableRecord", "Standard")]);
  const block =
    ([name, handle]: readonly [string, string]) =>
    (owner: string) => {
      tags.add(
        0,
        "BLOCK_RECORD",
        5,
        handle,
        330,
        owner,
        100,
        "AcDbSymbolTableRecord",
        100,
        "AcDbBlockTableRecord",
        2,
        name,
      );
    };
  table(tags, "BLOCK_RECORD", Object.entries(BLOCKS).map(block));
  tags.add(0, "ENDSEC");
}

function blocks(tags: Tags): void {
  tags.add(0, "SECTION", 2, "BLOCKS");
  for (const [name, owner] of Object.entries(BLOCKS)) {
    const space = name === "*Paper_Space" ? [67, 1] : [];
    tags.add(
      0,
      "BLOCK",
      5,
      tags.handle(),
      330,
      owner,
      100,
      "AcDbEntity",
      ...space,
      8,
      "0",
      100,
      "AcDbBlockBegin",
    );
    tags.add(2, name, 70, 0, 10, 0, 20, 0, 30, 0, 3, name, 1, "");
    tags.add(
      0,
      "ENDBLK",
      5,
      tags.handle(),
      330,
      owner,
      100,
      "AcDbEntity",
      ...space,
      8,
      "0",
      100,
      "AcDbBlockEnd",
    );
  }
  tags.add(0, "ENDSEC");
}

function entity(tags: Tags, kind: string, layer: string, ...subclass: string[]): string {
  const handle = tags.handle();
  tags.add(0, kind, 5, handle, 330, BLOCKS["*Model_Space"], 100, "AcDbEntity", 8, layer);
  for (const name of subclass) tags.add(100, name);
  return handle;
}

function entities(tags: Tags, { points, marks, lines, contours, surface }: Outgoing): void {
  tags.add(0, "SECTION", 2, "ENTITIES");
  for (const point of points) dot(tags, "POINTS", point);
  for (const mark of marks) dot(tags, "MARKS", mark);
  for (const line of lines) polyline(tags, line);
  for (const { height, major, lines: runs } of contours)
    for (const run of runs) contour(tags, height, major ? "CONTOURS-MAJOR" : "CONTOURS", run);
  if (surface) faces(tags, surface);
  tags.add(0, "ENDSEC");
}

function dot(tags: Tags, layer: string, { name, x, y, z }: OutgoingPoint): void {
  if (z === null) return;
  entity(tags, "POINT", layer, "AcDbPoint");
  tags.add(10, x, 20, y, 30, z, 1001, "DRYSILL", 1000, name.replace(/[\r\n]+/g, " ").slice(0, 255));
}

/** A corner without a height is written at 0; lines in which none has one are flat lines of the plan. */
function polyline(tags: Tags, { name, kind, closed, points }: Outgoing["lines"][number]): void {
  const layer = layerName(name);
  const owner = entity(tags, "POLYLINE", layer, "AcDb3dPolyline");
  tags.add(66, 1, 10, 0, 20, 0, 30, 0, 70, closed ? 9 : 8);
  tags.add(1001, "DRYSILL", 1000, kind);
  for (const [x, y, z] of points) {
    tags.add(0, "VERTEX", 5, tags.handle(), 330, owner, 100, "AcDbEntity", 8, layer);
    tags.add(100, "AcDbVertex", 100, "AcDb3dPolylineVertex", 10, x, 20, y, 30, z ?? 0, 70, 32);
    if (z === null) tags.add(1001, "DRYSILL", 1000, "no height");
  }
  tags.add(0, "SEQEND", 5, tags.handle(), 330, owner, 100, "AcDbEntity", 8, layer);
}

function contour(tags: Tags, height: number, layer: string, run: Float64Array): void {
  const last = run.length - 2;
  const closed = run.length > 6 && run[0] === run[last] && run[1] === run[last + 1];
  const count = run.length / 2 - (closed ? 1 : 0);
  entity(tags, "LWPOLYLINE", layer, "AcDbPolyline");
  tags.add(90, count, 70, closed ? 1 : 0, 38, height);
  for (let i = 0; i < count; i++) tags.add(10, run[2 * i] as number, 20, run[2 * i + 1] as number);
}

function faces(tags: Tags, { x, y, z, triangles }: NonNullable<Outgoing["surface"]>): void {
  for (let t = 0; t < triangles.length; t += 3) {
    entity(tags, "3DFACE", "TRIANGLES", "AcDbFace");
    // The fourth corner repeats the third: a triangle.
    [0, 1, 2, 2].forEach((k, i) => {
      const at = triangles[t + k] as number;
      tags.add(10 + i, x[at] as number, 20 + i, y[at] as number, 30 + i, z[at] as number);
    });
  }
}

function objects(tags: Tags): void {
  tags.add(0, "SECTION", 2, "OBJECTS");
  tags.add(0, "DICTIONARY", 5, ROOT, 330, "0", 100, "AcDbDictionary", 281, 1, 3, "ACAD_GROUP", 350, GROUPS);
  tags.add(0, "DICTIONARY", 5, GROUPS, 330, ROOT, 100, "AcDbDictionary", 281, 1, 0, "ENDSEC");
}
