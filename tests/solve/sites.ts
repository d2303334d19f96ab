/** Small projects for tests, built with the schema so that every default is in place. */
import { type Project, projectSchema } from "../../src/document/schema";

export type Surface = (x: number, y: number) => number;

/** A plane through `z` at the origin with these slopes east and north. */
export function plane(z: number, gx = 0, gy = 0): Surface {
  return (x, y) => z + gx * x + gy * y;
}

/** Height of the beam in these projects; readings go down from it. */
export const beam = 200;

interface SiteOptions {
  readonly surface?: Surface;
  /** Shots stand on a lattice from −reach to reach, this far apart, m. */
  readonly reach?: number;
  readonly spacing?: number;
  readonly building?: Record<string, unknown> | null;
  readonly rest?: Record<string, unknown>;
}

/** An 8 × 12 m building with a corner at the origin, on a shot lattice. */
export const shed = {
  outline: [
    [0, 0],
    [12, 0],
    [12, 8],
    [0, 8],
  ],
  floor: 100.5,
};

export function site({
  surface = plane(100),
  reach = 60,
  spacing = 10,
  building = shed,
  rest = {},
}: SiteOptions = {}): Project {
  return projectSchema.parse({
    drysill: 1,
    display: { length: "m", reading: "m", rounding: 3 },
    survey: {
      marks: [{ id: "m", name: "bolt", at: [-20, -20], height: { text: "100", m: 100 } }],
      setups: [{ id: "u", name: "first" }],
      shots: [
        { id: "bm", name: "bolt", setup: "u", kind: "mark", of: "m", reading: reading(100) },
        ...lattice(surface, reach, spacing),
      ],
    },
    building,
    ...rest,
  });
}

export function reading(height: number): { text: string; m: number } {
  return { text: String(beam - height), m: beam - height };
}

function lattice(surface: Surface, reach: number, spacing: number) {
  const shots: Record<string, unknown>[] = [];
  for (let x = -reach; x <= reach; x += spacing) {
    for (let y = -reach; y <= reach; y += spacing) {
      shots.push({
        id: `s${shots.length}`,
        name: String(shots.length),
        setup: "u",
        reading: reading(surface(x, y)),
        place: { kind: "at", x, y },
      });
    }
  }
  return shots;
}
