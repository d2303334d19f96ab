/** Doors and windows of the building, by their figures. */
import { memo } from "react";
import { type Building, buildingEdits, type Door, isLocked, type Window, windowEdits } from "../../document";
import { run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { FOOT } from "../../units";
import { Action, Choice, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Told } from "../inspector/Told";
import { Section } from "../parts";
import { useProject } from "../useProject";
import { wallName } from "../words";

/** The walls to choose from, in words. */
function wallOptions({ outline }: Building) {
  return outline.map((_, wall) => ({ value: String(wall), words: wallName(outline.length, wall) }));
}

export function Doors({ building }: { building: Building }) {
  const walls = wallOptions(building);
  const lastWall = building.outline.length - 2;
  const length = buildingEdits.wallLength(building.outline, lastWall);
  const add = () => {
    const width = Math.min(9 * FOOT, length * 0.8);
    runEdit(buildingEdits.addDoor, { wall: lastWall, offset: (length - width) / 2, width });
  };
  return (
    <Section title="Doors">
      {building.doors.map((door) => (
        <Told key={door.id} thing={{ kind: "door", id: door.id }}>
          <DoorCard door={door} walls={walls} />
        </Told>
      ))}
      <div className="card-acts">
        <Action icon="draw" look="quiet" onPress={() => pickTool("door")}>
          Put a door on a wall
        </Action>
        <Action icon="plus" look="quiet" onPress={add}>
          Add one here
        </Action>
      </div>
    </Section>
  );
}

const kinds = [
  { value: "overhead", words: "overhead door" },
  { value: "walk", words: "walk door" },
] as const;

interface DoorCardProps {
  readonly door: Door;
  readonly walls: readonly { readonly value: string; readonly words: string }[];
}

const DoorCard = memo(function DoorCard({ door, walls }: DoorCardProps) {
  const { id, wall, offset, width, sillBelowFloor, kind, name } = door;
  const change = (patch: Partial<Omit<Door, "id">>) => tryRun(buildingEdits.changeDoor, { id, patch });
  const locked = useProject((project) => isLocked(project, { kind: "door", id }));
  return (
    <div className="card">
      <div className="card-head">
        <Choice
          layout="bare"
          label="Kind of door"
          value={kind}
          options={kinds}
          locked={locked}
          onChoose={(chosen) => change({ kind: chosen })}
        />
        <IconAction
          icon="trash"
          label={`Remove ${name}`}
          onPress={() => runEdit(buildingEdits.removeDoor, { id })}
        />
      </div>
      <Choice
        label="On wall"
        value={String(wall)}
        options={walls}
        locked={locked}
        onChoose={(chosen) => runEdit(buildingEdits.changeDoor, { id, patch: { wall: Number(chosen) } })}
      />
      <LengthField
        label="From its first corner"
        m={offset}
        least={0}
        locked={locked}
        onCommit={(m) => change({ offset: m })}
      />
      <LengthField label="Width" m={width} locked={locked} onCommit={(m) => change({ width: m })} />
      <LengthField
        label="Sill below the floor"
        m={sillBelowFloor}
        least={0}
        locked={locked}
        onCommit={(m) => change({ sillBelowFloor: m })}
      />
    </div>
  );
});

export function Windows({ building }: { building: Building }) {
  const walls = wallOptions(building);
  return (
    <Section title="Windows">
      {building.windows.map((window) => (
        <Told key={window.id} thing={{ kind: "window", id: window.id }}>
          <WindowCard window={window} walls={walls} />
        </Told>
      ))}
      <div className="card-acts">
        <Action icon="draw" look="quiet" onPress={() => pickTool("window")}>
          Put a window on a wall
        </Action>
      </div>
    </Section>
  );
}

interface WindowCardProps {
  readonly window: Window;
  readonly walls: DoorCardProps["walls"];
}

const WindowCard = memo(function WindowCard({ window, walls }: WindowCardProps) {
  const { id, wall, offset, width, sillAboveFloor, height, name } = window;
  const change = (patch: Partial<Omit<Window, "id">>) => tryRun(windowEdits.changeWindow, { id, patch });
  const locked = useProject((project) => isLocked(project, { kind: "window", id }));
  return (
    <div className="card">
      <WordsField label="Name" text={name} locked={locked} onCommit={(text) => change({ name: text })} />
      <Choice
        label="On wall"
        value={String(wall)}
        options={walls}
        locked={locked}
        onChoose={(chosen) => runEdit(windowEdits.changeWindow, { id, patch: { wall: Number(chosen) } })}
      />
      <LengthField
        label="From its first corner"
        m={offset}
        least={0}
        locked={locked}
        onCommit={(m) => change({ offset: m })}
      />
      <LengthField label="Width" m={width} locked={locked} onCommit={(m) => change({ width: m })} />
      <LengthField
        label="Sill above the floor"
        m={sillAboveFloor}
        least={0}
        locked={locked}
        onCommit={(m) => change({ sillAboveFloor: m })}
      />
      <LengthField label="Height" m={height} locked={locked} onCommit={(m) => change({ height: m })} />
      <div className="card-acts">
        <IconAction
          icon="trash"
          label={`Remove ${name}`}
          onPress={() => runEdit(windowEdits.removeWindow, { id })}
        />
      </div>
    </div>
  );
});
