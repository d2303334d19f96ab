export { levelSurvey } from "./levelSurvey";
