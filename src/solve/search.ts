/** What may be looked for, each as a search in turns. */
import type { Project } from "../document/schema";
import { createSolver } from "./pipeline";
import type { Solver } from "./solver";
import type { Finding, Search } from "./thread-messages";
import { wallMendsInTurn } from "./wall-mends";
import { waysOutInTurn } from "./ways-out";

/** One found, or null: nothing yet, but a good moment to let others work. */
export function searchInTurns(
  search: Search,
  project: Project,
  solver: Solver = createSolver(),
): Generator<Finding | null, void> {
  return search.kind === "ways-out"
    ? waysOutInTurn(project, solver)
    : wallMendsInTurn(project, search.wall, solver);
}
