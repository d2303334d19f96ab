/** The building in the section: its two walls on their footings, and the floor between them. */
import type { Foundation } from "../../document";
import { hasSlab, slabDepth, wallSection } from "../../document/foundationMeasures";
import { footingBottom, type SectionBuilding, type SectionFit, sectionX, sectionY } from "./sectionShapes";

const insulationOf = (foundation: Foundation) => (hasSlab(foundation) ? foundation.insulation : 0);

export interface SectionWallsProps {
  readonly building: SectionBuilding;
  readonly fit: SectionFit;
  readonly floorText: string;
}

export function SectionWalls({ building, fit, floorText }: SectionWallsProps) {
  const { from, to, floor, topOfWall, foundation } = building;
  const { thickness, footingWidth, footingThickness } = wallSection(foundation);
  const lowest = footingBottom(building);
  const top = sectionY(fit, topOfWall);
  const bottom = sectionY(fit, lowest + footingThickness);
  const under = sectionY(fit, lowest);
  const thick = thickness * fit.scale;
  const footing = footingWidth * fit.scale;
  const walls = [from, to - thickness].map((start) => {
    const x = sectionX(fit, start);
    const middle = x + thick / 2;
    return (
      <g key={start}>
        <rect x={x} y={top} width={Math.max(2, thick)} height={bottom - top} />
        {footingThickness > 0 ? (
          <rect
            x={middle - footing / 2}
            y={bottom}
            width={Math.max(4, footing)}
            height={Math.max(1, under - bottom)}
          />
        ) : null}
      </g>
    );
  });
  const y = sectionY(fit, floor);
  const slab = slabDepth(foundation);
  const courses =
    foundation.kind === "crawl-space"
      ? [{ name: "slab", z: floor, thickness: foundation.crawl.floorThickness }]
      : [
          { name: "slab", z: floor, thickness: slab },
          { name: "base", z: floor - slab - insulationOf(foundation), thickness: foundation.baseThickness },
        ];
  return (
    <g className="section-walls">
      {courses.map(({ name, z, thickness }) => (
        <rect
          key={name}
          className={`section-${name}`}
          x={sectionX(fit, from)}
          y={sectionY(fit, z)}
          width={(to - from) * fit.scale}
          height={thickness * fit.scale * fit.exaggeration}
        />
      ))}
      {walls}
      <path className="section-floor" d={`M${sectionX(fit, from)} ${y}H${sectionX(fit, to)}`} />
      <text x={(sectionX(fit, from) + sectionX(fit, to)) / 2} y={y - 7} textAnchor="middle">
        {floorText}
      </text>
    </g>
  );
}
