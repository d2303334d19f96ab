/** The long section of a drive below the plan: its grade breaks are dragged, its grades held against the limit. */
import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import { gradingEdits } from "../../document";
import type { DriveNodeResult, DriveResult } from "../../solve/results";
import { cancelPreview, dropPreview, preview, run } from "../../store/actions";
import { Action } from "../fields/Choice";
import { useBox } from "../foundation/useBox";
import { useNotation, useProject, useResults } from "../useProject";
import { PieceGrade, ProfileGrid } from "./ProfileGrid";
import { type ProfileScale, profileScale } from "./profileScale";
import "./grading.css";

export function Profile() {
  const drives = useResults((results) => results.drives);
  const [chosen, setChosen] = useState<string | null>(null);
  const drive = drives.find(({ id }) => id === chosen) ?? drives[0] ?? null;
  const box = useRef<HTMLDivElement>(null);
  const size = useBox(box);
  return (
    <section className="profile" aria-label="Long section of the drive">
      {drive ? (
        <div className="profile-head">
          {drives.length > 1 ? (
            <select
              aria-label="Drive to show"
              value={drive.id}
              onChange={(event) => setChosen(event.target.value)}
            >
              {drives.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          ) : (
            <strong>{drive.name}</strong>
          )}
          <ProfileWords drive={drive} />
          <Action icon="plus" look="quiet" onPress={() => putBreak(drive)}>
            Put a grade break
          </Action>
        </div>
      ) : null}
      <div className="profile-box" ref={box}>
        {drive && size.width > 160 && size.height > 60 ? (
          <ProfileDrawing drive={drive} width={size.width} height={size.height} />
        ) : (
          <p className="section-empty soft">
            The drive's long section shows here once there are a drive and ground under it.
          </p>
        )}
      </div>
    </section>
  );
}

/** In the middle of the longest piece before the landing, on its line: nothing changes until it is moved. */
function putBreak(drive: DriveResult): void {
  const run0 = drive.nodes.find(({ kind }) => kind === "landing")?.distance ?? drive.length;
  const pieces = drive.pieces.filter(({ to }) => to <= run0 + 1e-9);
  const longest = pieces.reduce<(typeof pieces)[number] | null>(
    (a, b) => (a && a.to - a.from >= b.to - b.from ? a : b),
    null,
  );
  if (!longest) return;
  const start = drive.nodes.find(({ distance }) => distance === longest.from);
  const half = (longest.to - longest.from) / 2;
  run(gradingEdits.addGradeBreak, {
    id: drive.id,
    at: longest.from + half,
    height: (start?.height ?? 0) + longest.grade * half,
  });
}

/** The limit, and what the vehicle's underside says. */
function ProfileWords({ drive }: { drive: DriveResult }) {
  const notation = useNotation();
  const limit = useProject(({ rules }) => rules.steepestDrive);
  const over = drive.pieces.filter((piece) => piece.over).length;
  const under = drive.underside;
  const cut = useResults(({ grading }) => grading?.conflicts.find(({ first }) => first === drive.id) ?? null);
  const touching = under?.parts.filter(({ room }) => room < 0) ?? [];
  const [hit] = touching;
  return (
    <>
      <span className={over > 0 ? "profile-bad" : "soft"} data-testid="profile-limit">
        {over > 0
          ? `${over === 1 ? "1 piece is" : `${over} pieces are`} steeper than ${notation.slope(limit)}`
          : `every piece within ${notation.slope(limit)}`}
      </span>
      {under ? (
        <span className={hit ? "profile-bad" : "soft"} data-testid="profile-underside">
          {hit
            ? `a ${under.vehicle} touches: ${hit.part} by ${notation.length(-hit.room)}`
            : `a ${under.vehicle} clears it`}
        </span>
      ) : null}
      {cut ? (
        <span className="profile-bad" data-testid="profile-cut">
          of the drive as drawn: {cut.secondName} {cut.by < 0 ? "cuts" : "raises"} it by up to{" "}
          {notation.length(Math.abs(cut.by))}
        </span>
      ) : null}
    </>
  );
}

interface DrawingProps {
  readonly drive: DriveResult;
  readonly width: number;
  readonly height: number;
}

function ProfileDrawing({ drive, width, height }: DrawingProps) {
  const notation = useNotation();
  const svg = useRef<SVGSVGElement>(null);
  // While a break is under the hand the scale stays, so that the break keeps to the pointer.
  const [held, setHeld] = useState<ProfileScale | null>(null);
  const scale = held ?? profileScale(drive, width, height);
  const line = (heights: readonly (readonly [number, number])[]) =>
    heights.map(([t, z]) => `${scale.x(t).toFixed(1)},${scale.y(z).toFixed(1)}`).join(" ");
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no fieldset; its handles are what is operated
    <svg
      ref={svg}
      className="profile-drawing"
      width={width}
      height={height}
      role="group"
      aria-label={`Long section of ${drive.name}, heights ${scale.exaggeration.toFixed(1)} times larger`}
    >
      <polyline
        className="profile-ground"
        points={line(drive.stations.map(({ distance, existing }) => [distance, existing]))}
      />
      <polyline
        className="profile-tangents"
        points={line(drive.nodes.map((node) => [node.distance, node.height]))}
      />
      <polyline
        className="profile-drive"
        points={line(drive.stations.map(({ distance, finished }) => [distance, finished]))}
      />
      {drive.pieces.map((piece) => (
        <PieceGrade key={piece.from} drive={drive} piece={piece} scale={scale} />
      ))}
      <ProfileGrid drive={drive} scale={scale} height={height} />
      {drive.nodes.map((node) =>
        node.kind === "break" ? (
          <BreakHandle key={node.index} drive={drive} node={node} scale={scale} svg={svg} hold={setHeld} />
        ) : (
          <g key={node.kind}>
            <circle className="profile-node" cx={scale.x(node.distance)} cy={scale.y(node.height)} r={3} />
            <title>{`${node.kind} ${notation.length(node.height)}`}</title>
          </g>
        ),
      )}
    </svg>
  );
}

interface HandleProps {
  readonly drive: DriveResult;
  readonly node: DriveNodeResult;
  readonly scale: ProfileScale;
  readonly svg: { readonly current: SVGSVGElement | null };
  readonly hold: (scale: ProfileScale | null) => void;
}

/** Steps of the arrow keys, m. */
const step = { along: 0.25, up: 0.02 };
/** Steps that the hand keeps to, m. */
const grain = 0.005;

function BreakHandle({ drive, node, scale, svg, hold }: HandleProps) {
  const notation = useNotation();
  const grip = useRef<{ readonly dx: number; readonly dy: number } | null>(null);
  const args = (at: number, height: number) => ({ id: drive.id, index: node.index, patch: { at, height } });
  const limits = drive.nodes.find(({ kind }) => kind === "landing")?.distance ?? drive.length;
  const within = (t: number) => Math.min(Math.max(t, 0.1), limits - 0.1);
  const aimed = (event: PointerEvent) => {
    const box = svg.current?.getBoundingClientRect();
    const { dx, dy } = grip.current ?? { dx: 0, dy: 0 };
    const at = within(scale.distance(event.clientX - (box?.left ?? 0) + dx));
    const height = scale.height(event.clientY - (box?.top ?? 0) + dy);
    return args(Math.round(at / grain) * grain, Math.round(height / grain) * grain);
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>) => {
    const box = svg.current?.getBoundingClientRect();
    grip.current = {
      dx: scale.x(node.distance) - (event.clientX - (box?.left ?? 0)),
      dy: scale.y(node.height) - (event.clientY - (box?.top ?? 0)),
    };
    hold(scale);
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const letGo = () => {
    grip.current = null;
    hold(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Escape" && grip.current) {
      event.stopPropagation();
      letGo();
      cancelPreview();
      return;
    }
    if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      run(gradingEdits.removeGradeBreak, { id: drive.id, index: node.index });
      return;
    }
    const along = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    const up = event.key === "ArrowUp" ? 1 : event.key === "ArrowDown" ? -1 : 0;
    if (along === 0 && up === 0) return;
    event.preventDefault();
    event.stopPropagation();
    run(
      gradingEdits.changeGradeBreak,
      args(within(node.distance + along * step.along), node.height + up * step.up),
    );
  };
  const words = `${notation.length(node.distance)} from the road, height ${notation.length(node.height)}`;
  return (
    <g
      className="profile-break"
      role="slider"
      tabIndex={0}
      aria-label={`Grade break ${node.index + 1}`}
      aria-valuenow={node.height}
      aria-valuetext={words}
      onPointerDown={onPointerDown}
      onPointerMove={(event) => {
        if (grip.current) preview(gradingEdits.changeGradeBreak, aimed(event));
      }}
      onPointerUp={(event) => {
        if (!grip.current) return;
        dropPreview(gradingEdits.changeGradeBreak, aimed(event));
        letGo();
      }}
      onPointerCancel={() => {
        letGo();
        cancelPreview();
      }}
      onKeyDown={onKeyDown}
    >
      <title>{words}</title>
      <circle className="profile-break-reach" cx={scale.x(node.distance)} cy={scale.y(node.height)} r={14} />
      <circle className="profile-break-dot" cx={scale.x(node.distance)} cy={scale.y(node.height)} r={5.5} />
    </g>
  );
}
