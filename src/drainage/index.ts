export { downhillArrows } from "./arrows";
export { type Flood, flood } from "./flood";
export { findPonds, leastPondArea, leastPondDepth, type WaterGround } from "./ponds";
export { swaleResult, type Words } from "./swale";
export { type WallNormals, wallNormals, wallWater } from "./walls";
