/** Options are solved one after the other while their window is open, so that it opens at once and stays awake. */
import { useEffect, useMemo, useRef, useState } from "react";
import type { Option, Project } from "../../document";
import { createSolver } from "../../solve";
import { type SolvedOption, solvedOption, withOption } from "../../solve/compare";
import { solveAside } from "../../store/solving";
import { useProject } from "../useProject";

type Known = ReadonlyMap<Option, SolvedOption>;

/** What is known of each option so far. All is forgotten with the window. */
export function useSolvedOptions(): Known {
  const options = useProject((project) => project.options);
  const shared = useShared();
  const solver = useMemo(createSolver, []);
  const [known, setKnown] = useState<{ readonly of: Project; readonly map: Known }>({
    of: shared,
    map: new Map(),
  });
  const map = known.of === shared ? known.map : none;
  useEffect(() => {
    const next = options.find((option) => !map.has(option));
    if (!next) return;
    let wanted = true;
    const soon = setTimeout(async () => {
      const as = withOption(shared, next);
      const results = await solveAside(solver, as);
      if (!wanted || !results) return;
      setKnown({ of: shared, map: new Map([...map, [next, solvedOption(next, as, results)]]) });
    });
    return () => {
      wanted = false;
      clearTimeout(soon);
    };
  }, [options, map, shared, solver]);
  return map;
}

const none: Known = new Map();

/** The project as far as every option shares it: the same object until one of those parts changes. */
function useShared(): Project {
  const project = useProject((present) => present);
  const last = useRef(project);
  if (!sharesAll(last.current, project)) last.current = project;
  return last.current;
}

const ownParts: ReadonlySet<string> = new Set(["building", "grading", "options", "name", "about", "drawing"]);

function sharesAll(one: Project, other: Project): boolean {
  return (Object.keys(other) as (keyof Project)[]).every(
    (part) => ownParts.has(part) || one[part] === other[part],
  );
}
