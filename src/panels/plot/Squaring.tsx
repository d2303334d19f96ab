/** Is the building square? Every side and diagonal as planned and as taped, and which corner to move which way. */
import type { Building, Point, Tape } from "../../document";
import { cornerName } from "../../grading";
import { LEAST_MOVE, moveInWords, plannedDiagonals, threeFourFive } from "../../plot";
import type { MisreadResult } from "../../solve/results";
import { FOOT } from "../../units";
import { Icon } from "../icons";
import { type Fact, Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { wallName } from "../words";
import { TapeRow } from "./TapeRow";
import "./plot.css";

/** A side or diagonal, and what was taped of it; none yet: one empty line. */
interface Line {
  readonly from: number;
  readonly to: number;
  readonly planned: number;
  readonly tape: Tape | null;
}

export function Squaring({ building }: { building: Building }) {
  const tapes = useProject(({ staking }) => staking.tapes);
  const { outline } = building;
  const lines = linesOf(outline, tapes);
  const isFirst = ({ from, to, tape }: Line) =>
    tape !== null || isSide(from, to, outline.length) || from === 0;
  const few = outline.length <= 4;
  const shown = lines.filter((line) => few || isFirst(line));
  const others = lines.filter((line) => !shown.includes(line));
  return (
    <Section title="Squaring" aside="planned and taped">
      <ul className="courses">
        {shown.map((line) => (
          <TapeRow key={keyOf(line)} {...line} />
        ))}
      </ul>
      {others.length > 0 ? (
        <details className="more-tapes">
          <summary>{`${others.length} more diagonals`}</summary>
          <ul className="courses">
            {others.map((line) => (
              <TapeRow key={keyOf(line)} {...line} />
            ))}
          </ul>
        </details>
      ) : null}
      <Moves />
      <RightAngle outline={outline} />
    </Section>
  );
}

const keyOf = ({ from, to, tape }: Line) => `${from} ${to} ${tape?.id ?? ""}`;

function isSide(from: number, to: number, corners: number): boolean {
  return to === from + 1 || (from === 0 && to === corners - 1);
}

function linesOf(outline: readonly Point[], tapes: readonly Tape[]): Line[] {
  const sides = outline.map((a, i) => {
    const to = (i + 1) % outline.length;
    const b = outline[to] ?? a;
    const ends = i < to ? { from: i, to } : { from: to, to: i };
    return { ...ends, length: Math.hypot(b[0] - a[0], b[1] - a[1]) };
  });
  return [...sides, ...plannedDiagonals(outline)].flatMap(({ from, to, length }): Line[] => {
    const own = tapes.filter(
      (tape) => Math.min(tape.from, tape.to) === from && Math.max(tape.from, tape.to) === to,
    );
    const line = { from, to, planned: length };
    return own.length === 0 ? [{ ...line, tape: null }] : own.map((tape) => ({ ...line, tape }));
  });
}

/** What to move, in the field's words, holding the first side. */
function Moves() {
  const { squared, untaped, misread, out } = useResults((results) => results.plot);
  const some = useProject(({ staking }) => staking.tapes.length > 0);
  const notation = useNotation();
  if (!some)
    return (
      <p className="soft small">
        Tape the sides and both diagonals between the stakes or corners, and type what the tape says: what to
        move where is told here.
      </p>
    );
  if (untaped !== null) return <p className="soft small">{untaped}</p>;
  if (misread !== null && (squared === null || out === null)) return <MisreadTape misread={misread} />;
  if (squared === null || out === null) return null;
  const facts: Fact[] = out.moves.map((move) => ({
    name: `Corner ${move.corner}`,
    figure: moveInWords(move, notation.length, LEAST_MOVE),
  }));
  return (
    <>
      {misread ? <MisreadTape misread={misread} /> : null}
      <h4 className="part-subtitle">
        {misread ? `Without ${misread.tape}: ` : ""}
        {out.most < LEAST_MOVE
          ? "It stands as planned"
          : `Out of square by ${notation.length(out.most)} at most`}
      </h4>
      <Facts facts={facts} />
      <p className="soft small">
        {squared.redundancy === 0
          ? "Side A–B is held. Nothing checks these tapes: pull one more diagonal."
          : `Side A–B is held. The tapes fit together to about ${notation.length(squared.standardError ?? 0)} each.`}
      </p>
    </>
  );
}

/** Before any corner is told to move. */
function MisreadTape({ misread: { what, how } }: { misread: MisreadResult }) {
  return (
    <p className="untied" role="status">
      <Icon name="warn" />
      <span>{`${what} ${how}`}</span>
    </p>
  );
}

/** The largest 3-4-5 triangle in whole feet, or quarter metres, along the two walls at corner A. */
function RightAngle({ outline }: { outline: readonly Point[] }) {
  const notation = useNotation();
  const last = outline.length - 1;
  const [a, b, z] = [outline[0], outline[1], outline[last]];
  if (!a || !b || !z) return null;
  const [u, v] = [[b[0] - a[0], b[1] - a[1]] as const, [z[0] - a[0], z[1] - a[1]] as const];
  const [along, across] = [Math.hypot(...u), Math.hypot(...v)];
  if (Math.abs(u[0] * v[0] + u[1] * v[1]) > 1e-3 * along * across) return null;
  const step = notation.display.area === "m2" ? 0.25 : FOOT;
  const triangle = threeFourFive(along, across, step);
  if (triangle === null) return null;
  return (
    <p className="soft small">
      {`A right angle at A by 3-4-5: ${notation.length(triangle.along)} along ${wallName(outline.length, 0)}, ` +
        `${notation.length(triangle.across)} along A–${cornerName(last)}, then ${notation.length(triangle.diagonal)} between them.`}
    </p>
  );
}
