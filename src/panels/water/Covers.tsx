/** What the rain falls on: covers of the ground and their parts of it, from published figures. */
import { type GroundCoverKind, groundCoverKinds, groundCovers, type Storm, siteEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { Action, Choice, IconAction } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { refusal } from "../fields/LengthField";
import { RateField } from "./RateField";

const options = groundCoverKinds.map((value) => ({
  value,
  words: `${groundCovers[value].words}: ${groundCovers[value].c}`,
}));

export function Covers({ storm }: { storm: Storm }) {
  const { covers, runoff } = storm;
  const set = (rows: Storm["covers"]) => tryRun(siteEdits.changeStorm, { patch: { covers: rows } });
  const change = (index: number, patch: Partial<Storm["covers"][number]>) =>
    set(covers.map((row, i) => (i === index ? { ...row, ...patch } : row)));
  const left = 1 - covers.reduce((sum, { part }) => sum + part, 0);
  const add = () => set([...covers, { cover: nextCover(covers), part: left > 0.005 ? left : 0.1 }]);
  return (
    <>
      {covers.map(({ cover, part }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place in the list
        <fieldset className="part-group" key={index} aria-label={`Cover ${index + 1}`}>
          <Choice<GroundCoverKind>
            label={`Cover ${index + 1}`}
            layout="stack"
            value={cover}
            options={options}
            onChoose={(chosen) => change(index, { cover: chosen })}
          />
          <NumberField
            label={`Part under cover ${index + 1}`}
            unit="%"
            value={100 * part}
            onCommit={(percent) => change(index, { part: percent / 100 })}
          />
          <IconAction
            icon="trash"
            label={`Remove cover ${index + 1}`}
            onPress={() => set(covers.filter((_, i) => i !== index))}
          />
        </fieldset>
      ))}
      {covers.length > 0 && Math.abs(left) > 0.005 ? (
        <p className="small">{`The parts come to ${Math.round(100 * (1 - left))} %; C is weighted by them all the same.`}</p>
      ) : null}
      <Action icon="plus" look="quiet" onPress={add}>
        {covers.length === 0 ? "Take it from what covers the ground" : "Another cover"}
      </Action>
      <RateField
        label="Part that runs off"
        unit={{ words: "", factor: 1 }}
        value={runoff}
        help="C of the rational formula. From covers it is the upper end of their published ranges, weighted (ASCE; Schwab et al.); type over it what your county uses."
        commit={(typed) => refusal(tryRun(siteEdits.changeStorm, { patch: { runoff: typed ?? 0 } }))}
      />
    </>
  );
}

/** One that isn't taken yet. */
function nextCover(covers: Storm["covers"]): GroundCoverKind {
  const taken = new Set(covers.map(({ cover }) => cover));
  return ["lawn-heavy", "woods-rolling", "pasture-rolling", ...groundCoverKinds].find(
    (kind): kind is GroundCoverKind => !taken.has(kind as GroundCoverKind),
  ) as GroundCoverKind;
}
