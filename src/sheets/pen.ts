/** A pen on a PDF page: millimetres from the page's top left corner, y down. The only place that knows pdfkit. */
import PDFDocument from "pdfkit";
import { textWidth, type Weight } from "../drawing/text-width";

/** The bytes of the typeface's files; without them no sheet can be made. */
export interface SheetFonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}

export interface Stroke {
  readonly colour: string;
  /** mm. */
  readonly width: number;
  readonly dash?: readonly number[];
}

export interface TextLook {
  readonly size: number;
  readonly weight?: Weight;
  readonly colour: string;
  readonly anchor?: "start" | "middle" | "end";
  /** Radians clockwise, as y runs down. */
  readonly angle?: number;
  /** Paper cleared round the letters themselves, mm. */
  readonly halo?: number;
}

export interface PicturePlace {
  /** Page place of its middle, mm. */
  readonly middle: readonly [number, number];
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** Radians clockwise, as y runs down. */
  readonly angle: number;
  readonly strength: number;
}

export type Ring = ArrayLike<number>;

const pointsPerMm = 72 / 25.4;
/** Coordinates are written to a thousandth of a millimetre: finer than any printer, and a small file. */
const round = (mm: number) => Math.round(mm * 1000) / 1000;

export interface PenOptions {
  readonly title: string;
  readonly subject: string;
  readonly date: Date;
  /** False writes the page's drawing as plain text (for tests). */
  readonly compress: boolean;
}

export class Pen {
  private readonly document: PDFKit.PDFDocument;
  private readonly chunks: Uint8Array[] = [];

  constructor(fonts: SheetFonts, options: PenOptions) {
    this.document = new PDFDocument({
      autoFirstPage: false,
      compress: options.compress,
      pdfVersion: "1.7",
      lang: "en",
      displayTitle: true,
      // No default font: the standard ones would not be embedded.
      font: "",
      info: {
        Title: options.title,
        Author: "Drysill",
        Creator: "Drysill",
        Producer: "Drysill",
        Subject: options.subject,
        CreationDate: options.date,
        ModDate: options.date,
      },
    });
    this.document.on("data", (chunk: Uint8Array) => this.chunks.push(chunk));
    this.document.registerFont("400", fonts.regular);
    this.document.registerFont("600", fonts.semibold);
  }

  /** Starts a page of a size in mm. */
  page(width: number, height: number): void {
    this.document.addPage({ size: [width * pointsPerMm, height * pointsPerMm], margin: 0 });
    this.document.scale(pointsPerMm);
    this.document.lineJoin("round").lineCap("butt");
  }

  /** Everything drawn by `draw` shows only within the rings (even-odd). */
  clipped(rings: readonly Ring[], draw: () => void): void {
    this.document.save();
    this.trace(rings, true);
    this.document.clip("even-odd");
    draw();
    this.document.restore();
  }

  line(points: Ring, stroke: Stroke, closed = false): void {
    if (points.length < 4) return;
    this.trace([points], closed);
    this.stroke(stroke);
  }

  /** Many separate segments in one go: x0, y0, x1, y1 each. */
  segments(list: readonly (readonly [number, number, number, number])[], stroke: Stroke): void {
    if (list.length === 0) return;
    for (const [x0, y0, x1, y1] of list) {
      this.document.moveTo(round(x0), round(y0)).lineTo(round(x1), round(y1));
    }
    this.stroke(stroke);
  }

  area(rings: readonly Ring[], fill: string, stroke?: Stroke): void {
    this.trace(rings, true);
    if (!stroke) {
      this.document.fill(fill, "even-odd");
      return;
    }
    this.look(stroke);
    this.document.fillAndStroke(fill, stroke.colour, "even-odd");
  }

  rectangle(x: number, y: number, width: number, height: number, fill: string | null, stroke?: Stroke): void {
    const ring = [x, y, x + width, y, x + width, y + height, x, y + height];
    if (fill) this.area([ring], fill, stroke);
    else if (stroke) this.line(ring, stroke, true);
  }

  /** A PNG or JPEG about its middle; `strength` 0 unseen, 1 full. */
  picture(bytes: Uint8Array, { middle, width, height, angle, strength }: PicturePlace): void {
    const { document } = this;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    document.save();
    document.transform(c, s, -s, c, round(middle[0]), round(middle[1]));
    document.opacity(strength);
    // pdfkit takes bytes; its types know only Node's own kind of them.
    document.image(bytes as unknown as ArrayBuffer, -width / 2, -height / 2, { width, height });
    document.restore();
  }

  /** One line of text with its baseline at y. */
  text(text: string, x: number, y: number, look: TextLook): void {
    const { document } = this;
    const { size, weight = 400, anchor = "start", angle = 0, halo } = look;
    document.font(String(weight)).fontSize(size).fillColor(look.colour);
    const width = anchor === "start" ? 0 : textWidth(text, size, weight);
    const start = anchor === "end" ? -width : anchor === "middle" ? -width / 2 : 0;
    const place = { x, y, start, angle };
    if (halo !== undefined) {
      this.look({ colour: "#ffffff", width: 2 * halo });
      document.strokeColor("#ffffff");
      this.write(text, place, { stroke: true, fill: false });
    }
    this.write(text, place, {});
  }

  private write(
    text: string,
    { x, y, start, angle }: { x: number; y: number; start: number; angle: number },
    paint: { readonly stroke?: boolean; readonly fill?: boolean },
  ): void {
    const { document } = this;
    const options = { lineBreak: false, baseline: "alphabetic", ...paint } as const;
    if (angle === 0) {
      document.text(text, round(x + start), round(y), options);
      return;
    }
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    document.save();
    document.transform(c, s, -s, c, round(x), round(y));
    document.text(text, round(start), 0, options);
    document.restore();
  }

  /** Ends the document and gives its bytes. */
  finish(): Promise<Uint8Array<ArrayBuffer>> {
    return new Promise((resolve, reject) => {
      this.document.on("error", reject);
      this.document.on("end", () => resolve(joined(this.chunks)));
      this.document.end();
    });
  }

  private trace(rings: readonly Ring[], closed: boolean): void {
    for (const ring of rings) {
      this.document.moveTo(round(ring[0] ?? 0), round(ring[1] ?? 0));
      for (let i = 2; i + 1 < ring.length; i += 2)
        this.document.lineTo(round(ring[i] ?? 0), round(ring[i + 1] ?? 0));
      if (closed) this.document.closePath();
    }
  }

  private look(stroke: Stroke): void {
    this.document.lineWidth(stroke.width);
    this.document.addContent(`[${(stroke.dash ?? []).join(" ")}] 0 d`);
  }

  private stroke(stroke: Stroke): void {
    this.look(stroke);
    this.document.stroke(stroke.colour);
  }
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.byteLength, 0));
  let offset = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, offset);
    offset += chunk.byteLength;
  }
  return bytes;
}
