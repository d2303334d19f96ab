export { type BillInput, bill, billCost, isBought } from "./bill";
export { costGroups, groupOf } from "./groups";
