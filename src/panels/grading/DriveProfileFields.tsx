/** A drive's grade breaks, curves, fall across, shoulders and the vehicle that uses it. */
import { type Drive, gradingEdits, siteEdits } from "../../document";
import { run, tryRun } from "../../store/actions";
import { Choice, IconAction } from "../fields/Choice";
import { NumberField, SlopeField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Section } from "../parts";
import { useProject } from "../useProject";

const acrossOptions = [
  { value: "level", words: "level across" },
  { value: "crown", words: "crown: to both sides" },
  { value: "left", words: "to the left" },
  { value: "right", words: "to the right" },
] as const;

export function DriveProfileFields({ drive }: { drive: Drive }) {
  const { id, across, shoulder, landing } = drive;
  const change = (patch: Partial<Omit<Drive, "id">>, what?: string) =>
    tryRun(siteEdits.changeDrive, { id, patch, ...(what === undefined ? {} : { what }) });
  return (
    <>
      <Choice
        label="Falls across"
        value={across.kind}
        options={acrossOptions}
        onChoose={(kind) => change({ across: { ...across, kind } }, "change the fall across")}
      />
      {across.kind === "level" ? null : (
        <SlopeField
          label="Fall across"
          ratio={across.fall}
          onCommit={(fall) => change({ across: { ...across, fall } })}
        />
      )}
      <LengthField
        label="Shoulders"
        m={shoulder.width}
        least={0}
        onCommit={(width) => change({ shoulder: { ...shoulder, width } })}
      />
      <NumberField
        label="Slopes in cut"
        unit=": 1"
        value={drive.cutSlope ?? drive.sideSlope}
        onCommit={(cutSlope) => change({ cutSlope })}
      />
      <LengthField
        label="Curve at the landing"
        m={landing.curve}
        least={0}
        help="Length of the vertical curve that rounds the change of grade; 0 for none."
        onCommit={(curve) => change({ landing: { ...landing, curve } })}
      />
      {drive.breaks.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a break is known by its place in the list
        <OneBreak key={index} drive={drive} index={index} />
      ))}
    </>
  );
}

function OneBreak({ drive, index }: { drive: Drive; index: number }) {
  const one = drive.breaks[index];
  if (!one) return null;
  const change = (patch: Partial<typeof one>) =>
    tryRun(gradingEdits.changeGradeBreak, { id: drive.id, index, patch });
  const name = `Break ${index + 1}`;
  return (
    <fieldset className="part-group" aria-label={`Grade break ${index + 1}`}>
      <LengthField label={`${name} from the road`} m={one.at} least={0} onCommit={(at) => change({ at })} />
      <LengthField
        label={`${name} height`}
        m={one.height}
        placeholder="as the ground"
        onEmpty={() => change({ height: null })}
        onCommit={(height) => change({ height })}
      />
      <LengthField label={`${name} curve`} m={one.curve} least={0} onCommit={(curve) => change({ curve })} />
      <IconAction
        icon="trash"
        label={`Remove grade break ${index + 1}`}
        onPress={() => run(gradingEdits.removeGradeBreak, { id: drive.id, index })}
      />
    </fieldset>
  );
}

/** What its underside clears. */
export function VehicleFields() {
  const vehicle = useProject(({ grading }) => grading.vehicle);
  const change = (patch: Partial<typeof vehicle>) => tryRun(gradingEdits.changeVehicle, { patch });
  return (
    <Section title="Vehicle">
      <LengthField label="Wheelbase" m={vehicle.wheelbase} onCommit={(wheelbase) => change({ wheelbase })} />
      <LengthField
        label="Clearance under it"
        small
        m={vehicle.clearance}
        onCommit={(clearance) => change({ clearance })}
      />
      <LengthField
        label="Front overhang"
        m={vehicle.frontOverhang}
        least={0}
        onCommit={(frontOverhang) => change({ frontOverhang })}
      />
      <LengthField
        label="Rear overhang"
        m={vehicle.rearOverhang}
        least={0}
        onCommit={(rearOverhang) => change({ rearOverhang })}
      />
      <LengthField
        label="Clearance at its ends"
        small
        m={vehicle.endClearance}
        onCommit={(endClearance) => change({ endClearance })}
      />
    </Section>
  );
}
