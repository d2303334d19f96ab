/** A picture file → what the project keeps of it: upright, no larger than the limits, as base64. */
import type { Underlay } from "../../document";
import {
  exifOrientation,
  fittedSize,
  type Orientation,
  type PictureHeader,
  pictureLimits,
  readHeader,
  uprightMatrix,
  uprightSize,
  withoutOrientation,
} from "../../underlay";

/** What of an underlay comes from its file. */
export interface KeptImage extends Pick<Underlay, "media" | "data" | "width" | "height"> {
  /** What was changed to keep it small, in words for a message; null when it is kept as it came. */
  readonly change: string | null;
}

/** Why a picture isn't taken, in words for people. */
export class Unreadable extends Error {}

export async function keepImage(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<KeptImage> {
  const header = readHeader(bytes);
  if (!header) throw new Unreadable(`“${name}” can't be read. Choose a PNG, JPEG, WebP or PDF file.`);
  if (header.width * header.height > pictureLimits.pixels)
    throw new Unreadable(
      `“${name}” is ${sizeWords(header)} pixels large, too many to unpack. Save it smaller, or cut out the part that you need.`,
    );
  const orientation = exifOrientation(bytes);
  const stored = fittedSize(header.width, header.height);
  const fits = stored.width === header.width && stored.height === header.height;
  const plain = new Blob([withoutOrientation(bytes)], { type: header.media });
  const bitmap = await unpack(name, plain, fits ? null : stored);
  try {
    if (fits && orientation === 1 && bytes.length <= pictureLimits.keptBytes)
      return { media: header.media, data: await base64(plain), ...stored, change: null };
    const kept = await keepCanvas(uprightCanvas(bitmap, orientation), header.media);
    return { ...kept, change: changeWords(uprightSize(orientation, header.width, header.height), kept) };
  } finally {
    bitmap.close();
  }
}

/** What the project keeps of a drawn picture: packed tighter, then made smaller, until it fits. */
export async function keepCanvas(
  drawn: HTMLCanvasElement,
  media: PictureHeader["media"],
): Promise<Omit<KeptImage, "change">> {
  let canvas = drawn;
  // Line work stays sharp as PNG; where that takes too much room it is packed as photographs are.
  const kinds = media === "image/png" ? (["image/png", "image/webp"] as const) : ([media] as const);
  for (;;) {
    for (const kind of kinds) {
      const blob = await packed(canvas, kind);
      if (blob.size <= pictureLimits.keptBytes)
        return { media: kind, data: await base64(blob), width: canvas.width, height: canvas.height };
    }
    canvas = shrunk(canvas, 0.75);
  }
}

async function unpack(
  name: string,
  file: Blob,
  size: { width: number; height: number } | null,
): Promise<ImageBitmap> {
  try {
    return await (size
      ? createImageBitmap(file, {
          resizeWidth: size.width,
          resizeHeight: size.height,
          resizeQuality: "high",
        })
      : createImageBitmap(file));
  } catch {
    throw new Unreadable(
      `“${name}” can't be read: the file is damaged, or cut short. Open it in another program and save it anew.`,
    );
  }
}

function uprightCanvas(bitmap: ImageBitmap, orientation: Orientation): HTMLCanvasElement {
  const { width, height } = uprightSize(orientation, bitmap.width, bitmap.height);
  const [canvas, context] = blankCanvas(width, height);
  context.setTransform(...uprightMatrix(orientation, bitmap.width, bitmap.height));
  context.drawImage(bitmap, 0, 0);
  return canvas;
}

function shrunk(canvas: HTMLCanvasElement, by: number): HTMLCanvasElement {
  const [smaller, context] = blankCanvas(
    Math.max(1, Math.round(canvas.width * by)),
    Math.max(1, Math.round(canvas.height * by)),
  );
  context.imageSmoothingQuality = "high";
  context.drawImage(canvas, 0, 0, smaller.width, smaller.height);
  return smaller;
}

export function blankCanvas(width: number, height: number): [HTMLCanvasElement, CanvasRenderingContext2D] {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d");
  if (!context)
    throw new Unreadable("There is not enough memory left to unpack the picture. Save it smaller.");
  return [canvas, context];
}

function packed(canvas: HTMLCanvasElement, media: PictureHeader["media"]): Promise<Blob> {
  return new Promise((resolve, reject) => {
    const take = (blob: Blob | null) =>
      blob
        ? resolve(blob)
        : reject(new Unreadable("There is not enough memory left to keep the picture. Save it smaller."));
    canvas.toBlob(take, media, 0.9);
  });
}

function base64(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ""));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** A turn alone is no loss that a person need hear of. */
function changeWords(before: Size, kept: Size): string | null {
  if (before.width === kept.width && before.height === kept.height) return null;
  return `made smaller, from ${sizeWords(before)} to ${sizeWords(kept)} pixels, so that the project file stays light`;
}

const sizeWords = ({ width, height }: Size): string => `${width} × ${height}`;
