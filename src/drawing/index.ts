export { drawBreaklines } from "./breaklines";
export { drawBuilding } from "./building";
export { asRead, createDrawContext, type DrawContext, type DrawOptions } from "./context";
export { drawExisting, drawFinished, drawGuessed } from "./contours";
export { drawCorners } from "./corners";
export { drawDepth, drawDepthSpots } from "./depth";
export { type DepthClass, depthClassAt, depthClassEdges, depthClasses, edgeText } from "./depth-classes";
export { drawDimensions } from "./dimensions";
export { climbText, drawDrives, gradeRuns } from "./drives";
export { drawingBounds, sheetBounds } from "./extent";
export {
  type ElevationStrip,
  elevationRows,
  elevationStrip,
} from "./foundation-elevation";
export { type SectionCut, sectionCuts } from "./foundation-facts";
export {
  dimensionMarks,
  type FoundationSection,
  foundationSection,
  type SectionDimension,
  type SectionFacts,
  type SectionFigures,
} from "./foundation-section";
export { drawGroundShapes } from "./ground-shapes";
export { drawFeatures, drawLot } from "./lot";
export type { AreaMark, DrawingMark, LineMark, MarkLayer, SymbolMark, TextMark, XY } from "./marks";
export { drawNotes, noteBoxes } from "./notes";
export { drawPits } from "./pits";
export { drawPlan } from "./plan";
export { drawSectionLines } from "./section-lines";
export { drawSetbacks } from "./setbacks";
export { drawMarks, drawShots } from "./shots";
export { drawSquaring } from "./squaring";
export { type Style, type StyleName, styles } from "./styles";
export { drawSwales, swaleText } from "./swales";
export { type SymbolShape, symbolShapes } from "./symbols";
export { type CornerTies, tapeTies } from "./tape-ties";
export { ellipsize, textWidth } from "./text-width";
export { dimensionShape, drawUserDimensions } from "./user-dimensions";
export { drawArrows, drawGathered, drawPonds } from "./water";
export { drawWindows, windowMarks } from "./windows";
export { gradeText, heightText, lengthText, outText, withoutUnit } from "./words";
