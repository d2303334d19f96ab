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
  // Looked at some hundred thousand times a drag's step: plain numbers, no object a look.
  let [least, leastAt] = [Number.POSITIVE_INFINITY, 0];
  let [leastFront, frontAt] = [Number.POSITIVE_INFINITY, 0];
  let [leastRear, rearAt] = [Number.POSITIVE_INFINITY, 0];
  const lessFront = front > 0 ? (endClearance - clearance) / front : 0;
  const lessRear = rear > 0 ? (endClearance - clearance) / rear : 0;
  for (let k = rear; k + axles + front < z.length; k++) {
    const at = z[k] as number;
    const grade = ((z[k + axles] as number) - at) / axles;
    for (let j = 1; j < axles; j++) {
      const room = clearance + at + grade * j - (z[k + j] as number);
      if (room < least) {
        least = room;
        leastAt = k + j;
      }
    }
    for (let j = 1; j <= front; j++) {
      const ahead = axles + j;
      const room = clearance + lessFront * j + at + grade * ahead - (z[k + ahead] as number);
      if (room < leastFront) {
        leastFront = room;
        frontAt = k + ahead;
      }
    }
    for (let j = 1; j <= rear; j++) {
      const room = clearance + lessRear * j + at - grade * j - (z[k - j] as number);
      if (room < leastRear) {
        leastRear = room;
        rearAt = k - j;
      }
    }
  }
  const found: Tightest[] = [
    { part: "underside", room: least, distance: (first + leastAt) * s },
    { part: "front", room: leastFront, distance: (first + frontAt) * s },
    { part: "rear", room: leastRear, distance: (first + rearAt) * s },
  ];
  return found.filter(({ room }) => Number.isFinite(room));
}
