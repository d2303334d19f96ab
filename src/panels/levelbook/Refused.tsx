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

/** Cells that are named one by one. */
const mostNamed = 4;

/** Cells that were not understood, wherever the cursor stands: how many and which, the first with its reason. */
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
        {others.length > 0 ? ` ${alsoWords(others)}` : ""}
      </span>
      <Button className="link" onPress={() => onGo(first.row, first.column)}>
        Mend it
      </Button>
    </p>
  );
}

/** "Nor 5 other cells: shot 3, reading; row 8, place; …" */
function alsoWords(others: readonly { readonly name: string; readonly title: string }[]): string {
  const named = others.slice(0, mostNamed - 1).map(({ name, title }) => `${name}, ${title}`);
  const more = others.length - named.length;
  const count = others.length === 1 ? "one other cell" : `${others.length} other cells`;
  return `Nor was ${count} understood: ${named.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`;
}
