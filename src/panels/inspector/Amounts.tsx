/** The figures that belong to one kind of thing: widths, offsets, heights. */
import {
  type Berm,
  buildingEdits,
  type Door,
  drawingEdits,
  type Edit,
  type GroundPad,
  gradingEdits,
  type Project,
  type RetainingWall,
  siteEdits,
  surveyEdits,
  type Thing,
  type Window,
  windowEdits,
} from "../../document";
import { tryRun } from "../../store/actions";
import { LengthField } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Facts } from "../parts";
import { useNotation, useProject } from "../useProject";
import { wallName } from "../words";
import { BreaklineFacts, PitFacts } from "./GroundThings";
import type { Part } from "./toldByStep";

interface Amount {
  readonly label: string;
  readonly m: number;
  readonly set: (m: number) => Edit;
  readonly least?: number;
}

interface AmountsProps {
  readonly thing: Thing;
  readonly locked: boolean;
  readonly told: ReadonlySet<Part>;
}

export function Amounts({ thing, locked, told }: AmountsProps) {
  const project = useProject((now) => now);
  if (told.has("figures")) return thing.kind === "shot" ? <StandsOn id={thing.id} /> : null;
  const amounts = amountsOf(project, thing);
  return (
    <>
      {thing.kind === "note" ? <NoteWords id={thing.id} locked={locked} /> : null}
      {thing.kind === "mark" ? <MarkHeight id={thing.id} locked={locked} /> : null}
      {thing.kind === "breakline" ? <BreaklineFacts id={thing.id} locked={locked} /> : null}
      {thing.kind === "pit" ? <PitFacts id={thing.id} locked={locked} /> : null}
      {thing.kind === "shot" ? <ShotFacts id={thing.id} /> : null}
      {thing.kind === "door" || thing.kind === "window" ? <OnWall thing={thing} /> : null}
      {amounts.map(({ label, m, set, least }) => (
        <LengthField
          key={label}
          label={label}
          m={m}
          locked={locked}
          onCommit={set}
          {...(least === undefined ? {} : { least })}
        />
      ))}
    </>
  );
}

function amountsOf(project: Project, thing: Thing): Amount[] {
  switch (thing.kind) {
    case "building":
      return buildingAmounts(project);
    case "door": {
      const door = project.building?.doors.find(({ id }) => id === thing.id);
      return door ? doorAmounts(door) : [];
    }
    case "window": {
      const window = project.building?.windows.find(({ id }) => id === thing.id);
      return window ? windowAmounts(window) : [];
    }
    case "drive": {
      const drive = project.grading.drives.find(({ id }) => id === thing.id);
      if (!drive) return [];
      const set = (width: number) => tryRun(siteEdits.changeDrive, { id: drive.id, patch: { width } });
      return [{ label: "Width", m: drive.width, set }];
    }
    case "swale": {
      const swale = project.grading.swales.find(({ id }) => id === thing.id);
      if (!swale) return [];
      const change = (patch: Parameters<typeof siteEdits.changeSwale.run>[1]["patch"]) =>
        tryRun(siteEdits.changeSwale, { id: swale.id, patch });
      return [
        {
          label: "Bottom width",
          m: swale.bottomWidth,
          set: (bottomWidth) => change({ bottomWidth }),
          least: 0,
        },
        { label: "Depth at its head", m: swale.depth, set: (depth) => change({ depth }), least: 0 },
      ];
    }
    case "pad":
    case "berm":
    case "retaining-wall":
    case "grade-point":
      return shapeAmounts(project, thing);
    case "feature": {
      const feature = project.lot.features.find(({ id }) => id === thing.id);
      if (!feature) return [];
      const set = (keepClear: number) =>
        tryRun(siteEdits.changeFeature, { id: feature.id, patch: { keepClear } });
      return [{ label: "Keep clear by", m: feature.keepClear, set, least: 0 }];
    }
    case "dimension": {
      const dimension = project.drawing.dimensions.find(({ id }) => id === thing.id);
      if (!dimension) return [];
      const set = (offset: number) =>
        tryRun(drawingEdits.changeDimension, { id: dimension.id, patch: { offset } });
      return [{ label: "Stands off to the left", m: dimension.offset, set }];
    }
    case "underlay": {
      const picture = project.drawing.underlays.find(({ id }) => id === thing.id);
      if (!picture) return [];
      const set = (m: number) =>
        tryRun(drawingEdits.changeUnderlay, {
          id: picture.id,
          patch: { scale: m / picture.width },
          what: "scale picture",
        });
      return [{ label: "Width on the ground", m: picture.scale * picture.width, set, least: 0.01 }];
    }
    default:
      return [];
  }
}

/** Heights and widths; slopes and what a wall holds are in the drive step's cards. */
function shapeAmounts({ grading, building }: Project, { kind, id }: gradingEdits.EarthThing): Amount[] {
  if (kind === "pad") {
    const pad = grading.pads.find((each) => each.id === id);
    if (!pad) return [];
    const change = (patch: Partial<GroundPad>) => tryRun(gradingEdits.changePad, { id, patch });
    const { level } = pad;
    const stone: Amount = {
      label: "Stone",
      m: pad.gravel,
      set: (gravel) => change({ gravel }),
      least: 0,
    };
    if (level.kind === "height")
      return [
        {
          label: "Height",
          m: level.height,
          set: (height) => change({ level: { kind: "height", height } }),
        },
        stone,
      ];
    if (level.kind === "floor" && building)
      return [
        {
          label: "Above the floor",
          m: level.above,
          set: (above) => change({ level: { kind: "floor", above } }),
        },
        stone,
      ];
    return [stone];
  }
  if (kind === "berm") {
    const berm = grading.berms.find((each) => each.id === id);
    if (!berm) return [];
    const change = (patch: Partial<Berm>) => tryRun(gradingEdits.changeBerm, { id, patch });
    return [
      { label: "Height", m: berm.height, set: (height) => change({ height }) },
      { label: "Top width", m: berm.topWidth, set: (topWidth) => change({ topWidth }), least: 0 },
    ];
  }
  if (kind === "retaining-wall") {
    const wall = grading.walls.find((each) => each.id === id);
    if (!wall) return [];
    const change = (patch: Partial<RetainingWall>) => tryRun(gradingEdits.changeRetainingWall, { id, patch });
    return [
      { label: "In the ground", m: wall.buried, set: (buried) => change({ buried }), least: 0 },
      ...(wall.exposed === null
        ? []
        : [{ label: "Height that shows", m: wall.exposed, set: (exposed: number) => change({ exposed }) }]),
    ];
  }
  const point = grading.points.find((each) => each.id === id);
  if (!point) return [];
  const set = (height: number) => tryRun(gradingEdits.changeGradePoint, { id, patch: { height } });
  return [{ label: "Height", m: point.height, set }];
}

function buildingAmounts(project: Project): Amount[] {
  const { building } = project;
  if (!building) return [];
  const set = (floor: number) => tryRun(buildingEdits.setFloor, { floor, label: "set the floor" });
  return [{ label: "Finished floor", m: building.floor, set }];
}

function doorAmounts(door: Door): Amount[] {
  const change = (patch: Partial<Omit<Door, "id">>) =>
    tryRun(buildingEdits.changeDoor, { id: door.id, patch });
  return [
    { label: "From the wall’s first corner", m: door.offset, set: (offset) => change({ offset }), least: 0 },
    { label: "Width", m: door.width, set: (width) => change({ width }) },
    {
      label: "Sill below the floor",
      m: door.sillBelowFloor,
      set: (sillBelowFloor) => change({ sillBelowFloor }),
      least: 0,
    },
  ];
}

function windowAmounts(window: Window): Amount[] {
  const change = (patch: Partial<Omit<Window, "id">>) =>
    tryRun(windowEdits.changeWindow, { id: window.id, patch });
  return [
    {
      label: "From the wall’s first corner",
      m: window.offset,
      set: (offset) => change({ offset }),
      least: 0,
    },
    { label: "Width", m: window.width, set: (width) => change({ width }) },
    { label: "Height", m: window.height, set: (height) => change({ height }) },
    {
      label: "Sill above the floor",
      m: window.sillAboveFloor,
      set: (sillAboveFloor) => change({ sillAboveFloor }),
    },
  ];
}

function OnWall({ thing }: { thing: Extract<Thing, { kind: "door" | "window" }> }) {
  const building = useProject((project) => project.building);
  const list = thing.kind === "door" ? building?.doors : building?.windows;
  const opening = list?.find(({ id }) => id === thing.id);
  if (!building || !opening) return null;
  return <Facts facts={[{ name: "Wall", figure: wallName(building.outline.length, opening.wall) }]} />;
}

function NoteWords({ id, locked }: { id: string; locked: boolean }) {
  const text = useProject((project) => project.drawing.notes.find((note) => note.id === id)?.text ?? "");
  const commit = (typed: string) => {
    const edit = tryRun(drawingEdits.changeNote, { id, patch: { text: typed } });
    return edit.ok ? null : edit.why;
  };
  return <TypedField label="Words" layout="stack" wide shown={text} locked={locked} commit={commit} />;
}

function MarkHeight({ id, locked }: { id: string; locked: boolean }) {
  const mark = useProject((project) => project.survey.marks.find((each) => each.id === id));
  if (!mark) return null;
  const commit = (text: string) => {
    const edit = tryRun(surveyEdits.setMarkHeight, { id, text });
    return edit.ok ? null : edit.why;
  };
  return <TypedField label="Height" shown={mark.height.text} locked={locked} commit={commit} />;
}

function ShotFacts({ id }: { id: string }) {
  const notation = useNotation();
  const shot = useProject((project) => project.survey.shots.find((each) => each.id === id));
  if (!shot) return null;
  return (
    <>
      <Facts
        facts={[{ name: "Reading", figure: shot.reading ? notation.reading(shot.reading.m) : "none yet" }]}
      />
      <StandsOn id={id} />
    </>
  );
}

/** Beside its place, which can be typed over. */
function StandsOn({ id }: { id: string }) {
  const onCorner = useProject(
    ({ survey }) => survey.shots.find((each) => each.id === id)?.place.kind === "corner",
  );
  return onCorner ? (
    <Facts
      facts={[{ name: "Stands on", figure: "a corner of the building", note: "typing a place frees it" }]}
    />
  ) : null;
}
