export { type BookFault, type LevelBook, type LevelBookRow, reduceLevelBook } from "./levelBook";
export { levelSurvey } from "./levelSurvey";
