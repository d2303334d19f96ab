/** Each wall's check: whether water leaves it, what stands at it and comes to it, and what would mend it. */
import { memo } from "react";
import type { Point } from "../../document";
import type { StandingAtWall, WallWater } from "../../solve/results";
import { worstFirst } from "../../solve/wall-verdict";
import { goTo } from "../../store/actions";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { wallRule, whyLess } from "../wallRule";
import { wallSide } from "../words";
import { WallMends } from "./WallMends";

export function WallChecks() {
  const walls = useResults(({ water }) => water.walls);
  const toWalls = useResults(({ water }) => water.toWalls);
  const outline = useProject(({ building }) => building?.outline ?? null);
  const north = useProject(({ lot }) => lot.north);
  const notation = useNotation();
  if (!outline || walls.length === 0)
    return (
      <Section title="Walls">
        <p className="soft small">Each wall is checked once there is ground and a building.</p>
      </Section>
    );
  return (
    <Section title="Walls" aside="fall away from the wall, of what is wanted">
      <ul className="checks">
        {worstFirst(walls).map((wall) => (
          <WallRow
            key={wall.wall}
            wall={wall}
            comes={toWalls[wall.wall] ?? 0}
            side={wallSide(outline, wall.wall, north)}
            ends={[outline[wall.wall] ?? [0, 0], outline[(wall.wall + 1) % outline.length] ?? [0, 0]]}
          />
        ))}
      </ul>
      {walls[0] ? <p className="soft small">{wallRule(walls, notation)}</p> : null}
    </Section>
  );
}

/** Less ground than this, m2, is the wall's own strip as the grid has it. */
const worthTelling = 5;

interface WallRowProps {
  readonly wall: WallWater;
  readonly side: string;
  /** Ground whose water comes to it, m2. */
  readonly comes: number;
  /** Its ends. */
  readonly ends: readonly [Point, Point];
}

const WallRow = memo(function WallRow({ wall, side, comes, ends: [a, b] }: WallRowProps) {
  const notation = useNotation();
  const towards = Math.round(wall.runsTowards * 100);
  const less = whyLess(wall, notation);
  const fall =
    wall.fallAway >= 0
      ? `falls ${notation.length(wall.fallAway)}`
      : `rises ${notation.length(-wall.fallAway)}`;
  return (
    <li className={`check check-${checkOf(wall)}`}>
      <Icon name={wall.passes ? (wall.verdict === "passes" ? "check" : "note") : "warn"} />
      <div>
        <button
          type="button"
          className="link wall-link"
          onClick={() => goTo(wall.standing?.at ?? [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])}
        >
          <b>{wall.name.replace("-", "–")}</b>
          {`, ${side}`}
        </button>
        {wall.standing ? <p className="soft small">{standingWords(wall.standing, notation)}</p> : null}
        {wall.verdict === "too few shots" ? (
          <p className="soft small">Too few shots about it to say that it stays dry.</p>
        ) : null}
        {less === null ? null : <p className="soft small">{less}</p>}
        {comes > worthTelling ? (
          <p className="soft small">{`Water of ${notation.area(comes)} of ground comes to it.`}</p>
        ) : null}
        {towards > 0 ? <p className="soft small">{`Water runs towards ${towards} % of it.`}</p> : null}
      </div>
      <p className="check-figure">
        {fall} <span className="soft">{`of ${notation.length(wall.needed)}`}</span>
        <Why kind="wall" id={String(wall.wall)} of={`fall away from wall ${wall.name.replace("-", "–")}`} />
      </p>
      {wall.passes ? null : (
        <div className="mends">
          <WallMends wall={wall.wall} name={wall.name.replace("-", "–")} />
        </div>
      )}
    </li>
  );
});

function checkOf({ verdict, passes }: WallWater): "ok" | "bad" | "note" {
  if (!passes) return "bad";
  return verdict === "passes" ? "ok" : "note";
}

function standingWords({ depth, off, guessed }: StandingAtWall, notation: Notation): string {
  const guess = guessed ? ", if the guessed ground is right" : "";
  const where = off < 0.01 ? "right at it" : `${notation.length(off)} from it`;
  return `Water stands ${where}, ${notation.length(depth)} deep at its deepest${guess}.`;
}
