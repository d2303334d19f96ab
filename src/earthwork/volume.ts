/** Volumes between a surface and what it is to become. */
import { type CutFill, prismCutFill } from "./prism";

/** Volumes in place, m3, with the areas that are cut and filled and the whole area reckoned on, m2. */
export interface Volume extends CutFill {
  readonly planArea: number;
}

/** Adds up prisms. */
export class VolumeSum {
  private cut = 0;
  private fill = 0;
  private cutArea = 0;
  private fillArea = 0;
  private planArea = 0;

  /**
   * Adds one prism by its plan area and corner offsets (ground - target). An area may be negative where a
   * triangle without width lies turned over: it then takes away what its neighbour counts twice.
   */
  add(area: number, first: number, second: number, third: number): void {
    const sign = area < 0 ? -1 : 1;
    const prism = prismCutFill(sign * area, first, second, third);
    this.cut += sign * prism.cut;
    this.fill += sign * prism.fill;
    this.cutArea += sign * prism.cutArea;
    this.fillArea += sign * prism.fillArea;
    this.planArea += area;
  }

  total(): Volume {
    const { cut, fill, cutArea, fillArea, planArea } = this;
    return { cut, fill, cutArea, fillArea, planArea };
  }
}
