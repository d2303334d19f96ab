/** What would mend a wall that water reaches: looked for when it is asked, each tried in full, a click away. */
import { useEffect, useState } from "react";
import type { Project } from "../../document";
import type { WallMend } from "../../solve/wall-mends";
import { runTogether } from "../../store/actions";
import { lookFor } from "../../store/solving";
import "../band/band.css";
import { Action } from "../fields/Choice";
import { useProject } from "../useProject";
import "./water.css";

interface Found {
  readonly of: Project;
  readonly mends: readonly WallMend[];
  readonly isLooking: boolean;
}

export function WallMends({ wall, name }: { wall: number; name: string }) {
  const project = useProject((present) => present);
  const [asked, setAsked] = useState<Found | null>(null);
  const found = asked?.of === project ? asked : null;
  const isLooking = found?.isLooking ?? false;
  useEffect(() => {
    if (!isLooking) return;
    let mends: readonly WallMend[] = [];
    const show = (isLooking: boolean) => setAsked({ of: project, mends, isLooking });
    return lookFor({ kind: "wall-mends", wall }, project, {
      found: (mend) => {
        mends = [...mends, mend as WallMend];
        show(true);
      },
      end: () => show(false),
    });
  }, [isLooking, project, wall]);
  if (!found)
    return (
      <Action look="quiet" onPress={() => setAsked({ of: project, mends: [], isLooking: true })}>
        Look for a mend
      </Action>
    );
  return (
    <>
      <p role="status" className="soft small">
        {wordsOf(found)}
      </p>
      <ul className="ways" aria-label={`Mends of wall ${name}`}>
        {found.mends.map(({ id, what, project: mended }) => (
          <li key={id}>
            <span>{what}</span>
            <Action
              look="quiet"
              onPress={() => runTogether(what, [() => ({ ok: true, project: mended, label: what })])}
            >
              Try it
            </Action>
          </li>
        ))}
      </ul>
    </>
  );
}

function wordsOf({ mends, isLooking }: Found): string {
  if (isLooking) return "Looking: each change is worked out in full…";
  if (mends.length > 0) return "With each of these the wall passes:";
  return "Neither a swale out of the hollow, nor more fall from the wall, nor a floor up to 4 ft (1.2 m) higher is enough by itself.";
}
