/** A file that lies far from the plan: how far, and whether it joins as it is or shifted by a point that both know. */
import { useState } from "react";
import {
  type Apart,
  type Incoming,
  type KnownPoint,
  pointNamed,
  type Shift,
  shiftBetween,
} from "../../files/incoming";
import { Choice } from "../../panels/fields/Choice";
import { TypedField } from "../../panels/fields/TypedField";
import { Icon } from "../../panels/icons";
import type { Notation } from "../../panels/notation";
import { useNotation } from "../../panels/useProject";

/** Where it goes: still to be chosen, as it is, or shifted by a common point (null until both are known). */
export type Fit =
  | { readonly how: "ask" }
  | { readonly how: "as it is" }
  | { readonly how: "common"; readonly shift: Shift | null };

export interface FitFormProps {
  readonly apart: Apart;
  /** In metres, as it would lie without a shift. */
  readonly incoming: Incoming;
  readonly plan: readonly KnownPoint[];
  readonly fit: Fit;
  readonly onFit: (fit: Fit) => void;
}

const ways = [
  { value: "ask", words: "choose…" },
  { value: "common", words: "shifted, by a point that both have" },
  { value: "as it is", words: "as it is" },
] as const;

/** A list of more isn't read through: the others are typed by name. */
const mostListed = 300;

export function FitForm({ apart, incoming, plan, fit, onFit }: FitFormProps) {
  const notation = useNotation();
  const canShift = incoming.points.x.length + incoming.marks.x.length > 0;
  return (
    <section aria-label="Far from the plan">
      <p className="untied">
        <Icon name="warn" />
        <span>{farWords(apart, notation)}</span>
      </p>
      <Choice
        label="It joins"
        value={fit.how}
        options={ways.filter(
          ({ value }) => (value !== "ask" || fit.how === "ask") && (value !== "common" || canShift),
        )}
        help={
          fit.how === "ask"
            ? "Another zero point, another datum or another unit puts a file elsewhere. Nothing joins before this is chosen."
            : undefined
        }
        onChoose={(how) => onFit(how === "common" ? { how, shift: null } : { how })}
      />
      {fit.how === "common" ? (
        <CommonPoint
          incoming={incoming}
          plan={plan}
          shift={fit.shift}
          onShift={(shift) => onFit({ how: "common", shift })}
        />
      ) : null}
    </section>
  );
}

export function farWords({ distance, above }: Apart, notation: Notation): string {
  const beside = distance > 0 ? `${notation.length(distance)} away` : "";
  const over = above === 0 ? "" : `${notation.length(Math.abs(above))} ${above > 0 ? "higher" : "lower"}`;
  return `It lies far from what the plan has: ${[beside, over].filter(Boolean).join(", ")}.`;
}

interface CommonPointProps {
  readonly incoming: Incoming;
  readonly plan: readonly KnownPoint[];
  readonly shift: Shift | null;
  readonly onShift: (shift: Shift | null) => void;
}

function CommonPoint({ incoming, plan, shift, onShift }: CommonPointProps) {
  const notation = useNotation();
  const [inFile, setInFile] = useState<KnownPoint | null>(null);
  const [onPlan, setOnPlan] = useState<KnownPoint | null>(null);
  const settle = (there: KnownPoint | null, here: KnownPoint | null) => {
    setInFile(there);
    setOnPlan(here);
    onShift(there && here ? shiftBetween(there, here) : null);
  };
  return (
    <>
      <TypedField
        label="The point in the file"
        shown={inFile?.name ?? ""}
        placeholder={[...incoming.marks.names, ...incoming.points.names].find((name) => name !== "") ?? "1"}
        help="By its name, or its row counted from 1."
        commit={(text) => {
          const found = pointNamed(incoming, text);
          if (found === null)
            return `No point of the file is called “${text.trim()}”, and it isn't the number of a row from 1 to ${incoming.points.x.length}.`;
          settle(found, onPlan);
          return null;
        }}
      />
      <Choice
        label="Is on the plan"
        value={onPlan === null ? "ask" : String(plan.indexOf(onPlan))}
        options={[
          ...(onPlan === null ? [{ value: "ask", words: "choose…" }] : []),
          ...plan.slice(0, mostListed).map(({ name }, i) => ({ value: String(i), words: name })),
        ]}
        onChoose={(value) => settle(inFile, plan[Number(value)] ?? null)}
      />
      {shift ? <p className="field-help">{shiftWords(shift, inFile, onPlan, notation)}</p> : null}
    </>
  );
}

function shiftWords(
  [east, north, up]: Shift,
  inFile: KnownPoint | null,
  onPlan: KnownPoint | null,
  notation: Notation,
): string {
  const heights =
    inFile?.z === null || onPlan?.z === null
      ? "heights stay as they are, since one of the two has none"
      : `${notation.length(Math.abs(up))} ${up < 0 ? "down" : "up"}`;
  const [toEast, toNorth] = [notation.length(Math.abs(east)), notation.length(Math.abs(north))];
  return `Everything is moved ${toEast} ${east < 0 ? "west" : "east"}, ${toNorth} ${north < 0 ? "south" : "north"}; ${heights}.`;
}
