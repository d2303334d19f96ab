/** The storm that ditches must carry, as typed from a local table. */
import { type Storm as StormData, siteEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { rainUnit } from "../../units";
import { Choice } from "../fields/Choice";
import { SlopeField } from "../fields/fields";
import { LengthField, refusal } from "../fields/LengthField";
import { Section } from "../parts";
import { useProject } from "../useProject";
import { AreaField } from "./AreaField";
import { Bed } from "./Bed";
import { Covers } from "./Covers";
import { Fold } from "./Fold";
import { RainTable } from "./RainTable";
import { RateField } from "./RateField";

export function Storm() {
  const storm = useProject((project) => project.storm);
  const feet = useProject(({ display }) => display.area === "ft2");
  const change = (patch: Partial<StormData>) => refusal(tryRun(siteEdits.changeStorm, { patch }));
  return (
    <Section title="The storm">
      {storm.table.length > 0 ? null : (
        <RateField
          label="It rains"
          unit={rainUnit(feet)}
          value={storm.intensity}
          help="The intensity of the ten-year storm for the time that water takes to gather, from your rain tables."
          commit={(intensity) => change({ intensity })}
          empty={() => change({ intensity: null })}
        />
      )}
      <RainTable />
      <AreaField
        label="More ground uphill"
        m2={storm.uphill}
        help="What lies beyond the shots and drains here too."
        onCommit={(uphill) => tryRun(siteEdits.changeStorm, { patch: { uphill } })}
      />
      {storm.uphill > 0 ? <Uphill storm={storm} /> : null}
      <Fold
        title="Ground, bed and whole storm"
        aside={`C ${Number(storm.runoff.toFixed(2))}, n ${storm.roughness}`}
        open={false}
      >
        <LengthField
          label="Depth of the whole storm"
          rain
          m={storm.depth}
          help="For the water that a roof sheds in it. Empty: not asked."
          onEmpty={() => tryRun(siteEdits.changeStorm, { patch: { depth: null } })}
          onCommit={(depth) => tryRun(siteEdits.changeStorm, { patch: { depth } })}
        />
        <Covers storm={storm} />
        <Bed storm={storm} />
      </Fold>
    </Section>
  );
}

const largest = "largest";

/** Slope, length and cover of the ground beyond the shots. */
function Uphill({ storm }: { storm: StormData }) {
  const swales = useProject(({ grading }) => grading.swales);
  const change = (patch: Partial<StormData>) => tryRun(siteEdits.changeStorm, { patch });
  return (
    <>
      {swales.length > 1 ? (
        <Choice
          label="It drains to"
          value={storm.uphillTo ?? largest}
          options={[
            { value: largest, words: "the swale with the most ground at the edge" },
            ...swales.map(({ id, name }) => ({ value: id, words: name })),
          ]}
          layout="stack"
          onChoose={(to) => change({ uphillTo: to === largest ? null : to })}
        />
      ) : null}
      <LengthField
        label="Longest way of water up there"
        m={storm.uphillLength}
        least={0}
        onCommit={(uphillLength) => change({ uphillLength })}
      />
      <SlopeField
        label="Its fall"
        ratio={storm.uphillFall}
        help="Length and fall say how long its water takes to come (Kirpich)."
        onCommit={(uphillFall) => change({ uphillFall })}
      />
      <RateField
        label="Part that runs off up there"
        unit={{ words: "", factor: 1 }}
        value={storm.uphillRunoff}
        help="C of its cover. Empty: as here."
        commit={(uphillRunoff) => refusal(change({ uphillRunoff }))}
        empty={() => refusal(change({ uphillRunoff: null }))}
      />
    </>
  );
}
