/** The pictures under the plan: unpacked once, then painted where they lie in each view. */
import { type Drawing, thingKey, type Underlay } from "../../document";
import { toScreen, type View } from "../view/view";

export interface UnderlayPictures {
  /** Takes the drawing as it is now; true where the pictures look different. */
  update(drawing: Drawing): boolean;
  paint(context: CanvasRenderingContext2D, view: View): void;
  stop(): void;
}

interface Unpacked {
  /** The very string that was unpacked: another one is another picture. */
  readonly data: string;
  bitmap: ImageBitmap | null;
}

/** `ready` is called when a picture was unpacked, `unreadable` with its name when it can't be. */
export function createUnderlayPictures(
  ready: () => void,
  unreadable: (name: string) => void,
): UnderlayPictures {
  const unpacked = new Map<string, Unpacked>();
  let inputs: readonly unknown[] = [];
  let shown: readonly Underlay[] = [];

  function drop(id: string): void {
    unpacked.get(id)?.bitmap?.close();
    unpacked.delete(id);
  }

  async function unpack({ id, name, media, data }: Underlay): Promise<void> {
    const entry: Unpacked = { data, bitmap: null };
    unpacked.set(id, entry);
    try {
      const bitmap = await createImageBitmap(new Blob([base64Bytes(data)], { type: media }));
      if (unpacked.get(id) !== entry) {
        bitmap.close();
        return;
      }
      entry.bitmap = bitmap;
      ready();
    } catch {
      if (unpacked.get(id) === entry) unreadable(name);
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
    paint(context, view) {
      for (const underlay of shown) {
        const bitmap = unpacked.get(underlay.id)?.bitmap;
        if (bitmap) paintOne(context, view, underlay, bitmap);
      }
    },
    stop() {
      for (const id of [...unpacked.keys()]) drop(id);
    },
  };
}

function paintOne(
  context: CanvasRenderingContext2D,
  view: View,
  underlay: Underlay,
  bitmap: ImageBitmap,
): void {
  const { at, scale, turn, strength, width, height } = underlay;
  const zoom = scale * view.scale;
  context.save();
  context.translate(...toScreen(view, at));
  context.rotate(-(turn + view.angle));
  context.scale(zoom, zoom);
  context.globalAlpha = strength;
  // Far away many pixels become one; near by a scan's own pixels may show.
  context.imageSmoothingEnabled = zoom < 4;
  context.imageSmoothingQuality = "medium";
  context.drawImage(bitmap, -width / 2, -height / 2, width, height);
  context.restore();
}

function base64Bytes(data: string): Uint8Array<ArrayBuffer> {
  const text = atob(data);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}
