/** The deed as it is typed, small: its courses by number, its north up, and the gap where it doesn't close. */
import type { Deed } from "../../document";
import { boundsOf, type Point } from "../../geometry";
import { deedCalls, type Traverse, traverseOutline } from "../../plot";

const width = 300;
const height = 180;
const edge = 22;

export interface DeedDrawingProps {
  readonly deed: Deed;
  readonly traverse: Traverse;
}

export function DeedDrawing({ deed, traverse }: DeedDrawingProps) {
  const outline = traverseOutline(deedCalls(deed), traverse, { start: [0, 0], turn: 0, adjust: deed.adjust });
  const end: Point = deed.adjust ? [0, 0] : [traverse.departure, traverse.latitude];
  const ends = courseEnds(deed, traverse);
  const place = placing([...outline, end]);
  const path = [...outline, end].map((at) => place(at).join(" ")).join(" L ");
  const [x0, y0] = place([0, 0]);
  const [x1, y1] = place(end);
  return (
    <svg
      className="deed-drawing"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The lot by its ${deed.courses.length} courses, the deed's north up`}
    >
      <path className="deed-lines" d={`M ${path}`} />
      {deed.adjust || traverse.misclosure === 0 ? null : (
        <path className="deed-gap" d={`M ${x0} ${y0} L ${x1} ${y1}`} />
      )}
      <circle className="deed-start" cx={x0} cy={y0} r={3.5} />
      {ends.map(({ middle }, i) => {
        const [x, y] = place(middle);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a course is known by its order
          <g key={i}>
            <circle className="deed-number-back" cx={x} cy={y} r={8} />
            <text className="deed-number" x={x} y={y + 4}>
              {i + 1}
            </text>
          </g>
        );
      })}
      <path className="deed-north" d={`M ${width - 12} 34 V 12 m -4 6 l 4 -6 l 4 6`} />
      <text className="deed-number" x={width - 12} y={46}>
        N
      </text>
    </svg>
  );
}

function courseEnds(deed: Deed, traverse: Traverse): { readonly middle: Point }[] {
  let [x, y] = [0, 0];
  return (deed.adjust ? traverse.adjusted : traverse.courses).map(({ latitude, departure }) => {
    const middle: Point = [x + departure / 2, y + latitude / 2];
    x += departure;
    y += latitude;
    return { middle };
  });
}

function placing(points: readonly Point[]): (at: Point) => readonly [number, number] {
  const { minX, minY, maxX, maxY } = boundsOf(points);
  const scale = Math.min(
    (width - 2 * edge) / Math.max(maxX - minX, 1e-6),
    (height - 2 * edge) / Math.max(maxY - minY, 1e-6),
  );
  const [cx, cy] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return ([x, y]) => [round(width / 2 + (x - cx) * scale), round(height / 2 - (y - cy) * scale)];
}

const round = (px: number) => Math.round(px * 10) / 10;
