export {
  type AdjustedCourse,
  closeTraverse,
  type DeedCall,
  type Traverse,
  type TraverseResult,
  traverseOutline,
} from "./deed";
export {
  cornerHeights,
  deedCalls,
  deedOutline,
  type LevelTape,
  levelTapes,
  lineSetbacks,
  type UnleveledTape,
} from "./document";
export { crossingsByLine, type LotLine, lineOfPiece, lotLines, piecesOf, setbacksByLine } from "./lotLines";
export { type LotSize, lotSize } from "./lotSize";
export { type Misread, misreadTape, type Suspect } from "./misread";
export { misreadWords, tapeName } from "./misreadWords";
export {
  type CornerAngle,
  type CornerMove,
  cornerAngles,
  LEAST_MOVE,
  moveInWords,
  type OutOfSquare,
  outOfSquare,
} from "./outOfSquare";
export {
  type Diagonal,
  levelLength,
  plannedDiagonals,
  type RightTriangle,
  threeFourFive,
} from "./rightAngles";
export {
  type Crossing,
  type LineSetback,
  type SetbackLine,
  type Standing,
  setbackCrossings,
  setbackLines,
} from "./setbacks";
export {
  type Squared,
  type SquaredCorner,
  type SquaringFault,
  type SquaringResult,
  squareUp,
  type TapedLength,
  type TapeResidual,
} from "./squaring";
