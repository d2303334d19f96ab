/**
 * Does a vehicle clear the drive with its underside and its ends?
 *
 * Units   metres.
 * Method  The vehicle stands with both axles on the long section and is rolled along in small steps, from the road
 *         (carried on at its own grade) to inside the door (carried on level). Between the axles the section may not
 *         rise over the line of the wheels by more than the clearance; beyond them the ends clear more and more, in a
 *         straight line from the clearance at the axle to that at the end.
 * Source  First principles; at a sharp break of A (change of grade) the line between the axles is crossed by
 *         A · wheelbase / 4, on a parabola of length L ≥ wheelbase by A · wheelbase² / (8 L), for small grades.
 */
import type { Vehicle } from "../document/schema";

/** Steps along the section, m; longer on very long drives. */
const step = 0.05;
const mostSteps = 4000;

export interface Tightest {
  readonly part: "underside" | "front" | "rear";
  /** Room left; negative where it touches. */
  readonly room: number;
  readonly distance: number;
}

/** `heightAt` answers along the section from `from` to `to`, both beyond the ends by the vehicle's length. */
export function tightestPlaces(
  heightAt: (distance: number) => number,
  length: number,
  vehicle: Vehicle,
): Tightest[] {
  const { wheelbase, clearance, frontOverhang, rearOverhang, endClearance } = vehicle;
  const margin = wheelbase + frontOverhang + rearOverhang;
  const s = Math.max(step, (length + 2 * margin) / mostSteps, wheelbase / 200);
  const axles = Math.max(1, Math.round(wheelbase / s));
  const front = Math.round(frontOverhang / s);
  const rear = Math.round(rearOverhang / s);
  const first = -Math.ceil(margin / s);
  const last = Math.ceil((length + margin) / s);
  const z = Float64Array.from({ length: last - first + 1 }, (_, k) => heightAt((first + k) * s));
  const parts = {
    underside: { part: "underside" as const, room: Number.POSITIVE_INFINITY, distance: 0 },
    front: { part: "front" as const, room: Number.POSITIVE_INFINITY, distance: 0 },
    rear: { part: "rear" as const, room: Number.POSITIVE_INFINITY, distance: 0 },
  };
  const look = (part: keyof typeof parts, k: number, room: number) => {
    if (room < parts[part].room) parts[part] = { part, room, distance: (first + k) * s } as never;
  };
  for (let k = rear; k + axles + front < z.length; k++) {
    const at = z[k] as number;
    const grade = ((z[k + axles] as number) - at) / axles;
    for (let j = 1; j < axles; j++)
      look("underside", k + j, clearance + at + grade * j - (z[k + j] as number));
    for (let j = 1; j <= front; j++) {
      const free = clearance + ((endClearance - clearance) * j) / front;
      look("front", k + axles + j, free + at + grade * (axles + j) - (z[k + axles + j] as number));
    }
    for (let j = 1; j <= rear; j++) {
      const free = clearance + ((endClearance - clearance) * j) / rear;
      look("rear", k - j, free + at - grade * j - (z[k - j] as number));
    }
  }
  return [parts.underside, parts.front, parts.rear].filter(({ room }) => Number.isFinite(room));
}
