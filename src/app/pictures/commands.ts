/** Laying the picture by hand, for the menu and the finder: the selected one, else the one placed last. */
import { thingKey, type Underlay } from "../../document";
import type { AppCommand } from "../../panels/command";
import { select } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import type { AppState, pictureTools } from "../../store/state";
import { appStore, shownProject } from "../../store/store";

export const pictureCommands: readonly AppCommand[] = [
  {
    id: "draw.picturePoints",
    name: "Lay the picture by two known points",
    place: "Draw",
    also: "underlay plat scan georeference place rotate",
    whyNot: withLoosePicture,
    run: () => begin("picture-points"),
  },
  {
    id: "draw.pictureDistance",
    name: "Scale the picture by a known distance",
    place: "Draw",
    also: "underlay plat scan calibrate size",
    whyNot: withLoosePicture,
    run: () => begin("picture-distance"),
  },
];

function picture(state: AppState): Underlay | undefined {
  const { underlays } = shownProject(state).drawing;
  const chosen = state.selection.find(({ kind }) => kind === "underlay");
  return underlays.find(({ id }) => chosen && "id" in chosen && id === chosen.id) ?? underlays.at(-1);
}

function withLoosePicture(state: AppState): string | null {
  if (state.screen !== "plan") return "Open or begin a plan first.";
  const found = picture(state);
  if (!found) return "Place a picture first.";
  const locked = shownProject(state).drawing.locked.includes(thingKey({ kind: "underlay", id: found.id }));
  return locked ? "The picture is locked. Unlock it in the lot step first." : null;
}

/** Picking a tool lets go of the selection, so the picture is selected after it. */
function begin(tool: (typeof pictureTools)[number]): void {
  const found = picture(appStore.getState());
  if (pickTool(tool) && found) select([{ kind: "underlay", id: found.id }]);
}
