export { glossary, searchTerms, type Term, termOf } from "./glossary";
export { type GuideStep, guideSteps, guides, type StepGuide } from "./guides";
export { type TourStop, tourDemo, tourStops } from "./tour";
export { billFigure, type Why, type WhyKind, type WhyTopic, whyOf } from "./why";
export { type Words, wordsOf } from "./words";
