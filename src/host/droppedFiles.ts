import type { OpenedFile } from "./host";

/** Calls back with a project file (its name ends in .json) dropped on the page. Other files are left to the page's own parts. */
export function listenToDrops(opened: (file: OpenedFile) => void): () => void {
  const allow = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  };
  const take = async (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
    const file = [...(event.dataTransfer?.files ?? [])].find(({ name }) => name.endsWith(".json"));
    if (file) opened({ name: file.name, text: await file.text(), token: null });
  };
  window.addEventListener("dragover", allow);
  window.addEventListener("drop", take);
  return () => {
    window.removeEventListener("dragover", allow);
    window.removeEventListener("drop", take);
  };
}
