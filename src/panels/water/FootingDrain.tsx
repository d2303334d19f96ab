/** The drain round the footing: whether it can come out, where and how far away. */
import { type Drainage, siteEdits } from "../../document";
import type { DrainInWater } from "../../solve/results";
import { goTo, run, tryRun } from "../../store/actions";
import { IconAction, Toggle } from "../fields/Choice";
import { SlopeField } from "../fields/fields";
import { Icon } from "../icons";
import { Facts } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { Fold } from "./Fold";

export function FootingDrain() {
  const { on, fall } = useProject(({ drainage }) => drainage.footingDrain);
  const any = useProject(({ building }) => building !== null);
  const found = useResults(({ water }) => water.footingDrain);
  const notation = useNotation();
  if (!any) return null;
  const change = (patch: Partial<Drainage["footingDrain"]>) =>
    tryRun(siteEdits.changeDrainage, { part: "footingDrain", patch });
  return (
    <Fold title="Drain round the footing" aside={on ? "asked for" : "not asked for"} open={on}>
      <Toggle
        label="Ask where it can come out"
        on={on}
        onToggle={(next) => run(siteEdits.changeDrainage, { part: "footingDrain", patch: { on: next } })}
      />
      {on ? (
        <SlopeField
          label="It falls"
          ratio={fall}
          help={`${notation.rule("⅛ in a foot", "1 %")} is common practice.`}
          onCommit={(next) => change({ fall: next })}
        />
      ) : null}
      {on && !found ? <p className="soft small">Posts have no footing to drain round.</p> : null}
      {found ? (
        <>
          <p className={`check check-${found.outlet ? "ok" : "bad"}`}>
            <Icon name={found.outlet ? "check" : "warn"} />
            <span>
              {found.outlet
                ? `It comes out ${notation.length(found.outlet.distance)} from corner ${found.lowCorner}, at ${notation.length(found.outlet.invert)}.`
                : `It can't come out by itself within ${notation.length(found.looked)}: it needs a pump, a drywell the soil bears, or a higher footing.`}
            </span>
          </p>
          <Facts
            facts={[
              { name: "Round the footing", figure: notation.length(found.length) },
              { name: `Highest invert, at corner ${found.highCorner}`, figure: notation.length(found.high) },
              {
                name: `Lowest invert, at corner ${found.lowCorner}`,
                figure: notation.length(found.low),
                why: { kind: "footing drain", of: "lowest invert of the drain" },
                note: "at the bottom of the footing, never under it",
              },
            ]}
          />
          {found.overFooting > 0 ? (
            <p className="small">
              {`At corner ${found.highCorner} it lies ${notation.length(found.overFooting)} over the top of the footing: water there stands against the wall before the drain takes it. Let it fall less, or drain both ways.`}
            </p>
          ) : null}
          <PitWater pits={found.pits} />
          {found.outlet ? (
            <IconAction
              icon="place"
              label="Show where it comes out"
              onPress={() => goTo(found.outlet?.at ?? [0, 0])}
            />
          ) : null}
        </>
      ) : null}
    </Fold>
  );
}

/** What the water in the test pits means for it. */
function PitWater({ pits }: { pits: DrainInWater | null }) {
  const notation = useNotation();
  if (pits === null) return null;
  const { above, corner, aboveOutlet } = pits;
  const bad = above > 0 || (aboveOutlet !== null && aboveOutlet > 0);
  const outlet =
    aboveOutlet !== null && aboveOutlet > 0
      ? ` It stands ${notation.length(aboveOutlet)} above the outlet: the drain doesn't empty there.`
      : "";
  return (
    <p className={`check check-${bad ? "bad" : "ok"}`}>
      <Icon name={bad ? "warn" : "check"} />
      <span>
        {`Water in the test pits stands ${notation.length(Math.abs(above))} ${above > 0 ? "above" : "below"} it at corner ${corner}, where it is ${above > 0 ? "highest against it: the drain runs for long, so its outlet must stay open and free of frost" : "nearest"}.${outlet}`}
      </span>
    </p>
  );
}
