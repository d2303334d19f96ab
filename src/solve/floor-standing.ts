/** How a floor stands to the band and to one rule: what views ask, answered where the band is made. */
export {
  allowedHeights,
  hasBearing,
  limitTolerance,
  nearestWithin,
  outsideBand,
  passedRule,
  standingIn,
} from "../advice";
