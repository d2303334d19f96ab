/** Labels that stay where they are while the floor is under the hand: only what they say changes. */
import type { DrawingMark, MarkLayer, TextMark } from "../../drawing/marks";

export interface StillLabels {
  /** Layers as they are to be painted; while `held`, texts keep the places that they had before. */
  show(layers: readonly MarkLayer[], held: boolean): readonly MarkLayer[];
}

export function createStillLabels(): StillLabels {
  const before = new Map<MarkLayer["id"], MarkLayer>();
  return {
    show(layers, held) {
      if (held) return layers.map((layer) => keepPlaces(before.get(layer.id), layer));
      for (const layer of layers) before.set(layer.id, layer);
      return layers;
    },
  };
}

/** `now` with its texts at the places of `was`, where both write as many texts of each kind. */
export function keepPlaces(was: MarkLayer | undefined, now: MarkLayer): MarkLayer {
  if (!was || was === now) return now;
  const [old, texts] = [was.marks.filter(isText), now.marks.filter(isText)];
  if (old.length !== texts.length || texts.some((text, i) => text.style !== old[i]?.style)) return now;
  let next = 0;
  const marks = now.marks.map((mark): DrawingMark => {
    if (!isText(mark)) return mark;
    return { ...(old[next++] as TextMark), text: mark.text };
  });
  return { ...now, marks };
}

function isText(mark: DrawingMark): mark is TextMark {
  return mark.kind === "text";
}
