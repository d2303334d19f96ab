/** What files call their points and lines. */
import { breaklineKinds } from "../../document";
import type { LineKind } from "./incoming";

/** Does this word say that a point is a mark: a known height, not ground? */
export function saysMark(word: string): boolean {
  return /^\s*(?:bench[ -]?marks?|marks?|bms?)\s*$/i.test(word);
}

/** The kind of line that a file's own word names; absent where it names none. `layer` may say that it is a contour. */
export function lineKind(word: string, layer = word): { readonly kind?: LineKind } {
  const kind = breaklineKinds.find((each) => each === word);
  if (kind) return { kind };
  return /contour/i.test(layer) ? { kind: "contour" } : {};
}
