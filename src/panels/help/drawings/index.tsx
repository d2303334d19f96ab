/** A drawing to each guide. */
import type { ComponentType } from "react";
import type { GuideStep } from "../../../help";
import { DriveDrawing, FloorDrawing, WaterDrawing } from "./earth";
import type { DrawingProps } from "./parts";
import { BuildingDrawing, LotDrawing, ShotsDrawing } from "./site";
import { FoundationDrawing, QuantitiesDrawing, SetoutDrawing, SheetsDrawing } from "./work";

export const drawings: Readonly<Record<GuideStep, ComponentType<DrawingProps>>> = {
  lot: LotDrawing,
  shots: ShotsDrawing,
  building: BuildingDrawing,
  drive: DriveDrawing,
  water: WaterDrawing,
  floor: FloorDrawing,
  foundation: FoundationDrawing,
  quantities: QuantitiesDrawing,
  setout: SetoutDrawing,
  sheets: SheetsDrawing,
};
