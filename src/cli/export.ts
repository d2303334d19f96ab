import { dxfFile, geoJsonFile, landXmlFile, type Outgoing, outgoing, pointsCsv } from "../files/outgoing";
import { createSolver } from "../solve/pipeline";
import { readArgs } from "./args";
import { type Command, InputError } from "./command";
import { counted } from "./count";
import { openFile } from "./project";

const writers: Readonly<Record<string, (out: Outgoing, now: string) => string>> = {
  csv: pointsCsv,
  dxf: dxfFile,
  geojson: (out) => geoJsonFile(out),
  xml: (out, now) => landXmlFile(out, now.slice(0, 10), now.slice(11, 19)),
};

export const exportCommand: Command = {
  name: "export",
  usage: "export PROJECT --to OUT.dxf|.xml|.geojson|.csv",
  about: [
    "Writes the ground of a project for other programs: points, breaklines, contours and triangles, in metres.",
    "",
    "  .csv       points alone, columns name, x (m), y (m), z (m), kind (ground or mark)",
    "  .dxf       release 2007: a layer each for points, marks, breaklines, contours and triangles",
    "  .xml       LandXML 1.2",
    "  .geojson   on the plan's own metres, said by its member `plane`",
    "",
    "Ground that is a guess is left out. Marks that lie on no ground say so: no program has to take them for a spot of it.",
  ].join("\n"),
  async run(args, io) {
    const given = readArgs(args, { files: ["PROJECT"], values: { to: "a file to write" } });
    const to = given.value("to");
    if (to === undefined) throw new InputError("Expected --to and a file to write, such as --to ground.dxf.");
    const ending = /\.([a-z]+)$/i.exec(to)?.[1]?.toLowerCase() ?? "";
    const write = writers[ending];
    if (!write)
      throw new InputError(`--to ${to}: expected a name that ends in .csv, .dxf, .geojson or .xml.`);
    const { project } = openFile(given.files[0] ?? "", io);
    const out = outgoing(project, createSolver().solve(project));
    if (out.points.length + out.lines.length === 0)
      throw new InputError(`${given.files[0]} has no placed points and no breaklines to write.`);
    if (!out.surface && ending !== "csv")
      io.say("There is no surface yet: fewer than three points have a place and a height.");
    io.writeBytes(to, new TextEncoder().encode(write(out, new Date().toISOString())));
    io.out(`${to}: ${contents(out, ending === "csv")}, in metres.`);
    return 0;
  },
};

function contents({ points, marks, lines, contours, surface }: Outgoing, pointsAlone: boolean): string {
  const all = [counted(points.length, "point")];
  if (marks.length > 0) all.push(counted(marks.length, "mark"));
  if (!pointsAlone)
    all.push(
      counted(lines.length, "breakline"),
      `contours at ${counted(contours.length, "height")}`,
      counted((surface?.triangles.length ?? 0) / 3, "triangle"),
    );
  return all.join(", ");
}
