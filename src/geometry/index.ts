export { cholesky, substitute } from "./cholesky";
export { circlesMeet } from "./circles";
export { clipConvexByConvex, clipConvexByHalfPlane, flatArea } from "./clip";
export { convexPieces } from "./convex-pieces";
export { convexHull, outermost } from "./hull";
export { type Bounds, between, boundsOf, distance, type Point, turned } from "./point";
export { cornerDistances, nearestOnPolyline, pointAlong, polylineLength } from "./polyline";
export { inCircle, turn } from "./predicates";
export {
  centroid,
  containsPoint,
  counterClockwise,
  isRightAngled,
  nearestOnRing,
  perimeter,
  ringsSelfCross,
  selfCrossing,
  signedArea,
} from "./ring";
export { crossingShares, distanceToSegment, type Nearest, nearestShare, segmentsMeet } from "./segment";
