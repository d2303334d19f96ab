export { type BillInput, bill, billCost, isBought, type StoneBed } from "./bill";
export { costGroups, groupOf } from "./groups";
export { type Soil, type SoilKind, soils } from "./soils";
