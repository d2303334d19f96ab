import { Button } from "react-aria-components";
import type { Shot } from "../../document";
import { Icon } from "../icons";
import { columns } from "./columns";
import { type Draft, draftKey } from "./drafts";

interface RefusedProps {
  readonly shots: readonly Shot[];
  readonly drafts: ReadonlyMap<string, Draft>;
  /** The cell of the cursor, whose reason is told already. */
  readonly but: string;
  readonly onGo: (row: number, column: number) => void;
}

/** Cells that were not understood, wherever the cursor stands: the first with its reason, and how many more. */
export function Refused({ shots, drafts, but, onGo }: RefusedProps) {
  if (drafts.size === 0) return null;
  const cells = shots.flatMap((shot, row) =>
    columns.flatMap(({ id, title }, column) => {
      const key = draftKey(shot.id, id);
      const draft = drafts.get(key);
      return draft && key !== but ? [{ row, column, title, draft, name: shot.name || `row ${row + 1}` }] : [];
    }),
  );
  const [first, ...others] = cells;
  if (!first) return null;
  return (
    <p className="book-status book-status-bad book-refused" role="status">
      <Icon name="warn" />
      <span className="book-refused-words">
        <b>{`${first.name}, ${first.title}: `}</b>
        {first.draft.why}
        {others.length > 0 ? ` And ${others.length} more.` : ""}
      </span>
      <Button className="link" onPress={() => onGo(first.row, first.column)}>
        Mend it
      </Button>
    </p>
  );
}
