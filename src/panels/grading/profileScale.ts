/** How a drive's long section lies in its box: metres to px and back. */
import type { DriveResult } from "../../solve/results";

export interface ProfileScale {
  readonly x: (distance: number) => number;
  readonly y: (height: number) => number;
  readonly distance: (px: number) => number;
  readonly height: (px: number) => number;
  /** How many times heights are drawn larger than lengths. */
  readonly exaggeration: number;
}

export const margin = { left: 64, right: 44, top: 26, bottom: 26 };
/** Heights are drawn this many times larger than lengths at most. */
const mostExaggeration = 10;

export function profileScale(drive: DriveResult, width: number, height: number): ProfileScale {
  const heights = [
    ...drive.stations.flatMap(({ existing, finished }) => [existing, finished]),
    ...drive.nodes.map((node) => node.height),
  ];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const across = (width - margin.left - margin.right) / drive.length;
  const tall = height - margin.top - margin.bottom;
  const up = Math.min(tall / Math.max(high - low, 0.3), across * mostExaggeration);
  const middle = (low + high) / 2;
  const centre = margin.top + tall / 2;
  return {
    x: (distance) => margin.left + distance * across,
    y: (z) => centre - (z - middle) * up,
    distance: (px) => (px - margin.left) / across,
    height: (px) => middle + (centre - px) / up,
    exaggeration: up / across,
  };
}
