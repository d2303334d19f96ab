/** One course of the deed: bearing and distance as typed, and its curve where it has one. */
import { useState } from "react";
import { type Course, plotEdits } from "../../document";
import { run as runEdit, tryRun } from "../../store/actions";
import { formatDeedBearing } from "../../units";
import { Action, Choice, IconAction } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";

type Entry = Parameters<typeof plotEdits.changeCourse.run>[1];

export function entryOf({ id, bearing, distance, curve }: Course): Entry {
  const curved = curve ? { radius: curve.radius.text, turns: curve.turns } : {};
  return { id, bearing: bearing.text, distance: distance.text, ...curved };
}

const turns = [
  { value: "right", words: "to the right" },
  { value: "left", words: "to the left" },
] as const;

export function CourseRow({ course, index }: { course: Course; index: number }) {
  const entry = entryOf(course);
  // Its radius is asked for, and nothing is changed before it is typed.
  const [curving, setCurving] = useState(false);
  const change = (patch: Partial<Entry>) => refusal(tryRun(plotEdits.changeCourse, { ...entry, ...patch }));
  const [turning, setTurning] = useState<"left" | "right">("right");
  const bend = (radius: string) => {
    const why = change({ radius, turns: course.curve?.turns ?? turning });
    if (why === null) setCurving(false);
    return why;
  };
  const turn = (turns: "left" | "right") => {
    setTurning(turns);
    if (course.curve) change({ turns });
  };
  const name = `Course ${index + 1}`;
  const understood = formatDeedBearing(course.bearing.radians);
  return (
    <li className="course">
      <span className="coordinate-name">{index + 1}</span>
      <TypedField
        layout="bare"
        label={`${name}, bearing`}
        shown={course.bearing.text}
        commit={(bearing) => change({ bearing })}
      />
      <TypedField
        layout="bare"
        label={`${name}, distance`}
        shown={course.distance.text}
        commit={(distance) => change({ distance })}
      />
      <IconAction
        icon="trash"
        label={`Remove course ${index + 1}`}
        onPress={() => runEdit(plotEdits.removeCourse, { id: course.id })}
      />
      {course.curve || curving ? (
        <div className="course-curve">
          <TypedField
            label="Curve, radius"
            shown={course.curve?.radius.text ?? ""}
            placeholder="empty: straight"
            commit={bend}
          />
          <Choice label="It turns" value={course.curve?.turns ?? turning} options={turns} onChoose={turn} />
          <p className="soft small">The bearing is the chord's, the distance is along the curve.</p>
        </div>
      ) : (
        <div className="course-said">
          <span className="soft small">{understood === course.bearing.text ? "" : understood}</span>
          <Action look="quiet" aria-label={`${name} is a curve`} onPress={() => setCurving(true)}>
            It is a curve
          </Action>
        </div>
      )}
    </li>
  );
}
