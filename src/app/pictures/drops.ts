/** Pictures and PDFs dropped on the window go under the plan, where they were let go. */
import type { XY } from "../../canvas/view/view";
import { isPictureName, readPicture } from "../../host";
import { tell } from "../../store/actions";
import { appStore } from "../../store/store";
import { placePicture } from "./placePicture";

/** True when the drop was a picture and is being dealt with. */
export function takeDroppedPicture(event: DragEvent): boolean {
  const file = [...(event.dataTransfer?.files ?? [])].find(({ name }) => isPictureName(name));
  if (!file) return false;
  if (appStore.getState().screen !== "plan") {
    tell({ tone: "caution", text: `Open a plan first; then drop “${file.name}” on it.` });
    return true;
  }
  const on = placeOnPlan(event);
  void readPicture(file).then(
    (picked) => placePicture(picked, on),
    () => tell({ tone: "caution", text: `“${file.name}” can't be read. It may have been moved or deleted.` }),
  );
  return true;
}

function placeOnPlan(event: DragEvent): XY | undefined {
  const stage = event.target instanceof Element ? event.target.closest(".plan-stage") : null;
  if (!stage) return undefined;
  const box = stage.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
}
