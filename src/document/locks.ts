/** What is locked keeps its place and stays, however an edit is given: by hand, typed in a panel, or as part of another edit. */
import type { Project } from "./schema";
import { type Thing, thingKey } from "./thing";
import { hasThing, thingName, thingShape } from "./things";

/** Why an edit is refused: it moves or takes away what is locked before and after it; null where it doesn't. */
export function lockedRefusal(before: Project, after: Project): string | null {
  const { locked } = before.drawing;
  if (locked.length === 0 || before === after) return null;
  const kept = new Set(after.drawing.locked);
  const broken = lockedThings(before).find(
    (thing) => isKept(thing, kept) && !staysAsItIs(before, after, thing),
  );
  if (!broken) return null;
  const holder = broken.kind === "door" || broken.kind === "window" ? "building" : null;
  const name = thingName(before, broken);
  return holder && kept.has(holder)
    ? `The ${name} is locked with its building. Unlock that first: right click it, or “Unlock” in the menu Edit.`
    : `The ${name} is locked. Unlock it first: right click it, or “Unlock” in the menu Edit.`;
}

/** What is locked, doors and windows of a locked building too; a plan may hold a million shots that aren't. */
function lockedThings({ drawing, building }: Project): Thing[] {
  return drawing.locked.flatMap((key): Thing[] => {
    const [kind, id] = splitKey(key);
    if (kind === "lot") return [{ kind }];
    if (kind !== "building") return [{ kind, id } as Thing];
    const openings = [
      ...(building?.doors ?? []).map((door): Thing => ({ kind: "door", id: door.id })),
      ...(building?.windows ?? []).map((window): Thing => ({ kind: "window", id: window.id })),
    ];
    return [{ kind }, ...openings];
  });
}

function splitKey(key: string): [Thing["kind"], string] {
  const colon = key.indexOf(":");
  return (colon < 0 ? [key, ""] : [key.slice(0, colon), key.slice(colon + 1)]) as [Thing["kind"], string];
}

function isKept(thing: Thing, locked: ReadonlySet<string>): boolean {
  const isOpening = thing.kind === "door" || thing.kind === "window";
  return locked.has(thingKey(thing)) || (isOpening && locked.has("building"));
}

function staysAsItIs(before: Project, after: Project, thing: Thing): boolean {
  if (!hasThing(before, thing)) return true;
  if (!hasThing(after, thing)) return false;
  return JSON.stringify(placeOf(before, thing)) === JSON.stringify(placeOf(after, thing));
}

/** What says where a thing stands, as far as it is its own: what follows another thing may go along with that. */
function placeOf(project: Project, thing: Thing): unknown {
  const { building, survey, grading, drawing } = project;
  const own = <T extends { readonly id: string }>(list: readonly T[] = []) =>
    "id" in thing ? list.find(({ id }) => id === thing.id) : undefined;
  switch (thing.kind) {
    case "door":
    case "window": {
      const opening = own<{ id: string; wall: number; offset: number; width: number }>(
        thing.kind === "door" ? building?.doors : building?.windows,
      );
      return opening && [opening.wall, opening.offset, opening.width];
    }
    case "shot":
      return own(survey.shots)?.place;
    case "pit":
      return own(survey.pits)?.place;
    case "drive": {
      const drive = own(grading.drives);
      return drive?.door ? drive.line.slice(0, -1) : drive?.line;
    }
    case "dimension": {
      const dimension = own(drawing.dimensions);
      return dimension && [dimension.from, dimension.to];
    }
    default:
      return thingShape(project, thing)?.points;
  }
}
