/** The foundation's section to scale, with its dimensions typed beside it. */
import { buildingEdits, type Foundation } from "../../document";
import {
  type DimensionKey,
  dimension,
  dimensionShortWords,
  dimensionWords,
  mayBeNothing,
  withDimension,
} from "../../document/foundationDimensions";
import {
  type DrawingMark,
  type FoundationSection,
  foundationSection,
  type SectionCut,
  type SectionDimension,
} from "../../drawing";
import { tryRun } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { LengthField } from "../fields/LengthField";
import { capital } from "../words";
import { gutterTops } from "./gutters";
import { MarksSvg, pxPerMm, type SvgScale, svgX, svgY } from "./MarksSvg";

/** Width of a typed figure; the ones on the left stand on the earth outside, the ones on the right in a gutter, px. */
const fieldWidth = 64;
const gutter = fieldWidth + 8;
/** Height of a field with its name and air at 100 % of text, px; its figure's middle below its top. */
const fieldHeight = 46;
const figureMiddle = 29;
const tallest = 320;

export interface SectionDrawingProps {
  readonly cut: SectionCut;
  readonly words: string;
  readonly width: number;
}

export function SectionDrawing({ cut, words, width }: SectionDrawingProps) {
  const { foundation } = cut.facts;
  const inner = Math.max(120, width - gutter);
  const rough = foundationSection(cut.facts, 1 / (70 * pxPerMm));
  const pxPerMetre = scaleFor(rough, inner);
  const section = foundationSection(cut.facts, pxPerMm / pxPerMetre);
  const { bounds, dimensions, measures, marks } = section;
  const height = (bounds.maxY - bounds.minY) * pxPerMetre;
  const left = Math.max(0, inner - (bounds.maxX - bounds.minX) * pxPerMetre);
  const scale: SvgScale = { pxPerMetre, left, top: 0, minX: bounds.minX, maxY: bounds.maxY };
  const textSize = useApp(({ preferences }) => preferences.textSize);
  const placed = placeFields(dimensions, scale, { height, width, textSize });
  return (
    <div className="foundation-section" style={{ height: Math.max(height, placed.room) }}>
      <svg
        width={width}
        height={Math.max(height, placed.room)}
        role="img"
        aria-label={`Section ${cut.words}: ${words}`}
      >
        <MarksSvg
          marks={[
            ...marks.filter(({ kind }) => kind !== "text"),
            ...[...dimensions, ...measures].flatMap(lineOf),
          ]}
          scale={scale}
        />
        {placed.fields.map(({ key, leader }) => (
          <path key={key} className="foundation-leader" d={leader} />
        ))}
      </svg>
      {placed.fields.map(({ key, side, top }) => (
        <div
          key={key}
          className={`foundation-dimension foundation-${side}`}
          style={{ top, width: fieldWidth }}
          title={capital(dimensionWords[key])}
        >
          <span className="foundation-dimension-name" aria-hidden="true">
            {dimensionShortWords[key]}
          </span>
          <DimensionField foundation={foundation} name={key} />
        </div>
      ))}
    </div>
  );
}

function scaleFor({ bounds }: FoundationSection, width: number): number {
  return Math.min(width / (bounds.maxX - bounds.minX), tallest / (bounds.maxY - bounds.minY));
}

function lineOf({ from, to }: Pick<SectionDimension, "from" | "to">): DrawingMark[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]) + Math.PI / 4;
  const tick = (at: SectionDimension["from"]): DrawingMark => ({
    kind: "symbol",
    at,
    symbol: "tick",
    size: 1.6,
    angle,
    style: "dimension-tick",
  });
  return [{ kind: "line", points: [...from, ...to], style: "dimension" }, tick(from), tick(to)];
}

interface PlacedField {
  readonly key: DimensionKey;
  readonly side: "left" | "right";
  readonly top: number;
  readonly leader: string;
}

/** Upright ones outside of the wall's face stand left, all others right. */
function placeFields(
  dimensions: readonly SectionDimension[],
  scale: SvgScale,
  { height, width, textSize }: { readonly height: number; readonly width: number; readonly textSize: number },
): { readonly fields: readonly PlacedField[]; readonly room: number } {
  const withSide = dimensions.map((each) => ({
    each,
    side: each.from[0] < 0 && each.to[0] < 0 ? ("left" as const) : ("right" as const),
    x: svgX(scale, (each.from[0] + each.to[0]) / 2),
    y: svgY(scale, (each.from[1] + each.to[1]) / 2),
  }));
  const room = Math.max(
    height,
    ...(["left", "right"] as const).map(
      (side) => withSide.filter((one) => one.side === side).length * fieldHeight * textSize,
    ),
  );
  const fields = (["left", "right"] as const).flatMap((side) => {
    const own = withSide.filter((one) => one.side === side);
    const tops = gutterTops(
      own.map(({ y }) => ({ wanted: y })),
      fieldHeight * textSize,
      room,
    );
    return own.map(({ each, x, y }, i): PlacedField => {
      const top = tops[i] as number;
      const edge = side === "left" ? fieldWidth : width - fieldWidth;
      return { key: each.key, side, top, leader: `M${edge} ${top + figureMiddle * textSize}L${x} ${y}` };
    });
  });
  return { fields, room };
}

function DimensionField({ foundation, name }: { foundation: Foundation; name: DimensionKey }) {
  return (
    <LengthField
      label={capital(dimensionWords[name])}
      layout="bare"
      small={name !== "wallHeight" && name !== "holeDepth" && name !== "clearance"}
      m={dimension(foundation, name)}
      least={mayBeNothing(name) ? 0 : 0.001}
      onCommit={(m) => tryRun(buildingEdits.changeFoundation, { patch: withDimension(foundation, name, m) })}
    />
  );
}
