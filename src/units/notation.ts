/** The ways in which figures are written. */

/** "ft-in": feet, inches and fractions. "in": inches and fractions alone, as on a tape. The rest are decimal. */
export type LengthNotation = "ft-in" | "in" | "ft" | "m" | "cm" | "mm";
export type AreaUnit = "ft2" | "m2";
export type VolumeUnit = "yd3" | "m3";
/** "ratio" is 1 in so much. */
export type SlopeKind = "percent" | "ratio" | "in-per-10ft";
