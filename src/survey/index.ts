export { aboveMark } from "./aboveMark";
export { type BookPage, bookPage, type PageRow } from "./bookPage";
export { farLengths, type NamedLength } from "./farLengths";
export {
  type BookFault,
  type LevelBook,
  type LevelBookRow,
  reduceLevelBook,
  type Spread,
} from "./levelBook";
export { levelSurvey } from "./levelSurvey";
export {
  type MisclosureClass,
  misclosureClass,
  misclosureClasses,
  permittedMisclosure,
  type RunCloses,
  runCloses,
} from "./misclosure";
export { leaveOneOut, type Prediction } from "./neighbours";
export { liesOnGround } from "./onGround";
export {
  type FirmGround,
  firmGround,
  type Layer,
  type PitDepthAt,
  type PitSpot,
  pitDepthAt,
  pitSpots,
  pitSummary,
  type UnderFooting,
  underFooting,
} from "./pits";
export { curvatureAndRefraction } from "./readings";
export { type RodRule, rodRule } from "./rodRules";
export { type SurveyBookRow, surveyBook } from "./surveyBook";
export { type PegResult, type PegSetup, reciprocalDifference, twoPegCheck } from "./twoPeg";
