/** What stands about a drive's long section: distances and heights at its nodes, the grade of each piece, the steepest allowed. */
import type { DriveNodeResult, DrivePiece, DriveResult } from "../../solve/results";
import { useNotation, useProject } from "../useProject";
import { margin, type ProfileScale } from "./profileScale";

/** Least room for a figure beside the next one, and for a grade that lies along its piece, px. */
const room = { figure: 74, grade: 44 } as const;

interface GridProps {
  readonly drive: DriveResult;
  readonly scale: ProfileScale;
  readonly height: number;
}

/** A line up from each node, its distance from the road under it and its height over it, as far as they have room. */
export function ProfileGrid({ drive, scale, height }: GridProps) {
  const notation = useNotation();
  const told = withRoom(drive.nodes, scale);
  const foot = height - margin.bottom + 4;
  return (
    <g>
      {drive.nodes.map((node, i) => {
        const x = scale.x(node.distance);
        return (
          <g key={`${node.kind}${node.index}`}>
            <line className="profile-drop" x1={x} x2={x} y1={scale.y(node.height)} y2={foot} />
            {told.includes(node) ? (
              <>
                <text className="profile-end" x={x} y={height - 7} textAnchor={i === 0 ? "start" : "middle"}>
                  {nodeWords(node, notation.length(node.distance))}
                </text>
                <text className="profile-height" x={x} y={scale.y(node.height) - 9} textAnchor="middle">
                  {notation.length(node.height)}
                </text>
              </>
            ) : null}
          </g>
        );
      })}
    </g>
  );
}

function nodeWords({ kind }: DriveNodeResult, distance: string): string {
  if (kind === "road") return "road";
  return kind === "break" ? distance : `${kind} ${distance}`;
}

/** The ends always, others where they stand clear of what is told before and of the last. */
function withRoom(nodes: readonly DriveNodeResult[], { x }: ProfileScale): DriveNodeResult[] {
  const last = nodes[nodes.length - 1];
  const told: DriveNodeResult[] = [];
  for (const node of nodes) {
    const before = told[told.length - 1];
    const clear = !before || x(node.distance) - x(before.distance) >= room.figure;
    const clearOfLast = !last || node === last || x(last.distance) - x(node.distance) >= room.figure;
    if (node === nodes[0] || node === last || (clear && clearOfLast)) told.push(node);
  }
  return told;
}

interface PieceProps {
  readonly drive: DriveResult;
  readonly piece: DrivePiece;
  readonly scale: ProfileScale;
}

/** The grade under its piece, in the warning's colour and heavier where it is steeper than the limit; the limit beside it. */
export function PieceGrade({ drive, piece, scale }: PieceProps) {
  const notation = useNotation();
  const [a, b] = [piece.from, piece.to].map((t) => drive.nodes.find(({ distance }) => distance === t));
  if (!a || !b) return null;
  const [x, y] = [scale.x((piece.from + piece.to) / 2), scale.y((a.height + b.height) / 2)];
  const narrow = scale.x(piece.to) - scale.x(piece.from) < room.grade;
  return (
    <>
      {b.kind === "door" && a.kind === "landing" ? null : <LimitLine start={a} piece={piece} scale={scale} />}
      <text
        className={piece.over ? "profile-grade profile-bad" : "profile-grade"}
        x={x}
        y={y + 17}
        textAnchor={narrow ? "end" : "middle"}
        {...(narrow ? { transform: `rotate(-90 ${x} ${y + 12}) translate(0 -5)` } : {})}
      >
        {notation.slope(piece.grade)}
      </text>
    </>
  );
}

/** From where a piece starts, as steep as it may be; named once. */
function LimitLine({
  start,
  piece,
  scale,
}: {
  readonly start: DriveNodeResult;
  readonly piece: DrivePiece;
  readonly scale: ProfileScale;
}) {
  const notation = useNotation();
  const limit = useProject(({ rules }) => rules.steepestDrive);
  const up = piece.grade < 0 ? -limit : limit;
  // Not out of the drawing: as far as its upper rim.
  const rim = scale.height(14);
  const reach = up > 0 && rim > start.height ? (rim - start.height) / up : Number.POSITIVE_INFINITY;
  const run = Math.min(piece.to - piece.from, reach);
  const [x1, y1] = [scale.x(piece.from), scale.y(start.height)];
  const [x2, y2] = [scale.x(piece.from + run), scale.y(start.height + up * run)];
  return (
    <>
      <line className="profile-allowed" x1={x1} y1={y1} x2={x2} y2={y2} />
      {start.kind === "road" ? (
        <text className="profile-end" x={(x1 + x2) / 2} y={(y1 + y2) / 2 - 8} textAnchor="end">
          {`limit ${notation.slope(limit)}`}
        </text>
      ) : null}
    </>
  );
}
