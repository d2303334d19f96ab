/** Edits of the lot, the drive, the swale, the grading and the project's settings. */
import {
  type Apron,
  apronSchema,
  type Display,
  type Drainage,
  type Drive,
  displaySchema,
  drainageSchema,
  driveSchema,
  type Feature,
  featureSchema,
  type Grading,
  type Materials,
  materialsSchema,
  type Point,
  type Project,
  type Rules,
  rulesSchema,
  type Storm,
  type Swale,
  slopesSchema,
  stormSchema,
  swaleSchema,
  titleSchema,
  truckSchema,
  type Undercut,
  undercutSchema,
  type Work,
  workSchema,
} from "../schema";
import { lotAlong } from "../setbackLines";
import { inUsualSizes } from "../usualSizes";
import { mixedC } from "../waterCovers";
import { command, done, type Edit, nextId, patched, refuse, replaced } from "./command";
import { doorMiddle } from "./follow";

function withGrading(project: Project, change: Partial<Grading>): Project {
  return { ...project, grading: { ...project.grading, ...change } };
}

export const renameProject = command("project.rename", (project, args: { name: string }) =>
  args.name.trim() === ""
    ? refuse("A plan needs a name.")
    : done({ ...project, name: args.name.trim() }, "rename plan", { mergeKey: "rename" }),
);

/** The lot's corners; `drawn`: drawn anew, however many stay where they were. */
interface LotOutline {
  readonly outline: readonly Point[];
  readonly drawn?: true;
}

export const setLotOutline = command("lot.setOutline", (project, args: LotOutline) => {
  if (args.outline.length > 0 && args.outline.length < 3)
    return refuse("A lot needs at least three corners.");
  const outline = args.outline.map(([x, y]): Point => [x, y]);
  // A corner that is only moved leaves each line its number.
  const lot =
    outline.length === project.lot.outline.length
      ? { ...project.lot, outline }
      : lotAlong(project.lot, outline);
  return done({ ...project, lot }, args.drawn ? "draw lot" : outlineWords(project.lot.outline, outline));
});

/** What was done to the lot's corners: one moved or taken away by its figures isn't a lot drawn anew. */
function outlineWords(before: readonly Point[], after: readonly Point[]): string {
  if (after.length === 0) return "remove lot";
  const same = (a: Point | undefined, b: Point | undefined) => a?.[0] === b?.[0] && a?.[1] === b?.[1];
  const changed = before.filter((at, i) => !same(at, after[i])).length;
  if (before.length === after.length && changed === 1) return "move a lot corner";
  const left = before.filter((at) => !after.some((other) => same(at, other))).length;
  if (before.length === after.length + 1 && left === 1) return "remove a lot corner";
  return "draw lot";
}

export const setNorth = command("lot.setNorth", (project, args: { north: number }) =>
  Number.isFinite(args.north)
    ? done({ ...project, lot: { ...project.lot, north: args.north } }, "turn north", { mergeKey: "north" })
    : refuse("The turn of north is not a number."),
);

export const addFeature = command(
  "lot.addFeature",
  (project, args: { kind: Feature["kind"]; name?: string; points: readonly Point[]; keepClear?: number }) => {
    const id = nextId("f", project.lot.features);
    const feature = featureSchema.safeParse({
      id,
      kind: args.kind,
      name: args.name ?? "",
      points: args.points,
      keepClear: args.keepClear,
    });
    if (!feature.success) return refuse("A feature needs a place, and nothing less than 0 to keep clear.");
    return done(
      { ...project, lot: { ...project.lot, features: [...project.lot.features, feature.data] } },
      `add ${args.kind === "other" ? "feature" : args.kind.replace("-", " ")}`,
      { made: id },
    );
  },
);

export const changeFeature = command(
  "lot.changeFeature",
  (project, args: { id: string; patch: Partial<Omit<Feature, "id">> }) => {
    const features = replaced(project.lot.features, args.id, (feature) => ({ ...feature, ...args.patch }));
    const fields = Object.keys(args.patch).join(" ");
    const label =
      fields === "points" ? "move feature" : fields === "name" ? "rename feature" : "change feature";
    return features
      ? done({ ...project, lot: { ...project.lot, features } }, label)
      : refuse("That feature is gone.");
  },
);

export const removeFeature = command("lot.removeFeature", (project, args: { id: string }) =>
  done(
    {
      ...project,
      lot: { ...project.lot, features: project.lot.features.filter(({ id }) => id !== args.id) },
    },
    "remove feature",
  ),
);

export const addDrive = command(
  "drive.add",
  (project, args: { line: readonly Point[]; door?: string | null; width?: number }): Edit => {
    if (args.line.length < 2) return refuse("A drive needs at least two places: the road and the door.");
    const id = nextId("v", project.grading.drives);
    const name = project.grading.drives.length === 0 ? "drive" : `drive ${project.grading.drives.length + 1}`;
    const drive = driveSchema.safeParse({
      id,
      name,
      line: args.line,
      door: args.door ?? null,
      width: args.width,
    });
    if (!drive.success) return refuse("The drive's line has a place that is not a number.");
    const made = inUsualSizes(drive.data, project.display);
    return done(withGrading(project, { drives: [...project.grading.drives, made] }), "draw drive", {
      made: id,
    });
  },
);

export const changeDrive = command(
  "drive.change",
  (project, args: { id: string; patch: Partial<Omit<Drive, "id">>; what?: string }): Edit => {
    const drive = project.grading.drives.find(({ id }) => id === args.id);
    if (!drive) return refuse("That drive is gone.");
    const next = patched<Drive>(driveSchema, drive, {
      ...endAtDoor(project, drive, args.patch),
      ...args.patch,
    });
    if (!next.ok) return refuse(next.why);
    const drives = replaced(project.grading.drives, args.id, () => next.value);
    return drives
      ? done(withGrading(project, { drives }), args.what ?? "change drive")
      : refuse("That drive is gone.");
  },
);

/** A drive that is given a door, and no line with it, ends in the middle of that door. */
function endAtDoor({ building }: Project, drive: Drive, patch: Partial<Drive>): Partial<Drive> {
  const door = patch.door && !patch.line ? building?.doors.find(({ id }) => id === patch.door) : undefined;
  const end = door && building ? doorMiddle(building.outline, door) : null;
  return end ? { line: [...drive.line.slice(0, -1), end] } : {};
}

export const removeDrive = command("drive.remove", (project, args: { id: string }) =>
  done(
    withGrading(project, { drives: project.grading.drives.filter(({ id }) => id !== args.id) }),
    "remove drive",
  ),
);

/** `shape`: how its bed runs and what its section is, where that isn't as usual. */
interface NewSwale {
  readonly line: readonly Point[];
  readonly shape?: Partial<Omit<Swale, "id" | "name" | "line">>;
}

export const addSwale = command("swale.add", (project, args: NewSwale): Edit => {
  if (args.line.length < 2) return refuse("A swale needs at least two places: its high end and its outlet.");
  const id = nextId("w", project.grading.swales);
  const name = project.grading.swales.length === 0 ? "swale" : `swale ${project.grading.swales.length + 1}`;
  const swale = swaleSchema.safeParse({ ...args.shape, id, name, line: args.line });
  if (!swale.success) return refuse("The swale's line or shape has a figure that can't be used.");
  const made = inUsualSizes(swale.data, project.display);
  return done(withGrading(project, { swales: [...project.grading.swales, made] }), "draw swale", {
    made: id,
  });
});

export const changeSwale = command(
  "swale.change",
  (project, args: { id: string; patch: Partial<Omit<Swale, "id">>; what?: string }): Edit => {
    const swale = project.grading.swales.find(({ id }) => id === args.id);
    if (!swale) return refuse("That swale is gone.");
    const next = patched<Swale>(swaleSchema, swale, args.patch);
    if (!next.ok) return refuse(next.why);
    const swales = replaced(project.grading.swales, args.id, () => next.value);
    return swales
      ? done(withGrading(project, { swales }), args.what ?? "change swale")
      : refuse("That swale is gone.");
  },
);

export const removeSwale = command("swale.remove", (project, args: { id: string }) =>
  done(
    withGrading(project, { swales: project.grading.swales.filter(({ id }) => id !== args.id) }),
    "remove swale",
  ),
);

export const changeApron = command("grading.changeApron", (project, args: { patch: Partial<Apron> }) => {
  const next = patched<Apron>(apronSchema, project.grading.apron, args.patch);
  return next.ok ? done(withGrading(project, { apron: next.value }), "change apron") : refuse(next.why);
});

export const changeSlopes = command(
  "grading.changeSlopes",
  (project, args: { patch: Partial<Grading["slopes"]> }) => {
    const next = patched<Grading["slopes"]>(slopesSchema, project.grading.slopes, args.patch);
    return next.ok
      ? done(withGrading(project, { slopes: next.value }), "change side slopes")
      : refuse(next.why);
  },
);

export const changeRules = command("rules.change", (project, args: { patch: Partial<Rules> }) => {
  const next = patched<Rules>(rulesSchema, project.rules, args.patch);
  return next.ok ? done({ ...project, rules: next.value }, "change a limit") : refuse(next.why);
});

export const changeMaterials = command("materials.change", (project, args: { patch: Partial<Materials> }) => {
  const { swell, shrink } = args.patch;
  if (swell !== undefined && !(swell >= 1 && swell <= 2.5))
    return refuse("Dug earth takes more room, not less: swell lies between 1 and 2.5.");
  if (shrink !== undefined && !(shrink >= 0.5 && shrink <= 1.5))
    return refuse("Shrink lies between 0.5 and 1.5: compacted for one in the bank.");
  const next = patched<Materials>(materialsSchema, project.materials, args.patch);
  return next.ok ? done({ ...project, materials: next.value }, "change materials") : refuse(next.why);
});

export const changeStorm = command("storm.change", (project, args: { patch: Partial<Storm> }) => {
  const lengths = args.patch.table?.map(({ duration }) => Math.round(duration)) ?? [];
  if (new Set(lengths).size < lengths.length)
    return refuse("Two rows of the rain are for storms of the same length. Change one, or remove it.");
  const next = patched<Storm>(stormSchema, project.storm, { ...followingFrom(args.patch), ...args.patch });
  return next.ok ? done({ ...project, storm: next.value }, "change storm") : refuse(next.why);
});

/** Covers bring their C; a figure that is typed stands in the place of what it was taken from. */
function followingFrom({ covers, runoff, mostSpeed, lining }: Partial<Storm>): Partial<Storm> {
  const c = covers ? mixedC(covers) : null;
  return {
    ...(c !== null && { runoff: c }),
    ...(runoff !== undefined && covers === undefined && { covers: [] }),
    ...(mostSpeed !== undefined && lining === undefined && { lining: null }),
  };
}

/** A change of one part of what leads water away. */
export type DrainageChange = {
  [Part in keyof Drainage]: { readonly part: Part; readonly patch: Partial<Drainage[Part]> };
}[keyof Drainage];

/** Changes the roof's water, the pipe under drives, the drain round the footing, or what counts as bare earth. */
export const changeDrainage = command("drainage.change", (project, args: DrainageChange) => {
  const part = { ...project.drainage[args.part], ...args.patch };
  const next = patched<Drainage>(drainageSchema, project.drainage, { [args.part]: part });
  return next.ok
    ? done({ ...project, drainage: next.value }, `change ${drainageWords[args.part]}`)
    : refuse(next.why);
});

const drainageWords: Readonly<Record<keyof Drainage, string>> = {
  roof: "the roof's water",
  pipe: "the pipe under the drive",
  flow: "how water is followed",
  footingDrain: "the drain round the footing",
  bareEarth: "what counts as bare earth",
};

export const changeTruck = command("truck.change", (project, args: { patch: Partial<Project["truck"]> }) => {
  const next = patched<Project["truck"]>(truckSchema, project.truck, args.patch);
  return next.ok ? done({ ...project, truck: next.value }, "change the truck") : refuse(next.why);
});

export const changeWork = command("work.change", (project, args: { patch: Partial<Work> }) => {
  const next = patched<Work>(workSchema, project.work, args.patch);
  return next.ok ? done({ ...project, work: next.value }, "change hours of work") : refuse(next.why);
});

/** Sets a row of the soft ground to dig out: a new one where `id` is null. */
export const setUndercut = command(
  "materials.setUndercut",
  (project, args: { id: string | null; patch: Partial<Omit<Undercut, "id">> }) => {
    const { undercuts } = project.materials;
    const id = args.id ?? nextId("u", undercuts);
    const before = undercuts.find((row) => row.id === id);
    if (args.id !== null && !before) return refuse("That soft ground is gone.");
    const row = undercutSchema.safeParse({ ...before, id, ...args.patch });
    if (!row.success) return refuse("Area and depth are 0 or more.");
    const next = before
      ? undercuts.map((each) => (each.id === id ? row.data : each))
      : [...undercuts, row.data];
    return done(
      { ...project, materials: { ...project.materials, undercuts: next } },
      before ? "change soft ground" : "add soft ground",
      { made: id },
    );
  },
);

export const removeUndercut = command("materials.removeUndercut", (project, args: { id: string }) => {
  const undercuts = project.materials.undercuts.filter(({ id }) => id !== args.id);
  return undercuts.length === project.materials.undercuts.length
    ? refuse("That soft ground is gone.")
    : done({ ...project, materials: { ...project.materials, undercuts } }, "remove soft ground");
});

export const setPricesFrom = command("prices.from", (project, args: { text: string }) =>
  done({ ...project, pricesFrom: args.text.trim() }, "say where prices come from", {
    mergeKey: "prices-from",
  }),
);

/** Types the price of one unit of a bill's item; null takes it away. */
export const setPrice = command(
  "prices.set",
  (project, args: { item: string; price: number | null }): Edit => {
    const { [args.item]: _before, ...others } = project.prices;
    if (args.price === null) return done({ ...project, prices: others }, "take a price away");
    if (!(args.price >= 0 && Number.isFinite(args.price))) return refuse("A price is a number, 0 or more.");
    return done({ ...project, prices: { ...others, [args.item]: args.price } }, "type a price");
  },
);

export const changeTitle = command("title.change", (project, args: { patch: Partial<Project["title"]> }) => {
  const next = patched<Project["title"]>(titleSchema, project.title, args.patch);
  return next.ok
    ? done({ ...project, title: next.value }, "change the title block", { mergeKey: "title" })
    : refuse(next.why);
});

export const changeDisplay = command("display.change", (project, args: { patch: Partial<Display> }) => {
  const next = patched<Display>(displaySchema, project.display, args.patch);
  const paperOnly = Object.keys(args.patch).every((field) => field === "paper");
  return next.ok
    ? done({ ...project, display: next.value }, paperOnly ? "choose paper" : "change units")
    : refuse(next.why);
});
