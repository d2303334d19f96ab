/** Edits of what the building stands on. */
import { type Foundation, type FoundationKind, foundationSchema, type Project } from "../schema";
import { command, done, type Edit, patched, refuse } from "./command";
import { withFollowers } from "./follow";

const noBuilding = "There is no building yet. Draw its outline first.";
const hair = 1e-9;

/** Changes dimensions and choices. A crawl space's wall goes on ending under its floor. */
export const changeFoundation = command(
  "building.changeFoundation",
  (project, args: { patch: Partial<Foundation> }): Edit => {
    if (!project.building) return refuse(noBuilding);
    const next = patched<Foundation>(foundationSchema, project.building.foundation, args.patch);
    return next.ok ? done(withFoundation(project, next.value), "change foundation") : refuse(next.why);
  },
);

/** Takes another kind. The wall of a crawl space ends under its floor, walls of the other kinds level with theirs. */
export const chooseFoundation = command(
  "building.chooseFoundation",
  (project, args: { kind: FoundationKind }): Edit => {
    const { building } = project;
    if (!building) return refuse(noBuilding);
    const foundation = { ...building.foundation, kind: args.kind };
    const under = -foundation.crawl.floorThickness;
    const level = Math.abs(building.topOfWallAboveFloor) < hair;
    const wasUnder = Math.abs(building.topOfWallAboveFloor - under) < hair;
    const isCrawl = args.kind === "crawl-space";
    const topOfWallAboveFloor =
      isCrawl && level ? under : !isCrawl && wasUnder ? 0 : building.topOfWallAboveFloor;
    const changed = { ...building, foundation, topOfWallAboveFloor };
    return done(withFollowers(project, { ...project, building: changed }), "choose foundation");
  },
);

function withFoundation(project: Project, foundation: Foundation): Project {
  const { building } = project;
  if (!building) return project;
  const before = building.foundation;
  const follows =
    before.kind === "crawl-space" &&
    Math.abs(building.topOfWallAboveFloor + before.crawl.floorThickness) < hair;
  const changed = {
    ...building,
    foundation,
    ...(follows ? { topOfWallAboveFloor: -foundation.crawl.floorThickness } : {}),
  };
  return withFollowers(project, { ...project, building: changed });
}
