import { type Building, buildingEdits, isLocked, type Point } from "../../document";
import { centroid, perimeter, signedArea } from "../../geometry";
import { cornerName } from "../../grading";
import { goTo, run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { appStore, shownProject } from "../../store/store";
import { Action, IconAction } from "../fields/Choice";
import { AngleField, WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { useOrigin } from "../inspector/origin";
import { CountedFrom } from "../inspector/Places";
import { Told } from "../inspector/Told";
import { type Fact, Facts, Guide, Panel, Section } from "../parts";
import { Squaring } from "../plot/Squaring";
import { startingBuilding } from "../startingBuilding";
import { useNotation, useProject } from "../useProject";
import { Doors, Windows } from "./Openings";

export function BuildingPanel() {
  const building = useProject((project) => project.building);
  return (
    <Panel step="building" purpose="The outside of the foundation wall, and where its doors are.">
      {building ? (
        <>
          <Told thing={{ kind: "building" }}>
            <Size building={building} />
          </Told>
          <Squaring building={building} />
          <Corners outline={building.outline} />
          <Doors building={building} />
          <Windows building={building} />
          <TopOfWall building={building} />
          <Action icon="trash" look="quiet" onPress={() => runEdit(buildingEdits.removeBuilding, {})}>
            Remove the building
          </Action>
        </>
      ) : (
        <NoBuilding />
      )}
    </Panel>
  );
}

function TopOfWall({ building }: { building: Building }) {
  const locked = useLocked();
  return (
    <Section title="Top of wall">
      <LengthField
        label="Above the floor"
        m={building.topOfWallAboveFloor}
        locked={locked}
        help="0 where the floor is level with the top of the wall; with a minus where the wall stops below it."
        onCommit={(m) =>
          tryRun(buildingEdits.changeBuilding, {
            patch: { topOfWallAboveFloor: m },
            what: "change top of wall",
          })
        }
      />
    </Section>
  );
}

function NoBuilding() {
  const metric = useProject(({ display }) => display.area === "m2");
  const put = () => {
    const state = appStore.getState();
    runEdit(buildingEdits.drawBuilding, startingBuilding(shownProject(state), state.results.ground));
  };
  return (
    <Guide title="Put the building on the plan">
      <p>
        Press at one corner on the plan and pull to the opposite one, or type its two sides while you draw.
        Nothing is final: it can be moved, turned and resized by hand or by figures.
      </p>
      <Action icon="draw" look="accent" onPress={() => pickTool("building")}>
        Draw the building
      </Action>
      <Action look="quiet" onPress={put}>
        {`Or start with ${metric ? "9.6 × 7.2 m" : "32′ × 24′"} amid the shots`}
      </Action>
    </Guide>
  );
}

/** None of its figures can be typed over while it is locked; what was taped of it can: it is taped once it is settled. */
const useLocked = () => useProject((project) => isLocked(project, { kind: "building" }));

function Size({ building }: { building: Building }) {
  const notation = useNotation();
  const locked = useLocked();
  const [a, b, c, d] = building.outline;
  const area = Math.abs(signedArea(building.outline));
  const facts: Fact[] = [
    {
      name: "Area on the ground",
      figure: notation.area(area),
      why: { kind: "area", of: "area on the ground" },
    },
    { name: "Round it", figure: notation.length(perimeter(building.outline)) },
  ];
  if (building.outline.length !== 4 || !a || !b || !c || !d)
    return (
      <Section title="Size">
        <Name name={building.name} locked={locked} />
        <Facts facts={facts} />
      </Section>
    );
  const [width, depth] = [between(a, b), between(b, c)];
  const resize = (size: { width?: number; depth?: number }) =>
    tryRun(buildingEdits.resizeBuilding, { width, depth, ...size });
  const turn = Math.atan2(c[1] - d[1], c[0] - d[0]);
  const [ac, bd] = [between(a, c), between(b, d)];
  const square = Math.abs(ac - bd) < 0.0005;
  facts.push(
    { name: "Diagonal A–C", figure: notation.length(ac) },
    { name: "Diagonal B–D", figure: notation.length(bd) },
  );
  return (
    <Section
      title="Size"
      aside={
        square ? "square: both diagonals alike" : `out of square by ${notation.length(Math.abs(ac - bd))}`
      }
    >
      <Name name={building.name} locked={locked} />
      <LengthField label="Wall A–B" m={width} locked={locked} onCommit={(m) => resize({ width: m })} />
      <LengthField label="Wall B–C" m={depth} locked={locked} onCommit={(m) => resize({ depth: m })} />
      <AngleField
        label="Turned by"
        radians={turn}
        locked={locked}
        help="Counter-clockwise about its middle."
        onCommit={(angle) =>
          tryRun(buildingEdits.turnBuilding, { angle: angle - turn, about: centroid(building.outline) })
        }
      />
      <Facts facts={facts} />
    </Section>
  );
}

function Name({ name, locked }: { name: string; locked: boolean }) {
  return (
    <WordsField
      label="Name"
      text={name}
      locked={locked}
      onCommit={(typed) =>
        tryRun(buildingEdits.changeBuilding, { patch: { name: typed }, what: "rename building" })
      }
    />
  );
}

function between([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

function Corners({ outline }: { outline: readonly Point[] }) {
  const locked = useLocked();
  const [ox, oy] = useOrigin(useProject((project) => project)).from.at;
  const change = (index: number, corner: Point) =>
    tryRun(buildingEdits.setOutline, {
      outline: outline.map((old, i) => (i === index ? corner : old)),
      what: `move corner ${cornerName(index)}`,
    });
  return (
    <Section title="Corners, east and north" aside={<CountedFrom />}>
      <ol className="coordinates">
        {outline.map(([x, y], index) => (
          <li key={cornerName(index)} className="coordinate">
            <span className="coordinate-name">{cornerName(index)}</span>
            <LengthField
              layout="bare"
              label={`Corner ${cornerName(index)}, east`}
              m={x - ox}
              locked={locked}
              onCommit={(m) => change(index, [m + ox, y])}
            />
            <LengthField
              layout="bare"
              label={`Corner ${cornerName(index)}, north`}
              m={y - oy}
              locked={locked}
              onCommit={(m) => change(index, [x, m + oy])}
            />
            <IconAction
              icon="place"
              label={`Show ${cornerName(index)} on the plan`}
              onPress={() => goTo([x, y])}
            />
          </li>
        ))}
      </ol>
    </Section>
  );
}
