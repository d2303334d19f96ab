/** Where a drive's grade, a swale's fall and the fall away from a wall come from. */
import { type Asked, firstPrinciples, type Why } from "./why";

export function driveWhy({ project, results, figures }: Asked, id: string): Why | null {
  const drive = results.drives.find((each) => each.id === id);
  if (!drive) return null;
  const [start, end] = stretch(
    drive.stations.map(({ grade }) => (grade === null ? null : Math.abs(grade))),
    drive.steepest,
  );
  const [from, to] = [drive.stations[start], drive.stations[end]];
  const piece =
    from && to
      ? [
          {
            name: `From ${figures.length(from.distance)} to ${figures.length(to.distance)} off the road`,
            figure: figures.length(to.distance - from.distance),
          },
          { name: "Height at its start", figure: figures.length(from.finished) },
          { name: "Height at its end", figure: figures.length(to.finished) },
        ]
      : [];
  return {
    title: `Steepest grade of ${drive.name}`,
    figure: figures.slope(drive.steepest),
    inputs: [...piece, { name: "Steepest you accept", figure: figures.slope(project.rules.steepestDrive) }],
    rule: "Between the road and the landing at the door runs one even grade; the landing falls away from the door.",
    formula: "grade = difference in height ÷ level distance",
    source: `${firstPrinciples}; the limit is yours: local ones run from 10 to 15 %`,
  };
}

/** From which station to which the line has this slope: the first such stretch. */
function stretch(slopes: readonly (number | null)[], wanted: number): [start: number, end: number] {
  const has = (slope: number | null | undefined) => slope != null && Math.abs(slope - wanted) < 1e-6;
  const start = Math.max(0, slopes.findIndex(has));
  let end = start + 1;
  while (has(slopes[end])) end++;
  return [start, end];
}

export function swaleWhy({ project, results, figures }: Asked, id: string): Why | null {
  const swale = results.water.swales.find((each) => each.id === id);
  if (!swale) return null;
  const [start, end] = stretch(
    swale.stations.map(({ fall }) => fall),
    swale.leastFall,
  );
  const [from, to] = [swale.stations[start], swale.stations[end]];
  const piece =
    from && to
      ? [
          { name: `Bed at ${figures.length(from.distance)}`, figure: figures.length(from.bed) },
          { name: `Bed at ${figures.length(to.distance)}`, figure: figures.length(to.bed) },
        ]
      : [];
  return {
    title: `Least fall of ${swale.name}`,
    figure: figures.slope(swale.leastFall),
    inputs: [
      ...piece,
      { name: "Least bed fall you accept", figure: figures.slope(project.rules.leastSwaleFall) },
    ],
    rule: `Its bed has to fall all along and come out at the surface. ${swale.why}`,
    formula: "fall = drop of the bed ÷ level distance, the least along the line",
    source: `${firstPrinciples}; the limit is yours: 1 % is usual in grass`,
  };
}

export function wallWhy({ results, figures }: Asked, index: string): Why | null {
  const wall = results.water.walls.find((each) => String(each.wall) === index);
  if (!wall) return null;
  const { fallAway } = wall;
  return {
    title: `Fall away from wall ${wall.name.replace("-", "–")}`,
    figure: fallAway >= 0 ? `falls ${figures.length(fallAway)}` : `rises ${figures.length(-fallAway)}`,
    inputs: [
      { name: "Wanted", figure: figures.length(wall.needed) },
      { name: "Within", figure: figures.length(wall.within) },
      { name: "Ground there", figure: wall.paved ? "paved" : "earth or grass" },
      { name: "Water runs towards it along", figure: `${Math.round(wall.runsTowards * 100)} %` },
    ],
    rule: `The rule: ${wall.rule}. Where another wall stands nearer, the fall is asked up to there.`,
    formula: "fall = finished ground at the wall − finished ground that far off, the least along the wall",
    source: wall.source,
  };
}
