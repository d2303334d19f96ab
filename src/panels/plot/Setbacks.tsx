/** How far from each lot line nothing may be built, and what stands nearer. */
import { useMemo } from "react";
import { type Lot, type Point, plotEdits, type Setback } from "../../document";
import { centroid } from "../../geometry";
import { type LotLine, lineOfPiece, lotLines, piecesOf } from "../../plot";
import { goTo, runTogether } from "../../store/actions";
import { compass } from "../../units";
import { IconAction } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { capital } from "../words";

export function Setbacks() {
  const lot = useProject((project) => project.lot);
  const lines = useMemo(() => lotLines(lot), [lot]);
  if (lot.outline.length < 3) return null;
  return (
    <Section title="Setbacks" aside="nothing is built nearer to the line">
      <AllLines lot={lot} />
      {lines.map((line, i) => (
        <LineSetback key={line.first} lot={lot} line={line} number={i + 1} />
      ))}
      <Crossings lot={lot} lines={lines} />
    </Section>
  );
}

function AllLines({ lot }: { lot: Lot }) {
  const notation = useNotation();
  const [first] = lot.setbacks;
  const alike =
    first !== undefined &&
    lot.setbacks.length === lot.outline.length &&
    lot.setbacks.every(({ distance }) => distance.m === first.distance.m);
  const commit = (text: string) => {
    const tried = plotEdits.setSetback.run;
    const edit = runTogether(
      "type setbacks",
      lot.outline.map((_, line) => (project) => tried(project, { line, text, name: nameOf(lot, line) })),
    );
    return refusal(edit);
  };
  return (
    <TypedField
      label="All lines"
      shown={alike ? notation.length(first.distance.m) : ""}
      placeholder={lot.setbacks.length > 0 ? "each its own" : "none"}
      commit={commit}
    />
  );
}

const nameOf = ({ setbacks }: Lot, line: number) => setbacks.find((each) => each.line === line)?.name ?? "";

interface LineSetbackProps {
  readonly lot: Lot;
  readonly line: LotLine;
  readonly number: number;
}

/** One setback a line; along a curve it counts for all its chords. */
function LineSetback({ lot, line, number }: LineSetbackProps) {
  const notation = useNotation();
  const pieces = piecesOf(line, lot.outline.length);
  const middle = pieces[pieces.length >> 1] ?? line.first;
  const setback: Setback | undefined = lot.setbacks.find((each) => each.line === line.first);
  const [a, b] = pieceOf(lot.outline, middle);
  const commit = (text: string) =>
    refusal(
      runTogether(
        "type a setback",
        pieces.map(
          (piece) => (project) =>
            plotEdits.setSetback.run(project, { line: piece, text, name: nameOf(lot, piece) }),
        ),
      ),
    );
  return (
    <div className="setback">
      <TypedField
        label={`Line ${number}, ${sideOf(lot, middle)}${line.curve ? ", curve" : ""}`}
        shown={setback ? notation.length(setback.distance.m) : ""}
        placeholder="none"
        commit={commit}
      />
      <IconAction
        icon="place"
        label={`Show lot line ${number} on the plan`}
        onPress={() => goTo([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])}
      />
    </div>
  );
}

function pieceOf(outline: readonly Point[], line: number): readonly [Point, Point] {
  const here: Point = [0, 0];
  return [outline[line] ?? here, outline[(line + 1) % outline.length] ?? here];
}

/** The side of the lot that the line closes: "south". */
function sideOf({ outline, north }: Lot, line: number): string {
  const [a, b] = pieceOf(outline, line);
  // Of the area, not of the corners: those crowd along a curve.
  const middle = centroid(outline);
  return compass([(a[0] + b[0]) / 2 - middle[0], (a[1] + b[1]) / 2 - middle[1]], north);
}

/** What stands in a setback, each with its place. */
function Crossings({ lot, lines }: { lot: Lot; lines: readonly LotLine[] }) {
  const crossings = useResults(({ plot }) => plot.crossings);
  const some = lot.setbacks.length > 0;
  const building = useProject((project) => project.building !== null);
  const notation = useNotation();
  const numberOf = (piece: number) => lineOfPiece(lines, piece, lot.outline.length) + 1;
  if (!some || !building) return null;
  if (crossings.length === 0) return <p className="soft small">The building keeps clear of all setbacks.</p>;
  return (
    <ul className="crossings">
      {crossings.map(({ line, thing, by, distance, at }) => (
        <li key={`${thing} ${line}`} className="crossing">
          <span>
            {by > distance
              ? `${capital(thing)} leaves the lot at line ${numberOf(line)} by ${notation.length(by - distance)}`
              : `${capital(thing)} stands ${notation.length(by)} in the setback of line ${numberOf(line)}`}
          </span>
          <IconAction icon="place" label="Show where" onPress={() => goTo([at[0], at[1]])} />
        </li>
      ))}
    </ul>
  );
}
