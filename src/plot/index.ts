export {
  type AdjustedCourse,
  closeTraverse,
  type DeedCall,
  type Traverse,
  type TraverseResult,
  traverseOutline,
} from "./deed";
export {
  type CornerAngle,
  type CornerMove,
  cornerAngles,
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
  type Squared,
  type SquaredCorner,
  type SquaringResult,
  squareUp,
  type TapedLength,
  type TapeResidual,
} from "./squaring";
