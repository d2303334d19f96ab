import { useMemo } from "react";
import { Button } from "react-aria-components";
import { useStore } from "zustand";
import type { Shot } from "../../document";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { pickOnPlan } from "../survey/pickOnPlan";
import { useResults } from "../useProject";
import type { Column } from "./columns";
import type { Draft } from "./drafts";
import { saidStore } from "./said";
import { typingWords } from "./understood";

interface StatusLineProps {
  readonly shot: Shot | undefined;
  readonly column: Column | undefined;
  readonly typing: string | null;
  readonly draft: Draft | null;
  readonly notation: Notation;
}

/** Below the table: how typing is understood, why a cell wasn't, or what may be typed. */
export function StatusLine({ shot, column, typing, draft, notation }: StatusLineProps) {
  const live = column?.id === "reading" && typing !== null ? typingWords(typing, notation) : null;
  if (live) return <p className={`book-status${live.ok ? " book-status-ok" : ""}`}>{live.words}</p>;
  if (draft)
    return (
      <p className="book-status book-status-bad" role="alert">
        <Icon name="warn" />
        {draft.why}
      </p>
    );
  return (
    <p className="book-status">
      {column?.hint}
      {column?.id === "place" && shot && shot.kind !== "check" ? (
        <Button className="link" onPress={() => pickOnPlan(shot)}>
          {shot.place.kind === "none" ? "Click on the plan" : "Click its place anew"}
        </Button>
      ) : null}
      {column?.id === "aside" || column?.entry === "choice" ? <Said /> : null}
      {shot ? <Height shot={shot.id} name={shot.name} notation={notation} /> : null}
    </p>
  );
}

/** The height of the row's shot in the plan's own datum, and where it comes from. */
function Height({ shot, name, notation }: { shot: string; name: string; notation: Notation }) {
  const points = useResults(({ survey }) => survey.points);
  const height = useMemo(() => points.find((point) => point.shot === shot)?.height ?? null, [points, shot]);
  if (height === null) return null;
  return (
    <span className="book-shot-height">
      {`Height ${notation.length(height)}`}
      <Why kind="shot" id={shot} of={`height of ${name || "this shot"}`} />
    </span>
  );
}

/** What the last act on this column did. */
function Said() {
  const said = useStore(saidStore, (state) => state.said);
  return (
    <b className="book-said" role="status">
      {said}
    </b>
  );
}
