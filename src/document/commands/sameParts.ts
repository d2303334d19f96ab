/** Parts of a project that an edit left alone stay the same objects: what is reckoned from them isn't reckoned again. */
import type { Project } from "../schema";

type Fields = Record<string, unknown>;

/** `after`, with each part and each list that says the same as in `before` handed back as that very object. */
export function withSameParts(before: Project, after: Project): Project {
  return sharing(before as Fields, after as Fields, (was, is) =>
    isPart(was) && isPart(is) ? sharing(was, is, sameList) : sameList(was, is),
  ) as Project;
}

function sharing(before: Fields, after: Fields, share: (was: unknown, is: unknown) => unknown): Fields {
  const shared = Object.fromEntries(Object.entries(after).map(([key, is]) => [key, share(before[key], is)]));
  const keys = Object.keys(shared);
  const same =
    keys.length === Object.keys(before).length && keys.every((key) => Object.is(shared[key], before[key]));
  return same ? before : shared;
}

function sameList(was: unknown, is: unknown): unknown {
  const same =
    Array.isArray(was) &&
    Array.isArray(is) &&
    was.length === is.length &&
    was.every((item, i) => Object.is(item, is[i]));
  return same ? was : is;
}

function isPart(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
