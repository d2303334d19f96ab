/** The building in the section: its two walls on their footings, and the floor between them. */
import { type SectionBuilding, type SectionFit, sectionX, sectionY } from "./sectionShapes";

export interface SectionWallsProps {
  readonly building: SectionBuilding;
  readonly fit: SectionFit;
  readonly floorText: string;
}

export function SectionWalls({ building, fit, floorText }: SectionWallsProps) {
  const { from, to, floor, topOfWall, foundation } = building;
  const top = sectionY(fit, topOfWall);
  const bottom = sectionY(fit, topOfWall - foundation.wallHeight);
  const under = sectionY(fit, topOfWall - foundation.wallHeight - foundation.footingThickness);
  const thick = foundation.wallThickness * fit.scale;
  const footing = foundation.footingWidth * fit.scale;
  const walls = [from, to - foundation.wallThickness].map((start) => {
    const x = sectionX(fit, start);
    const middle = x + thick / 2;
    return (
      <g key={start}>
        <rect x={x} y={top} width={Math.max(2, thick)} height={bottom - top} />
        <rect
          x={middle - footing / 2}
          y={bottom}
          width={Math.max(4, footing)}
          height={Math.max(1, under - bottom)}
        />
      </g>
    );
  });
  const y = sectionY(fit, floor);
  const { slabThickness, baseThickness } = foundation;
  const courses = [
    { name: "slab", z: floor, thickness: slabThickness },
    { name: "base", z: floor - slabThickness, thickness: baseThickness },
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
