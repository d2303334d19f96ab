import { memo } from "react";
import type { SetupResult } from "../../solve/results";
import { Icon } from "../icons";
import type { Notation } from "../notation";
import { columns } from "./columns";

interface SetupLineProps {
  readonly name: string;
  readonly result: SetupResult | undefined;
  readonly notation: Notation;
}

/** Where another set-up begins: its name and how its beam got its height. */
export const SetupLine = memo(function SetupLine({ name, result, notation }: SetupLineProps) {
  return (
    <tr className="book-setup">
      <td colSpan={columns.length + 1}>
        <b>{name}</b>
        {result?.tied && result.beam !== null ? (
          <span className="soft">{`${result.reads === "up" ? "reads zero" : "beam"} at ${notation.length(result.beam)}, ${result.tie}`}</span>
        ) : (
          <span className="book-untied">
            <Icon name="warn" />
            no height yet: read the mark, or points that another set-up read too (kind “turning”, “on” that
            shot), or assume a beam height
          </span>
        )}
      </td>
    </tr>
  );
});
