/** The map in colour that the plan shows, with its classes: the painter and the legend read the same one. */
import type { Display } from "../../document";
import { heightClasses, type MapClasses, slopeClasses } from "../../drawing/map-classes";
import { palettes, type Theme } from "../../look/tokens";
import type { Results } from "../../solve/results";
import { type MapGround, type MapLayer, mapLayers, type PlanLayer } from "../../store/layers";
import type { AppState } from "../../store/state";
import { shownProject } from "../../store/store";
import { classColours, depthOpacity, packed } from "../paint/depthPicture";
import type { ClassColours, ValueGrid } from "../paint/depthRaster";
import { heightMap, slopeMap } from "../paint/groundMaps";

export interface ShownMap {
  readonly layer: MapLayer;
  readonly values: ValueGrid;
  readonly table: ClassColours;
  /** Of heights and steepness; cut and fill have a list of their own. */
  readonly classes: MapClasses | null;
  readonly ground: MapGround;
  /** Heights are told from the mark. */
  readonly fromMark: boolean;
}

type Key = readonly [MapLayer, Results, Display, Theme, MapGround];
let last: { readonly key: Key; readonly map: ShownMap | null } | null = null;

/** The map that is switched on; null where none is, or where there is no ground for it yet. */
export function shownMap(state: AppState, theme: Theme): ShownMap | null {
  const layer = mapLayers.find((one: PlanLayer) => !state.hidden.has(one));
  if (!layer) return null;
  const { results, mapGround } = state;
  const key: Key = [layer, results, shownProject(state).display, theme, mapGround];
  if (last && key.every((part, i) => part === last?.key[i])) return last.map;
  last = { key, map: made(...key) };
  return last.map;
}

function made(...[layer, results, display, theme, wanted]: Key): ShownMap | null {
  const mark = results.survey.mark?.height ?? null;
  const fromMark = mark !== null;
  if (layer === "depth") {
    if (!results.surface) return null;
    return {
      layer,
      values: results.surface,
      table: depthTable(display, theme),
      classes: null,
      ground: "finished",
      fromMark,
    };
  }
  const ground = wanted === "finished" && results.surface ? "finished" : "existing";
  const values = layer === "heights" ? heightMap(results, ground) : slopeMap(results, ground);
  if (!values) return null;
  const classes =
    layer === "heights"
      ? heightClasses(values.low, values.high, display, mark)
      : slopeClasses(display, theme);
  const colours = Uint32Array.from(classes.colours, (colour) => packed(colour, depthOpacity));
  return { layer, values, table: { edges: classes.edges, colours }, classes, ground, fromMark };
}

let table: { readonly display: Display; readonly theme: Theme; readonly table: ClassColours } | null = null;

function depthTable(display: Display, theme: Theme): ClassColours {
  if (table?.display !== display || table.theme !== theme)
    table = { display, theme, table: classColours(display, palettes[theme]) };
  return table.table;
}
