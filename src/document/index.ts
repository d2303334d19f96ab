export * as buildingEdits from "./commands/building";
export type { Edit, EditCommand } from "./commands/command";
export * as siteEdits from "./commands/site";
export * as surveyEdits from "./commands/survey";
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
export { type FileProblem, newProject, type Opened, openProject } from "./open";
export { fileEnding, projectText } from "./save";
export * from "./schema";
