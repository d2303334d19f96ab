/** Directions on the plan as winds. */
const winds = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

/** The wind a direction points to; `north` is the plan's direction of north, clockwise from its y axis. */
export function compass(direction: readonly [number, number], north: number): string {
  const azimuth = Math.atan2(direction[0], direction[1]) - north;
  const eighth = ((Math.round((azimuth / (2 * Math.PI)) * 8) % 8) + 8) % 8;
  return winds[eighth] ?? "";
}

/** "north-east" as "NE". */
export function shortWind(wind: string): string {
  return wind
    .split("-")
    .map((part) => part.charAt(0).toUpperCase())
    .join("");
}
