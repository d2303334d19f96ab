/** Typed lengths that look as if typed in another unit: asked about, and reckoned with as they are. */
import type { Measure, StakeGrid, TestPit } from "../document/schema";
import type { Problem } from "../solve/results";
import { asksAgain } from "../units";

export interface NamedLength {
  readonly id: string;
  readonly where: string;
  readonly length: Measure;
}

/** Each against the others. Problems of the given code. */
export function farLengths(all: readonly NamedLength[], code: string): Problem[] {
  return all.flatMap((one, i): Problem[] => {
    const others = all.filter((_, k) => k !== i).map(({ length }) => length.m);
    const doubt = asksAgain(one.length.m, others);
    return doubt === null ? [] : [farProblem(one, code, doubt, "the others")];
  });
}

function farProblem(
  { id, where, length }: NamedLength,
  code: string,
  { times, larger }: { readonly times: number; readonly larger: boolean },
  than: string,
): Problem {
  return {
    code,
    severity: "note",
    where,
    what: `It is typed as ${length.text}, about ${times} times ${larger ? "longer" : "shorter"} than ${than}. Is its unit right, and no figure too many or too few?`,
    how: "Type it again with its unit, or leave it where it is meant so.",
    ids: [id],
  };
}

const layers = [
  ["topsoil", "topsoil"],
  ["oldFill", "old fill"],
  ["rock", "rock"],
  ["water", "water"],
  ["depth", "how deep it was dug"],
] as const;

/**
 * Depths of test pits: each against the same layer in the other pits; with few pits against all other depths, where only one
 * that is far too deep is asked about, since topsoil and rock lie honestly far apart.
 */
export function farPitDepths(pits: readonly TestPit[]): Problem[] {
  const all = pits.flatMap((pit) =>
    layers.flatMap(([layer, words]) => {
      const length = pit[layer];
      return length === null
        ? []
        : [{ id: pit.id, where: `${pit.name || "test pit"}, ${words}`, layer, length }];
    }),
  );
  return all.flatMap((one): Problem[] => {
    const others = all.filter((each) => each !== one);
    const alike = others.filter(({ layer }) => layer === one.layer).map(({ length }) => length.m);
    const byLayer = asksAgain(one.length.m, alike);
    if (byLayer) return [farProblem(one, "pit-doubtful", byLayer, "in the other pits")];
    const byAll = asksAgain(
      one.length.m,
      others.map(({ length }) => length.m),
    );
    return byAll?.larger ? [farProblem(one, "pit-doubtful", byAll, "the other depths")] : [];
  });
}

/** Layers of a pit that lie in an order that ground doesn't have: topsoil is on top, fill and rock below it, nothing below the pit's floor. */
export function pitOrder(pits: readonly TestPit[]): Problem[] {
  return pits.flatMap((pit) => {
    const downwards = layers
      .filter(([layer]) => layer !== "water")
      .flatMap(([layer, words]) => {
        const length = pit[layer];
        return length === null ? [] : [{ words, length }];
      });
    return downwards.slice(1).flatMap((lower, i): Problem[] => {
      const upper = downwards[i];
      if (upper === undefined || lower.length.m >= upper.length.m) return [];
      return [
        {
          code: "pit-doubtful",
          severity: "caution",
          where: `${pit.name || "test pit"}, ${lower.words}`,
          what: `It is typed as ${lower.length.text} down, above ${upper.words} at ${upper.length.text}. Each is measured from the ground down, and lies below the one before.`,
          how: "Look at both depths; one may be a thickness, or they are exchanged.",
          ids: [pit.id],
        },
      ];
    });
  });
}

/** Spacings of stakes against the building's sides and the other spacings. */
export function farSpacings(grids: readonly StakeGrid[], sides: readonly number[]): Problem[] {
  const all = grids.flatMap(({ id, name, rowSpacing, columnSpacing }) => [
    { id, where: `${name || "grid of stakes"}, between rows`, length: rowSpacing },
    { id, where: `${name || "grid of stakes"}, between columns`, length: columnSpacing },
  ]);
  return all.flatMap((one): Problem[] => {
    const others = all.filter((each) => each !== one).map(({ length }) => length.m);
    const doubt = asksAgain(one.length.m, [...sides, ...others]);
    return doubt === null
      ? []
      : [farProblem(one, "stakes-doubtful", doubt, "the building's sides and the other spacings")];
  });
}
