/** Picture files made in the test, and what the plan shows of them. */
import { crc32, deflateSync } from "node:zlib";
import { expect, type Page } from "@playwright/test";
import PDFDocument from "pdfkit";
import { tiffBlock } from "../../tests/underlay/pictures";

export type Colour = readonly [number, number, number];
export const red: Colour = [220, 20, 20];
export const blue: Colour = [20, 40, 220];
export const white: Colour = [255, 255, 255];

/** A PNG of whole pixels, each coloured by its place. */
export function png(width: number, height: number, colour: (x: number, y: number) => Colour): Buffer {
  const rows = Buffer.alloc(height * (1 + width * 3));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) rows.set(colour(x, y), y * (1 + width * 3) + 1 + x * 3);
  const chunk = (name: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(data.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(rows)),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** 400 × 200 px: red left third, white middle, blue right third. */
export const flag = png(400, 200, (x) => (x < 133 ? red : x < 267 ? white : blue));

/**
 * As a camera stores a picture taken with the camera on its side, 300 × 150 px: red left, blue right, a green patch in
 * the first rows and columns; EXIF orientation 6 asks to turn it clockwise. The page packs it.
 */
export async function cameraJpeg(page: Page): Promise<Buffer> {
  const stored = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(300, 150);
    const context = canvas.getContext("2d");
    if (!context) throw new Error("no canvas");
    for (const [colour, x, y, w, h] of [
      ["rgb(220,20,20)", 0, 0, 150, 150],
      ["rgb(20,40,220)", 150, 0, 150, 150],
      ["rgb(20,160,20)", 0, 0, 60, 60],
    ] as const) {
      context.fillStyle = colour;
      context.fillRect(x, y, w, h);
    }
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.95 });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  const exif = [...Buffer.from("Exif\0\0", "latin1"), ...tiffBlock(6, "big")];
  return Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, exif.length + 2, ...exif, ...stored.slice(2)]);
}

/** The first page is green, the second red, white and blue as the flag, with words in a font of its own. */
export function twoPages(): Promise<Buffer> {
  const doc = new PDFDocument({ size: [400, 200], margin: 0, autoFirstPage: false });
  const pieces: Buffer[] = [];
  doc.on("data", (piece: Buffer) => pieces.push(piece));
  doc.addPage().rect(0, 0, 400, 200).fill("#14a014");
  doc.addPage().rect(0, 0, 133, 200).fill("#dc1414");
  doc.rect(267, 0, 133, 200).fill("#1428dc");
  doc.font("assets/fonts/SourceSans3-SemiBold.ttf").fontSize(20).fillColor("#000").text("Plat", 170, 90);
  return new Promise((resolve) => {
    doc.on("end", () => resolve(Buffer.concat(pieces)));
    doc.end();
  });
}

/** What the plan shows at a place, over all its canvases, as one colour on white. */
export async function colourAt(page: Page, [x, y]: readonly [number, number]): Promise<Colour> {
  const shot = await page.screenshot({ clip: { x: x - 1, y: y - 1, width: 3, height: 3 } });
  return page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([Uint8Array.from(bytes)], { type: "image/png" }));
      const context = new OffscreenCanvas(3, 3).getContext("2d");
      context?.drawImage(image, 0, 0);
      const [r = 0, g = 0, b = 0] = context?.getImageData(1, 1, 1, 1).data ?? [];
      return [r, g, b] as const;
    },
    [...shot],
  );
}

export const isRed = ([r, g, b]: Colour) => r > g + 40 && r > b + 40;
export const isGreen = ([r, g, b]: Colour) => g > r + 40 && g > b + 40;
export const isBlue = ([r, g, b]: Colour) => b > r + 40 && b > g + 40;

/** Waits until the place has the colour: pictures are unpacked beside the page's own work. */
export const expectColour = (page: Page, at: readonly [number, number], is: (colour: Colour) => boolean) =>
  expect.poll(async () => is(await colourAt(page, at))).toBe(true);

/** Where a new picture of so many pixels lies: in the middle of the view, 70 % of it wide or high. */
export async function newPicture(page: Page, width: number, height: number) {
  const box = await page.getByTestId("plan").boundingBox();
  if (!box) throw new Error("no plan");
  const middle: [number, number] = [box.x + box.width / 2, box.y + box.height / 2];
  const share = Math.min((box.width * 0.7) / width, (box.height * 0.7) / height);
  return { middle, wide: width * share, high: height * share };
}

/** JPEG 2000, 32 × 16 px, lossless: left half red, right half blue. */
const scan = Buffer.from(
  "AAAADGpQICANCocKAAAAFGZ0eXBqcDIgAAAAAGpwMiAAAAAtanAyaAAAABZpaGRyAAAAEAAAACAAAwcHAAAAAAAPY29scgEAAAAA" +
    "ABAAAAEWanAyY/9P/1EALwAAAAAAIAAAABAAAAAAAAAAAAAAACAAAAAQAAAAAAAAAAAAAwcBAQcBAQcBAf9SAAwAAAABAAQEBAAB" +
    "/1wAEEBASEhQSEhQSEhQSEhQ/2QAJQABQ3JlYXRlZCBieSBPcGVuSlBFRyB2ZXJzaW9uIDIuNS40/5AACgAAAAAAkgAB/5PfgBgE" +
    "PUfPtAwIF2ffgBgHDQvH2gYAAOlHwPkBAAWLx9oGAAnJb8faDAANC+wYkr/A+QGADgs5x9oMAA4PegxJX8faEAAiGsOtfljhj8D5" +
    "AoAhbhqtf8faEAAhbsGtflj2l8faEAA2nj0FKgQDf8D5AwA18j3GHljH2hAANfI7BSoEA3//2Q==",
  "base64",
);

/** One page of 400 × 200 points that is nothing but a scan in JPEG 2000, as archives keep them. */
export function scannedPage(): Buffer {
  const content = Buffer.from("400 0 0 200 0 0 cm /Scan Do");
  const objects = [
    Buffer.from("<< /Type /Catalog /Pages 2 0 R >>"),
    Buffer.from("<< /Type /Pages /Kids [3 0 R] /Count 1 >>"),
    Buffer.from(
      "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 400 200] /Contents 5 0 R /Resources << /XObject << /Scan 4 0 R >> >> >>",
    ),
    stream("/Type /XObject /Subtype /Image /Width 32 /Height 16 /Filter /JPXDecode", scan),
    stream("", content),
  ];
  let file = Buffer.from("%PDF-1.7\n");
  const places = objects.map((object, i) => {
    const place = file.length;
    file = Buffer.concat([file, Buffer.from(`${i + 1} 0 obj\n`), object, Buffer.from("\nendobj\n")]);
    return `${String(place).padStart(10, "0")} 00000 n \n`;
  });
  const table = `xref\n0 6\n0000000000 65535 f \n${places.join("")}`;
  const end = `trailer\n<< /Size 6 /Root 1 0 R >>\nstartxref\n${file.length}\n%%EOF\n`;
  return Buffer.concat([file, Buffer.from(table + end)]);
}

function stream(entries: string, data: Buffer): Buffer {
  const head = Buffer.from(`<< ${entries} /Length ${data.length} >>\nstream\n`);
  return Buffer.concat([head, data, Buffer.from("\nendstream")]);
}
