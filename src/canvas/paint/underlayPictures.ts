/** The pictures under the plan: unpacked once, then painted where they lie in each view. */
import { type Drawing, thingKey, type Underlay } from "../../document";
import { toScreen, type View } from "../view/view";

export interface UnderlayPictures {
  /** Takes the drawing as it is now; true where the pictures look different. */
  update(drawing: Drawing): boolean;
  /** `factor` weakens all pictures alike, 0 to 1. */
  paint(context: CanvasRenderingContext2D, view: View, factor?: number): void;
  stop(): void;
}

interface Unpacked {
  /** The very string that was unpacked: another one is another picture. */
  readonly data: string;
  /** Whole, then each of half the size of the one before: far away a small one is quicker to paint, and smoother. */
  readonly levels: ImageBitmap[];
}

/** Halving ends when the longer side is at most this, px. */
const smallest = 512;

/** `ready` is called when a picture was unpacked, `unreadable` with its name when it can't be. */
export function createUnderlayPictures(
  ready: () => void,
  unreadable: (name: string) => void,
): UnderlayPictures {
  const unpacked = new Map<string, Unpacked>();
  let inputs: readonly unknown[] = [];
  let shown: readonly Underlay[] = [];

  function drop(id: string): void {
    for (const level of unpacked.get(id)?.levels ?? []) level.close();
    unpacked.delete(id);
  }

  async function unpack({ id, name, media, data }: Underlay): Promise<void> {
    const entry: Unpacked = { data, levels: [] };
    unpacked.set(id, entry);
    const wanted = () => unpacked.get(id) === entry;
    try {
      const whole = await createImageBitmap(new Blob([base64Bytes(data)], { type: media }));
      if (!take(entry, whole, wanted())) return;
      ready();
      let last = whole;
      while (Math.max(last.width, last.height) > smallest && wanted()) {
        last = await halved(last);
        if (!take(entry, last, wanted())) return;
      }
    } catch {
      if (wanted() && entry.levels.length === 0) unreadable(name);
    }
  }

  return {
    update({ underlays, hidden }) {
      const now = [underlays, hidden];
      if (now.every((input, i) => input === inputs[i])) return false;
      const before = shown;
      inputs = now;
      shown = underlays.filter(
        ({ id, strength }) => strength > 0 && !hidden.includes(thingKey({ kind: "underlay", id })),
      );
      for (const id of [...unpacked.keys()]) if (!underlays.some((each) => each.id === id)) drop(id);
      for (const underlay of shown) {
        if (unpacked.get(underlay.id)?.data === underlay.data) continue;
        drop(underlay.id);
        void unpack(underlay);
      }
      return shown.length !== before.length || shown.some((each, i) => each !== before[i]);
    },
    paint(context, view, factor = 1) {
      for (const underlay of shown) {
        const levels = unpacked.get(underlay.id)?.levels ?? [];
        if (levels.length > 0) paintOne(context, view, underlay, levels, factor);
      }
    },
    stop() {
      for (const id of [...unpacked.keys()]) drop(id);
    },
  };
}

function take(entry: Unpacked, level: ImageBitmap, wanted: boolean): boolean {
  if (wanted) entry.levels.push(level);
  else level.close();
  return wanted;
}

function halved(bitmap: ImageBitmap): Promise<ImageBitmap> {
  return createImageBitmap(bitmap, {
    resizeWidth: Math.max(1, Math.round(bitmap.width / 2)),
    resizeHeight: Math.max(1, Math.round(bitmap.height / 2)),
    resizeQuality: "medium",
  });
}

function paintOne(
  context: CanvasRenderingContext2D,
  view: View,
  underlay: Underlay,
  levels: readonly ImageBitmap[],
  factor: number,
): void {
  const { at, scale, turn, strength, width, height } = underlay;
  const zoom = scale * view.scale;
  context.save();
  context.translate(...toScreen(view, at));
  context.rotate(-(turn + view.angle));
  context.scale(zoom, zoom);
  context.globalAlpha = strength * factor;
  const { a, b } = context.getTransform();
  const drawnPixels = Math.hypot(a, b);
  // Near by a scan's own pixels may show.
  context.imageSmoothingEnabled = drawnPixels < 4;
  const level = Math.max(0, Math.floor(Math.log2(1 / drawnPixels)));
  const bitmap = levels[Math.min(level, levels.length - 1)] as ImageBitmap;
  context.drawImage(bitmap, -width / 2, -height / 2, width, height);
  context.restore();
}

function base64Bytes(data: string): Uint8Array<ArrayBuffer> {
  const text = atob(data);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}
