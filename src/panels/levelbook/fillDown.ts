/** One cell of the level book written into those below it. Pure. */
import { type Edit, type Project, type Shot, surveyEdits } from "../../document";
import { type ColumnId, choiceOf, columns } from "./columns";
import { chooseCell, editCell } from "./typing";

/** The cell of `from` into the same column of the others; refused as a whole where one can't take it. */
export function fillDown(project: Project, from: Shot, into: readonly string[], column: ColumnId): Edit {
  let next = project;
  for (const id of into) {
    const shot = next.survey.shots.find((each) => each.id === id);
    if (!shot) continue;
    const edit = fillCell(next, from, shot, column);
    if (!edit.ok) return { ok: false, why: `${shot.name || "A row"}: ${edit.why}` };
    next = edit.project;
  }
  const title = columns.find(({ id }) => id === column)?.title ?? column;
  return { ok: true, project: next, label: `fill ${title} down` };
}

function fillCell(project: Project, from: Shot, into: Shot, column: ColumnId): Edit {
  switch (column) {
    case "setup":
    case "kind":
    case "of":
      return chooseCell(project, into, column, choiceOf(column, from));
    case "place":
      return surveyEdits.placeShot.run(project, { id: into.id, place: from.place });
    case "aside":
      return surveyEdits.setAside.run(project, { id: into.id, aside: from.aside });
    case "reading":
      return editCell(project, into, column, from.reading?.text ?? "");
    case "name":
    case "note":
      return editCell(project, into, column, from[column]);
    case "height":
      return { ok: false, why: "Heights are computed from the readings." };
  }
}
