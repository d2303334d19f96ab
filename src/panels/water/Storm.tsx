/** The storm that ditches must carry, as typed from a local table. */
import { type Storm as StormData, siteEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { type RateUnit, rainUnit, speedUnit } from "../../units";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Section } from "../parts";
import { useProject } from "../useProject";
import { AreaField } from "./AreaField";

export function Storm() {
  const storm = useProject((project) => project.storm);
  const feet = useProject(({ display }) => display.area === "ft2");
  const change = (patch: Partial<StormData>) => refusal(tryRun(siteEdits.changeStorm, { patch }));
  return (
    <Section title="The storm that swales must carry">
      <RateField
        label="It rains"
        unit={rainUnit(feet)}
        value={storm.intensity}
        help="The intensity of the ten-year storm for the time that water takes to gather, from your rain tables."
        commit={(intensity) => change({ intensity })}
        empty={() => change({ intensity: null })}
      />
      <RateField
        label="Part that runs off"
        unit={{ words: "", factor: 1 }}
        value={storm.runoff}
        help="C of the rational formula: lawn on heavy soil 0.13 to 0.35 by its slope, pasture 0.1 to 0.6, woods 0.1 to 0.6, roofs and paving 0.7 to 0.95 (ASCE and Schwab et al.)."
        commit={(runoff) => change({ runoff: runoff ?? 0 })}
      />
      <RateField
        label="Roughness n of the bed"
        unit={{ words: "", factor: 1 }}
        value={storm.roughness}
        help="Manning's n: mown grass 0.045 to 0.07, earth 0.025 to 0.03, broken stone 0.035 (FHWA)."
        commit={(roughness) => change({ roughness: roughness ?? 0 })}
      />
      <RateField
        label="Speed it bears"
        unit={speedUnit(feet)}
        value={storm.mostSpeed}
        help="A grass mixture to 5 % of fall: 5 ft/s (1.5 m/s) on firm soil, 4 (1.2) on soil that washes easily; bare fine sand or silt 1.5 (0.45) (SCS TP-61; Chow)."
        commit={(mostSpeed) => change({ mostSpeed: mostSpeed ?? 0 })}
      />
      <AreaField
        label="More ground uphill"
        m2={storm.uphill}
        help="What lies beyond the shots and drains here too."
        onCommit={(uphill) => tryRun(siteEdits.changeStorm, { patch: { uphill } })}
      />
    </Section>
  );
}

interface RateFieldProps {
  readonly label: string;
  readonly unit: RateUnit;
  readonly value: number | null;
  readonly help: string;
  readonly commit: (value: number | null) => string | null;
  /** What an emptied field does, where it may be empty. */
  readonly empty?: () => string | null;
}

function RateField({ label, unit, value, help, commit, empty }: RateFieldProps) {
  const read = (text: string): string | null => {
    const typed = text.trim().replace(",", ".");
    if (typed === "" && empty) return empty();
    const number = Number(typed);
    if (typed === "" || !Number.isFinite(number))
      return `Can't read “${text.trim()}” as a number. Write one like 3.5.`;
    return number < 0 ? "This can't be less than nothing." : commit(number * unit.factor);
  };
  const shown = value === null ? "" : String(Number((value / unit.factor).toPrecision(4)));
  return (
    <TypedField
      label={label}
      {...(unit.words && { unit: unit.words })}
      shown={shown}
      placeholder="not yet known"
      help={help}
      commit={read}
    />
  );
}
