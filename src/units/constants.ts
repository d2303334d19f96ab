/** The international foot, exact by definition since 1959; the survey foot was retired on 2022-12-31 (NIST). */
export const FOOT = 0.3048;
export const INCH = 0.0254;
export const SQUARE_FOOT = 0.09290304;
export const CUBIC_YARD = 0.764554857984;
/** 2,000 lb, kg; exact. */
export const SHORT_TON = 907.18474;
