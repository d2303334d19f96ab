/**
 * Reads back an uncompressed PDF of ours: the paths and texts of each page, in millimetres from the page's top left.
 * Knows just the operators that the pen writes, and refuses others, so that nothing goes by unseen.
 */

export interface PdfText {
  readonly text: string;
  readonly font: string;
  /** Start of the baseline and its direction, mm and radians clockwise from rightwards. */
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  /** Em, mm. */
  readonly size: number;
}

export interface PdfPath {
  /** Flat x, y of each subpath, mm. */
  readonly subpaths: readonly (readonly number[])[];
  /** Line width, mm; null for a path that is only filled. */
  readonly width: number | null;
}

export interface PdfImage {
  /** Page places of its corners, mm: top left, top right, bottom right, bottom left as one looks at the picture. */
  readonly corners: readonly (readonly [number, number])[];
  /** Share with which it covers what lies under it. */
  readonly opacity: number;
  /** Pixels, and how their bytes are packed. */
  readonly width: number;
  readonly height: number;
  readonly filter: string;
  /** How many paths and texts were painted before it. */
  readonly painted: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PdfText[];
  readonly paths: readonly PdfPath[];
  readonly images: readonly PdfImage[];
}

type Matrix = readonly [number, number, number, number, number, number];

const mmPerPoint = 25.4 / 72;

/** a after b: a point is first put through a. */
function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
}

function objects(file: string): ReadonlyMap<string, string> {
  return new Map(
    [...file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id = "", body = ""]) => [
      id,
      body,
    ]),
  );
}

function streamOf(body: string): string {
  return /stream\n([\s\S]*?)\nendstream/.exec(body)?.[1] ?? "";
}

function reference(body: string, name: string): string {
  const found = new RegExp(`/${name} (\\d+) 0 R`).exec(body)?.[1];
  if (!found) throw new Error(`no /${name} in ${body.slice(0, 200)}`);
  return found;
}

/** Glyph number → text, from the font's ToUnicode map. */
function glyphs(cmap: string): readonly string[] {
  return [...cmap.matchAll(/<[0-9a-f]{4}> <[0-9a-f]{4}> \[([^\]]*)\]/g)].flatMap(([, list = ""]) =>
    [...list.matchAll(/<([^>]*)>/g)].map(([, codes = ""]) =>
      codes
        .split(" ")
        .filter((code) => code !== "")
        .map((code) => String.fromCharCode(Number.parseInt(code, 16)))
        .join(""),
    ),
  );
}

interface State {
  matrix: Matrix;
  width: number;
  opacity: number;
}

/** What a page's names stand for: bodies of objects. */
type Named = ReadonlyMap<string, string>;

const numberIn = (body: string, name: string) => Number(new RegExp(`/${name} ([\\d.]+)`).exec(body)?.[1]);

class Interpreter {
  readonly texts: PdfText[] = [];
  readonly paths: PdfPath[] = [];
  readonly images: PdfImage[] = [];
  private state: State = { matrix: [1, 0, 0, 1, 0, 0], width: 1, opacity: 1 };
  private readonly stack: State[] = [];
  private subpaths: number[][] = [];
  private textMatrix: Matrix = [1, 0, 0, 1, 0, 0];
  private font = "";
  private size = 0;
  /** Letters are stroked alone: the halo under a text, not the text. */
  private halo = false;

  constructor(
    private readonly pageHeight: number,
    private readonly fonts: ReadonlyMap<string, readonly string[]>,
    private readonly named: Named,
  ) {}

  run(content: string): void {
    for (const line of content.split("\n")) {
      if (line.trim() === "") continue;
      const operator = /\S+$/.exec(line.trim())?.[0] ?? "";
      const numbers = line.trim().split(/\s+/).slice(0, -1).map(Number);
      this.step(operator, numbers, line);
    }
  }

  private at(x: number, y: number, matrix = this.state.matrix): [number, number] {
    const px = x * matrix[0] + y * matrix[2] + matrix[4];
    const py = x * matrix[1] + y * matrix[3] + matrix[5];
    return [px * mmPerPoint, (this.pageHeight - py) * mmPerPoint];
  }

  private finish(stroked: boolean): void {
    const scale = Math.hypot(this.state.matrix[0], this.state.matrix[1]) * mmPerPoint;
    this.paths.push({ subpaths: this.subpaths, width: stroked ? this.state.width * scale : null });
    this.subpaths = [];
  }

  private step(operator: string, numbers: readonly number[], line: string): void {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    const { state } = this;
    if (operator === "q") this.stack.push({ ...state });
    else if (operator === "Q") this.state = this.stack.pop() ?? state;
    else if (operator === "cm") state.matrix = times([a, b, c, d, e, f], state.matrix);
    else if (operator === "w") state.width = a;
    else if (operator === "m") this.subpaths.push([...this.at(a, b)]);
    else if (operator === "l") this.subpaths[this.subpaths.length - 1]?.push(...this.at(a, b));
    else if (operator === "S" || operator === "B*") this.finish(true);
    else if (operator === "f*") this.finish(false);
    else if (line.endsWith("W* n")) this.subpaths = [];
    else if (operator === "Tm") this.textMatrix = [a, b, c, d, e, f];
    else if (operator === "Tf") [this.font, this.size] = [/\/(\S+)/.exec(line)?.[1] ?? "", b];
    else if (operator === "BT") this.halo = false;
    else if (operator === "Tr") this.halo = a === 1;
    else if (operator === "gs") state.opacity = numberIn(this.bodyOf(line), "ca");
    else if (operator === "Do") this.place(this.bodyOf(line));
    else if (operator === "TJ") {
      if (!this.halo) this.show(line);
    } else if (!["h", "ET", "d", "j", "J", "cs", "CS", "scn", "SCN"].includes(operator)) {
      throw new Error(`unexpected operator in "${line}"`);
    }
  }

  private bodyOf(line: string): string {
    const body = this.named.get(/\/(\S+)/.exec(line)?.[1] ?? "");
    if (body === undefined) throw new Error(`nothing is named in "${line}"`);
    return body;
  }

  /** An image fills the unit square, its top row at 1. */
  private place(body: string): void {
    this.images.push({
      corners: [this.at(0, 1), this.at(1, 1), this.at(1, 0), this.at(0, 0)],
      opacity: this.state.opacity,
      width: numberIn(body, "Width"),
      height: numberIn(body, "Height"),
      filter: /\/Filter \/(\w+)/.exec(body)?.[1] ?? "",
      painted: this.paths.length + this.texts.length,
    });
  }

  private show(line: string): void {
    const matrix = times(this.textMatrix, this.state.matrix);
    const known = this.fonts.get(this.font) ?? [];
    const codes = [...line.matchAll(/<([0-9a-f]*)>/g)].flatMap(([, hex = ""]) => hex.match(/.{4}/g) ?? []);
    const text = codes.map((code) => known[Number.parseInt(code, 16)] ?? "\ufffd").join("");
    const [x, y] = this.at(0, 0, matrix);
    const [along, down] = this.at(1, 0, matrix);
    const scale = Math.hypot(matrix[0], matrix[1]) * mmPerPoint;
    const angle = Math.atan2(down - y, along - x);
    this.texts.push({ text, font: this.font, x, y, angle, size: this.size * scale });
  }
}

/** The pages of an uncompressed PDF, in order. */
export function readPdf(bytes: Uint8Array): readonly PdfPage[] {
  const all = objects(new TextDecoder("latin1").decode(bytes));
  const pages = [...all.values()].filter((body) => /\/Type \/Page\n/.test(body));
  return pages.map((page) => {
    const [, width = 0, height = 0] = (/MediaBox \[0 0 (\S+) (\S+)\]/.exec(page) ?? []).map(Number);
    const resources = all.get(reference(page, "Resources")) ?? "";
    const fonts = new Map(
      [...resources.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name = "", id = ""]) => {
        const cmap = streamOf(all.get(reference(all.get(id) ?? "", "ToUnicode")) ?? "");
        return [name, glyphs(cmap)];
      }),
    );
    const named = new Map(
      [...resources.matchAll(/\/((?:Gs|I)\d+) (\d+) 0 R/g)].map(
        ([, name = "", id = ""]) => [name, all.get(id) ?? ""] as const,
      ),
    );
    const reader = new Interpreter(height, fonts, named);
    reader.run(streamOf(all.get(reference(page, "Contents")) ?? ""));
    return {
      width: width * mmPerPoint,
      height: height * mmPerPoint,
      texts: reader.texts,
      paths: reader.paths,
      images: reader.images,
    };
  });
}
