import { memo } from "react";
import { type Drive, siteEdits } from "../../document";
import type { DriveResult } from "../../solve/results";
import { goTo, run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { Action, Choice, IconAction } from "../fields/Choice";
import { NumberField, SlopeField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { DriveProfileFields, VehicleFields } from "../grading/DriveProfileFields";
import { EarthShapes } from "../grading/EarthShapes";
import { OrderCard } from "../grading/OrderCard";
import { Why } from "../help/Why";
import { Told } from "../inspector/Told";
import { Facts, FigureTable, Guide, Panel, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { guessedNote } from "../words";

export function DrivePanel() {
  const drives = useProject(({ grading }) => grading.drives);
  return (
    <Panel step="drive" purpose="From the road to the door, and how steep that is.">
      {drives.length === 0 ? (
        <Guide title="Draw the drive's centreline">
          <p>
            Click along it from the road's edge to the door. It snaps to a door; the last click there ends it.
          </p>
          <Action icon="draw" look="accent" onPress={() => pickTool("drive")}>
            Draw the drive
          </Action>
        </Guide>
      ) : (
        drives.map((drive) => (
          <Told key={drive.id} thing={{ kind: "drive", id: drive.id }}>
            <OneDrive drive={drive} />
          </Told>
        ))
      )}
      {drives.length > 0 ? (
        <Action icon="draw" look="quiet" onPress={() => pickTool("drive")}>
          Draw another drive
        </Action>
      ) : null}
      <SteepestAllowed />
      {drives.length > 0 ? <VehicleFields /> : null}
      <EarthShapes />
      <OrderCard />
    </Panel>
  );
}

function OneDrive({ drive }: { drive: Drive }) {
  const result = useResults(({ drives }) => drives.find(({ id }) => id === drive.id) ?? null);
  return (
    <Section
      title={drive.name}
      aside={
        <IconAction
          icon="trash"
          label={`Remove ${drive.name}`}
          onPress={() => runEdit(siteEdits.removeDrive, { id: drive.id })}
        />
      }
    >
      {result ? (
        <DriveAnswer result={result} />
      ) : (
        <p className="soft small">Its grade is known once there is ground under it.</p>
      )}
      <DriveFields drive={drive} />
      <DriveProfileFields drive={drive} />
      {result ? <Stations result={result} /> : null}
    </Section>
  );
}

function DriveAnswer({ result }: { result: DriveResult }) {
  const notation = useNotation();
  const allowed = useProject(({ rules }) => rules.steepestDrive);
  const door = useProject(({ grading }) => grading.drives.find(({ id }) => id === result.id)?.door ?? null);
  const towards = door === null ? "its end, which is no door" : "the door";
  const guessed = useResults((results) => results.guessed.drives);
  const over = result.steepest > allowed + 1e-9;
  return (
    <>
      <p className={`answer${over ? " answer-warn" : ""}`}>
        <span className="answer-figure">
          {notation.slope(result.steepest)}
          <Why kind="drive" id={result.id} of={`steepest grade of ${result.name}`} />
        </span>
        <span>
          {`at its steepest, ${result.climbs ? "climbing" : "falling"} to ${towards}`}
          {over ? `: steeper than ${notation.slope(allowed)}` : ""}
        </span>
        <IconAction icon="place" label="Show the steepest piece" onPress={() => goTo(result.steepestAt)} />
      </p>
      <Facts
        facts={[
          {
            name: "Length",
            figure: notation.length(result.length),
            ...guessedNote(guessed.find(({ id }) => id === result.id)?.share),
          },
        ]}
      />
    </>
  );
}

const DriveFields = memo(function DriveFields({ drive }: { drive: Drive }) {
  const { id, landing } = drive;
  const doors = useProject(({ building }) => building?.doors ?? noDoors);
  const change = (patch: Partial<Omit<Drive, "id">>, what?: string) =>
    tryRun(siteEdits.changeDrive, { id, patch, ...(what === undefined ? {} : { what }) });
  const options = [
    { value: "", words: "the ground as it is" },
    ...doors.map((door, index) => ({
      value: door.id,
      words: doors.length > 1 ? `${door.name} ${index + 1}` : door.name,
    })),
  ];
  return (
    <>
      <WordsField label="Name" text={drive.name} onCommit={(name) => change({ name }, "rename drive")} />
      <Choice
        label="It ends at"
        value={drive.door ?? ""}
        options={options}
        onChoose={(door) => change({ door: door || null }, "change the drive's door")}
      />
      <LengthField label="Width" m={drive.width} onCommit={(width) => change({ width })} />
      <LengthField
        label="Landing at the door"
        m={landing.length}
        least={0}
        help="Nearly level ground in front of the door."
        onCommit={(length) => change({ landing: { ...landing, length } })}
      />
      <SlopeField
        label="Landing falls away"
        ratio={landing.fall}
        onCommit={(fall) => change({ landing: { ...landing, fall } })}
      />
      <LengthField
        label="Road edge"
        m={drive.roadHeight}
        placeholder="as the ground"
        help="Its height, if it was read; else the ground there is taken."
        onEmpty={() => change({ roadHeight: null })}
        onCommit={(roadHeight) => change({ roadHeight })}
      />
      <NumberField
        label="Road's own grade"
        unit="%"
        value={drive.roadGrade * 100}
        decimals={1}
        help="At its edge, towards the building; with a minus it falls. What a vehicle's underside clears depends on it."
        onCommit={(percent) => change({ roadGrade: percent / 100 })}
      />
      <NumberField
        label="Side slopes"
        unit=": 1"
        value={drive.sideSlope}
        onCommit={(sideSlope) => change({ sideSlope })}
      />
      <LengthField label="Stone" small m={drive.gravel} least={0} onCommit={(gravel) => change({ gravel })} />
      <LengthField
        label="of it finer, on top"
        small
        m={drive.topLayer}
        least={0}
        onCommit={(topLayer) => change({ topLayer })}
      />
    </>
  );
});

const noDoors: readonly { id: string; name: string }[] = [];
const mostRows = 24;

/** Stations thinned so that the table stays readable; where its grade changes is always among them. */
function Stations({ result }: { result: DriveResult }) {
  const notation = useNotation();
  const every = Math.max(1, Math.ceil(result.stations.length / mostRows));
  const last = result.stations.length - 1;
  const bends = (distance: number) => result.nodes.some((node) => Math.abs(node.distance - distance) < 0.01);
  const shown = result.stations.filter(
    ({ distance }, index) => index % every === 0 || index === last || bends(distance),
  );
  const rows = shown.map((station, index) => {
    const next = shown[index + 1];
    const grade = next ? (next.finished - station.finished) / (next.distance - station.distance) : null;
    return [
      notation.length(station.distance),
      notation.length(station.existing),
      notation.length(station.finished),
      grade === null ? "" : notation.slope(grade),
    ];
  });
  return (
    <FigureTable
      label={`Heights along the ${result.name}`}
      heads={["from road", "ground", "drive", "climbs"]}
      rows={rows}
    />
  );
}

function SteepestAllowed() {
  const steepest = useProject(({ rules }) => rules.steepestDrive);
  return (
    <Section title="Limit">
      <SlopeField
        label="Steepest you accept"
        ratio={steepest}
        help="Up to 8 % is easy, 10 to 12 % is a usual limit, more needs care in winter and with trailers."
        onCommit={(ratio) => tryRun(siteEdits.changeRules, { patch: { steepestDrive: ratio } })}
      />
    </Section>
  );
}
