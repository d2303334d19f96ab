/** What comes in over the plan as it is, small, before anything joins. */
import { useEffect, useRef } from "react";
import type { Project } from "../../document";
import type { Incoming } from "../../files/incoming";
import { boundsOf, type Point } from "../../geometry";
import { palettes, type Theme } from "../../look/tokens";

const width = 480;
const height = 300;
const edge = 16;
/** Dots beyond this many can't be told apart on the small plan. */
const mostDots = 20_000;

type Place = (x: number, y: number) => readonly [number, number];

export interface PreviewPlanProps {
  /** In metres, where it would lie on the plan. */
  readonly incoming: Incoming;
  readonly project: Project;
  readonly theme: Theme;
}

export function PreviewPlan({ incoming, project, theme }: PreviewPlanProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (context) draw(context, incoming, project, theme);
  }, [incoming, project, theme]);
  return (
    <canvas
      ref={canvas}
      className="import-preview"
      width={2 * width}
      height={2 * height}
      role="img"
      aria-label="What comes in, over the plan as it is"
    />
  );
}

function draw(context: CanvasRenderingContext2D, incoming: Incoming, project: Project, theme: Theme): void {
  const palette = palettes[theme];
  const own = ownPlaces(project);
  const box = incoming.bounds;
  const corners: Point[] = box
    ? [
        [box.minX, box.minY],
        [box.maxX, box.maxY],
      ]
    : [];
  const place = placing([...corners, ...own]);
  context.setTransform(2, 0, 0, 2, 0, 0);
  context.fillStyle = palette.sheet;
  context.fillRect(0, 0, width, height);
  drawOwn(context, project, place, palette.soft);
  drawFaces(context, incoming, place, palette.rule);
  context.strokeStyle = palette.accent;
  context.lineWidth = 1.4;
  for (const { xyz, closed } of incoming.lines) {
    context.beginPath();
    for (let i = 0; i < xyz.length; i += 3) context.lineTo(...place(xyz[i] as number, xyz[i + 1] as number));
    if (closed) context.closePath();
    context.stroke();
  }
  context.fillStyle = palette.accent;
  const { x, y } = incoming.points;
  const every = Math.max(1, Math.ceil(x.length / mostDots));
  for (let i = 0; i < x.length; i += every) {
    const [px, py] = place(x[i] as number, y[i] as number);
    context.fillRect(px - 1.25, py - 1.25, 2.5, 2.5);
  }
  drawMarks(context, incoming, place);
}

/** Triangles, as the plan draws marks. */
function drawMarks(context: CanvasRenderingContext2D, { marks }: Incoming, place: Place): void {
  for (let i = 0; i < marks.x.length; i++) {
    const [x, y] = place(marks.x[i] as number, marks.y[i] as number);
    context.beginPath();
    for (const [dx, dy] of [
      [0, -5],
      [4.5, 3],
      [-4.5, 3],
    ] as const)
      context.lineTo(x + dx, y + dy);
    context.fill();
  }
}

function ownPlaces(project: Project): Point[] {
  const shots = project.survey.shots.flatMap(({ place }): Point[] =>
    place.kind === "at" ? [[place.x, place.y]] : [],
  );
  return [...project.lot.outline, ...(project.building?.outline ?? []), ...shots];
}

function drawOwn(context: CanvasRenderingContext2D, project: Project, place: Place, ink: string): void {
  context.strokeStyle = ink;
  context.fillStyle = ink;
  context.lineWidth = 1;
  for (const [outline, dash] of [
    [project.lot.outline, [8, 3, 2, 3]],
    [project.building?.outline ?? [], []],
  ] as const) {
    context.setLineDash([...dash]);
    context.beginPath();
    for (const [x, y] of outline) context.lineTo(...place(x, y));
    context.closePath();
    context.stroke();
  }
  context.setLineDash([]);
  for (const shot of project.survey.shots) {
    if (shot.place.kind !== "at") continue;
    const [x, y] = place(shot.place.x, shot.place.y);
    context.fillRect(x - 1, y - 1, 2, 2);
  }
}

function drawFaces(context: CanvasRenderingContext2D, { faces }: Incoming, place: Place, ink: string): void {
  const { triangles, x, y } = faces;
  const every = 3 * Math.max(1, Math.ceil(triangles.length / 3 / mostDots));
  context.strokeStyle = ink;
  context.lineWidth = 0.6;
  context.beginPath();
  for (let i = 0; i + 2 < triangles.length; i += every) {
    const ends = [0, 1, 2, 0].map((k) => triangles[i + k] as number);
    ends.forEach((end, k) => {
      const at = place(x[end] as number, y[end] as number);
      if (k === 0) context.moveTo(...at);
      else context.lineTo(...at);
    });
  }
  context.stroke();
}

function placing(points: readonly Point[]): Place {
  const { minX, minY, maxX, maxY } =
    points.length > 0 ? boundsOf(points) : { minX: 0, minY: 0, maxX: 1, maxY: 1 };
  const scale = Math.min(
    (width - 2 * edge) / Math.max(maxX - minX, 1e-3),
    (height - 2 * edge) / Math.max(maxY - minY, 1e-3),
  );
  return (x, y) => [
    width / 2 + (x - (minX + maxX) / 2) * scale,
    height / 2 - (y - (minY + maxY) / 2) * scale,
  ];
}
