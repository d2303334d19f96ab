export { type BillInput, bill, billCost, isBought } from "./bill";
