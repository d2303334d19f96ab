export { type BillInput, bill } from "./bill";
