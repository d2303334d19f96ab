/** Another set-up of the laser: typing goes on in its first row, the reading that ties it. */
import { present, surveyEdits } from "../../document";
import { run } from "../../store/actions";
import { appStore } from "../../store/store";
import { askBook } from "./bookRequest";

export function beginSetup(): void {
  if (!run(surveyEdits.beginSetup, {}).ok) return;
  const { setups, shots } = present(appStore.getState().history).survey;
  askBook(shots.find(({ setup }) => setup === setups.at(-1)?.id)?.id ?? null);
}
