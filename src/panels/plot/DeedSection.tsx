/** The lot as its deed describes it: courses, how they close, and drawing the lot by them. */
import { useMemo, useState } from "react";
import { type Deed, type Point, plotEdits } from "../../document";
import { closeTraverse, deedCalls, deedOutline, type Traverse } from "../../plot";
import { run as runEdit, tryRun } from "../../store/actions";
import { formatLand } from "../../units";
import { Action, Toggle } from "../fields/Choice";
import { AngleField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { type Fact, Facts, Section } from "../parts";
import { useNotation, useProject } from "../useProject";
import { CourseRow } from "./CourseRow";
import { DeedDrawing } from "./DeedDrawing";
import { NewCourse } from "./NewCourse";
import "./plot.css";

const none: Deed = { courses: [], start: [0, 0], turn: 0, adjust: false };

export function DeedSection() {
  const deed = useProject(({ lot }) => lot.deed) ?? none;
  const [begun, setBegun] = useState(false);
  if (deed.courses.length === 0 && !begun)
    return (
      <Section title="By the deed">
        <p className="soft small">
          Type the bearings and distances of the deed or plat: the lot is drawn and closed by them.
        </p>
        <Action icon="plus" look="quiet" onPress={() => setBegun(true)}>
          Type the deed's courses
        </Action>
      </Section>
    );
  return (
    <Section title="By the deed" aside="bearing and distance">
      <ol className="courses">
        {deed.courses.map((course, index) => (
          <CourseRow key={course.id} course={course} index={index} />
        ))}
      </ol>
      <NewCourse number={deed.courses.length + 1} />
      <Closing deed={deed} />
    </Section>
  );
}

function Closing({ deed }: { deed: Deed }) {
  const closed = useMemo(() => closeTraverse(deedCalls(deed)), [deed]);
  if (deed.courses.length === 0) return null;
  if (!closed.ok)
    return (
      <p className="soft small">
        {deed.courses.length < 3
          ? "Three courses enclose a lot; then it is drawn here."
          : `Course ${closed.course + 1}: ${closed.what} ${closed.how}`}
      </p>
    );
  return (
    <>
      <DeedDrawing deed={deed} traverse={closed.traverse} />
      <ClosingFacts deed={deed} traverse={closed.traverse} />
      <Lie deed={deed} />
      <DrawIt deed={deed} />
    </>
  );
}

function ClosingFacts({ deed, traverse }: { deed: Deed; traverse: Traverse }) {
  const notation = useNotation();
  const { misclosure, precision, area, perimeter } = traverse;
  const facts: Fact[] = [
    {
      name: "Misses its start by",
      figure: misclosure === 0 ? "nothing" : notation.length(misclosure),
      note:
        precision === null
          ? "it closes"
          : `1 in ${Math.round(precision).toLocaleString("en-US")} of its length`,
    },
    { name: "Round it", figure: notation.length(perimeter) },
    {
      name: "Area",
      figure: notation.area(area),
      note: `${formatLand(area, notation.display.area)}; after the compass rule, curves included`,
    },
  ];
  return (
    <>
      <Facts facts={facts} />
      <Toggle
        label="Spread the misclosure (compass rule)"
        on={deed.adjust}
        onToggle={(adjust) => tryRun(plotEdits.changeDeed, { patch: { adjust } })}
      />
    </>
  );
}

/** Where the deed begins on the plan and how its north lies. */
function Lie({ deed }: { deed: Deed }) {
  const { start, turn } = deed;
  const begin = (at: Point) => tryRun(plotEdits.changeDeed, { patch: { start: at } });
  return (
    <>
      <LengthField label="Begins at, east" m={start[0]} onCommit={(m) => begin([m, start[1]])} />
      <LengthField label="Begins at, north" m={start[1]} onCommit={(m) => begin([start[0], m])} />
      <AngleField
        label="The deed's north"
        radians={turn}
        help="Clockwise from true north, as the deed declares it: 0 where it says nothing."
        onCommit={(radians) => tryRun(plotEdits.changeDeed, { patch: { turn: radians } })}
      />
    </>
  );
}

function DrawIt({ deed }: { deed: Deed }) {
  const lot = useProject((project) => project.lot);
  const drawn = deedOutline(deed, lot.north);
  if (drawn === null) return null;
  if (sameOutline(drawn.outline, lot.outline))
    return <p className="soft small">The lot on the plan is as the deed has it.</p>;
  return (
    <Action icon="draw" look="accent" onPress={() => runEdit(plotEdits.drawDeed, { outline: drawn.outline })}>
      {lot.outline.length >= 3 ? "Draw the lot anew by the deed" : "Draw the lot by the deed"}
    </Action>
  );
}

function sameOutline(one: readonly Point[], other: readonly Point[]): boolean {
  return (
    one.length === other.length &&
    one.every(([x, y], i) => Math.hypot(x - (other[i]?.[0] ?? 0), y - (other[i]?.[1] ?? 0)) < 1e-6)
  );
}
