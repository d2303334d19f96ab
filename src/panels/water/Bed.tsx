/** What ditches' beds are: how rough, and which speed they bear, from published figures or typed. */
import {
  bedRoughness,
  type DitchLiningKind,
  ditchLiningKinds,
  ditchLinings,
  type Storm,
  siteEdits,
} from "../../document";
import { tryRun } from "../../store/actions";
import { formatRate, speedUnit } from "../../units";
import { Choice } from "../fields/Choice";
import { LengthField, refusal } from "../fields/LengthField";
import { useProject } from "../useProject";
import { RateField } from "./RateField";

const typed = { value: "typed", words: "as typed below" } as const;

export function Bed({ storm }: { storm: Storm }) {
  const feet = useProject(({ display }) => display.area === "ft2");
  const change = (patch: Partial<Storm>) => tryRun(siteEdits.changeStorm, { patch });
  const unit = speedUnit(feet);
  const rough = bedRoughness.find(({ n }) => Math.abs(n - storm.roughness) < 1e-9);
  const linings = ditchLiningKinds.map((value) => ({
    value,
    words: `${ditchLinings[value].words}: ${formatRate(ditchLinings[value].bears[0]?.speed ?? 0, unit)}`,
  }));
  return (
    <>
      <Choice
        label="Bed of the ditches"
        layout="stack"
        value={rough?.words ?? typed.value}
        options={[typed, ...bedRoughness.map(({ words, n }) => ({ value: words, words: `${words}: ${n}` }))]}
        onChoose={(chosen) => {
          const bed = bedRoughness.find(({ words }) => words === chosen);
          if (bed) change({ roughness: bed.n });
        }}
      />
      <RateField
        label="Roughness n of the bed"
        unit={{ words: "", factor: 1 }}
        value={storm.roughness}
        help="Manning's n; the list is FHWA's. Thin flow in mown grass is rougher: 0.045 to 0.07."
        commit={(roughness) => refusal(change({ roughness: roughness ?? 0 }))}
      />
      <Choice<DitchLiningKind | "typed">
        label="Lined with"
        layout="stack"
        value={storm.lining ?? typed.value}
        options={[typed, ...linings]}
        onChoose={(chosen) => change({ lining: chosen === "typed" ? null : chosen })}
        help="Speed it bears to 5 % of fall; grass less on steeper beds (SCS TP-61), bare beds by Chow."
      />
      <LengthField
        label="Room over the water"
        small
        m={storm.freeboard}
        least={0}
        help="Freeboard: 0.3 ft (9 cm) for a diversion (Natural Resources Conservation Service 362); half a foot is common practice."
        onCommit={(freeboard) => tryRun(siteEdits.changeStorm, { patch: { freeboard } })}
      />
      {storm.lining === null ? (
        <RateField
          label="Speed it bears"
          unit={unit}
          value={storm.mostSpeed}
          commit={(mostSpeed) => refusal(change({ mostSpeed: mostSpeed ?? 0 }))}
        />
      ) : null}
    </>
  );
}
