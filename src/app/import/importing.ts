/** A file that waits for the import dialog: one dropped on the window opens the dialog with it. */
import { createStore } from "zustand/vanilla";
import { openDialog, tell } from "../../store/actions";
import { appStore } from "../../store/store";

export interface ImportSource {
  readonly file: File | null;
}

export const importStore = createStore<ImportSource>(() => ({ file: null }));

/** Files of ground by the ends of their names; a table of any other name is chosen in the dialog. */
const groundName = /\.(csv|tsv|txt|pnt|xyz|dxf|xml|landxml|geojson|asc|tiff?)$/i;

/** What the file picker of the dialog offers first. */
export const groundFiles = ".csv,.tsv,.txt,.pnt,.xyz,.dxf,.xml,.landxml,.geojson,.json,.asc,.tif,.tiff";

export function beginImport(file: File | null = null): void {
  importStore.setState({ file });
  openDialog("import-ground");
}

/** True when the drop was a file of ground and is being dealt with. */
export function takeDroppedGround(event: DragEvent): boolean {
  const file = [...(event.dataTransfer?.files ?? [])].find(({ name }) => groundName.test(name));
  if (!file) return false;
  if (appStore.getState().screen === "plan") beginImport(file);
  else tell({ tone: "caution", text: `Open or begin a plan first; then drop “${file.name}” on it.` });
  return true;
}
