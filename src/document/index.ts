export { type BreaklineKind, breaklineWord, isClosedBreakline } from "./breaklineKinds";
export type { Alignment } from "./commands/arrange";
export * as arrangeEdits from "./commands/arrange";
export * as buildingEdits from "./commands/building";
export type { Edit, EditCommand } from "./commands/command";
export * as drawingEdits from "./commands/drawing";
export * as gradingEdits from "./commands/grading";
export { applyFix, type FixEdit } from "./commands/mending";
export * as optionEdits from "./commands/options";
export * as pitEdits from "./commands/pits";
export * as plotEdits from "./commands/plot";
export { canRename, renameThing } from "./commands/rename";
export * as ruleSetEdits from "./commands/ruleSets";
export {
  differsFrom,
  general as generalRules,
  type RuleSet,
  ruleSetOf,
  ruleSetSchema,
} from "./commands/ruleSets";
export * as shapeEdits from "./commands/shape";
export * as siteEdits from "./commands/site";
export * as surveyEdits from "./commands/survey";
export * as windowEdits from "./commands/windows";
export { featureForms, featureWords, isArea, usualKeepClear } from "./features";
export {
  type History,
  jump,
  longestHistory,
  present,
  record,
  redo,
  redoLabel,
  seal,
  startHistory,
  undo,
  undoLabel,
} from "./history";
export { lockedRefusal } from "./locks";
export { lotFault, soundLot } from "./lot";
export { setupForNext } from "./nextSetup";
export { type FileProblem, newProject, type Opened, openProject } from "./open";
export {
  anchorPlace,
  anchorsOf,
  leansOnBuilding,
  type Placed,
  type PlaceFault,
  type PlaceResolver,
  placeResolver,
  shotPlace,
  stakeOrder,
  stakePoint,
  tapeCandidates,
} from "./places";
export { generalSet } from "./ruleSets";
export { fileEnding, projectPieces, projectText } from "./save";
export * from "./schema";
export { figureSource, type Soil, type SoilKind, soilOf, soils } from "./soils";
export { type Thing, thingKey, thingKinds } from "./thing";
export {
  allThings,
  dimensionPlace,
  hasThing,
  hiddenThings,
  isHidden,
  isLocked,
  kindWord,
  type Shape,
  thingKindWord,
  thingName,
  thingShape,
} from "./things";
export { visibleProject } from "./visible";
export {
  bedRoughness,
  type DitchLiningKind,
  ditchLiningKinds,
  ditchLinings,
  type GroundCoverKind,
  groundCoverKinds,
  groundCovers,
  liningBears,
  mixedC,
} from "./waterCovers";
