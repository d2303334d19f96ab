export { type BillInput, bill, billCost, isBought, type StoneBed } from "./bill";
export { costGroups, groupOf } from "./groups";
