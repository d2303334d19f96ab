/** Soft ground to dig out and fill again: places typed one by one. */
import { siteEdits, type Undercut } from "../../document";
import { tryRun } from "../../store/actions";
import { SQUARE_FOOT } from "../../units";
import { Action, IconAction } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { useNotation, useProject } from "../useProject";
import "./cost.css";

export function Undercuts() {
  const rows = useProject(({ materials }) => materials.undercuts);
  return (
    <>
      {rows.map((row) => (
        <UndercutRow key={row.id} row={row} />
      ))}
      <Action
        look="quiet"
        icon="plus"
        onPress={() => tryRun(siteEdits.setUndercut, { id: null, patch: { area: 0, depth: 0 } })}
      >
        Soft ground to dig out
      </Action>
    </>
  );
}

function UndercutRow({ row: { id, area, depth } }: { row: Undercut }) {
  const feet = useNotation().display.area === "ft2";
  const size = feet ? SQUARE_FOOT : 1;
  const change = (patch: Partial<Omit<Undercut, "id">>) => tryRun(siteEdits.setUndercut, { id, patch });
  return (
    <div className="undercut">
      <NumberField
        label="Soft ground, area"
        layout="stack"
        unit={feet ? "ft²" : "m²"}
        value={area / size}
        decimals={1}
        least={0}
        onCommit={(typed) => change({ area: typed * size })}
      />
      <LengthField
        label="Deep"
        layout="stack"
        small
        m={depth}
        least={0}
        onCommit={(m) => change({ depth: m })}
      />
      <IconAction
        icon="trash"
        label="Remove this soft ground"
        onPress={() => tryRun(siteEdits.removeUndercut, { id })}
      />
    </div>
  );
}
