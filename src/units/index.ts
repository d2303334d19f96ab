export { formatPlusMinus, type ParsedAccuracy, parseBeamAccuracy } from "./accuracy";
export { formatArea, formatLand, formatMass, formatMoney, formatVolume } from "./amount";
export { formatAngle, type ParsedAngle, parseAngle } from "./angle";
export { asksAgain, type Doubt, unitSlips } from "./asksAgain";
export { formatBearing, parseBearing } from "./bearing";
export { formatBore } from "./bore";
export { bothUnits } from "./bothUnits";
export { compass, shortWind } from "./compass";
export { CUBIC_YARD, FOOT, INCH, SHORT_TON, SQUARE_FOOT } from "./constants";
export { type CountedUnit, countedIn, type ReadersUnit, weighedIn } from "./counted";
export { formatDeedBearing, type ParsedDeedBearing, parseDeedBearing } from "./deedBearing";
export {
  depthInWords,
  formatAboveBelow,
  formatLength,
  formatSigned,
  roundingFor,
  roundingStep,
} from "./formatLength";
export { halfWidth, parseNumber } from "./halfWidth";
export type { AreaUnit, LengthNotation, SlopeKind, VolumeUnit } from "./notation";
export { usualNudge } from "./nudge";
export { acceptedLengths, type ParsedLength, parseLength } from "./parseLength";
export { flowUnit, formatRate, type RateUnit, rainUnit, speedUnit } from "./rain";
export { formatSlope, type ParsedSlope, parseSlope } from "./slope";
