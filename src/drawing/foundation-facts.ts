/** Where a section through the foundation is cut, and what it meets there. */
import type { Project } from "../document/schema";
import type { DoorLevels, FoundationResult, WallElevation } from "../solve/results";
import type { SectionFacts } from "./foundation-section";

/** A place to cut: the lowest corner, or a door by its id. */
export interface SectionCut {
  readonly id: string;
  readonly words: string;
  readonly facts: SectionFacts;
}

/** The cuts worth drawing: where the ground is lowest and highest along the walls, and through each door. */
export function sectionCuts(project: Project, result: FoundationResult): readonly SectionCut[] {
  const corners = result.walls.map((wall) => wall.existing[0] as number);
  const lowest = corners.indexOf(Math.min(...corners));
  const highest = corners.indexOf(Math.max(...corners));
  const named = (wall: number) => result.walls[wall]?.name.split("-")[0] ?? "";
  const at = (
    id: string,
    words: string,
    wall: number,
    offset: number,
    door: DoorLevels | null,
  ): SectionCut[] => {
    const facts = factsAt(project, result, wall, offset, door);
    return facts ? [{ id, words, facts }] : [];
  };
  return [
    ...at("low", `at the low corner ${named(lowest)}`, lowest, 0, null),
    ...(highest === lowest ? [] : at("high", `at the high corner ${named(highest)}`, highest, 0, null)),
    ...result.doors.flatMap((door) => {
      const found = project.building?.doors.find(({ id }) => id === door.id);
      if (!found) return [];
      return at(`door:${door.id}`, `through ${door.name}`, door.wall, found.offset + found.width / 2, door);
    }),
  ];
}

function factsAt(
  { building, grading }: Project,
  result: FoundationResult,
  wall: number,
  offset: number,
  door: DoorLevels | null,
): SectionFacts | null {
  const line = result.walls[wall];
  if (!building || !line) return null;
  const { floor } = result.heights;
  return {
    foundation: building.foundation,
    topOfWallAboveFloor: building.topOfWallAboveFloor,
    existing: between(line, line.existing, offset) - floor,
    finished: between(line, line.finished, offset) - floor,
    bottom: between(line, line.bottom, offset) - floor,
    fall: grading.apron.leave.includes(wall) ? 0 : (door?.apronFall ?? grading.apron.fall),
    sillBelowFloor: door?.sillBelowFloor ?? null,
  };
}

function between({ distance }: WallElevation, heights: Float64Array, offset: number): number {
  let i = 1;
  while (i < distance.length - 1 && (distance[i] as number) < offset) i++;
  const [a, b] = [distance[i - 1] as number, distance[i] as number];
  const t = b > a ? Math.min(1, Math.max(0, (offset - a) / (b - a))) : 0;
  return (heights[i - 1] as number) + t * ((heights[i] as number) - (heights[i - 1] as number));
}
