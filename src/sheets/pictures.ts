/** Pictures under the plan, on paper as on the screen: at their place, size and turn, faded as set, under all else. */
import type { Project } from "../document/schema";
import { visibleProject } from "../document/visible";
import type { Problem } from "../solve/results";
import { isWhole, readHeader } from "../underlay";
import { onPage, type Projection } from "./paint";
import type { Pen } from "./pen";

type Underlay = Project["drawing"]["underlays"][number];

function shown(project: Project): readonly Underlay[] {
  return visibleProject(project).drawing.underlays.filter(({ strength }) => strength > 0);
}

/** Why a PDF can't take a picture, in words; null where it can. */
function hindrance(bytes: Uint8Array): string | null {
  const header = readHeader(bytes);
  if (!header || !isWhole(bytes))
    return "Its bytes are damaged, so it isn't printed. Put the picture in again.";
  if (header.media === "image/webp")
    return "WebP can't go on paper, so it isn't printed. Save it as PNG or JPEG and put it in again.";
  return null;
}

export function paintPictures(pen: Pen, project: Project, projection: Projection): void {
  for (const { data, at, width, height, scale, turn, strength } of shown(project)) {
    const bytes = bytesOf(data);
    if (hindrance(bytes) !== null) continue;
    const mm = scale * projection.mmPerMetre;
    pen.picture(bytes, {
      middle: onPage(projection, at[0], at[1]),
      width: width * mm,
      height: height * mm,
      angle: -(turn + projection.turn),
      strength,
    });
  }
}

/** Pictures that are seen on the plan and that paper can't show. */
export function unprintedPictures(project: Project): Problem[] {
  return shown(project).flatMap(({ id, name, data }): Problem[] => {
    const what = hindrance(bytesOf(data));
    if (what === null) return [];
    const where = `the picture “${name}”`;
    return [{ code: "picture-unprinted", severity: "note", where, what, how: "", ids: [id] }];
  });
}

/** None where the text isn't base64. */
function bytesOf(data: string): Uint8Array {
  try {
    return Uint8Array.from(atob(data), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array();
  }
}
