export { type SetoutHeight, type SetoutReference, setout } from "./rows";
