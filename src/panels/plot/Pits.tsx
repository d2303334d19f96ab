/** Test pits: where they were dug, what they met how deep, and what that says. */
import { type Point, pitEdits, placeResolver, type TestPit } from "../../document";
import { goTo, run as runEdit, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { Action, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Told } from "../inspector/Told";
import { FigureTable, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";
import { PitDepths } from "./PitDepths";
import "./plot.css";

export function Pits() {
  const pits = useProject(({ survey }) => survey.pits);
  return (
    <Section title="Test pits" aside="depths from the ground down">
      {pits.length === 0 ? (
        <p className="soft small">
          What a spade or a digger shows: topsoil, old fill, rock, water. The strip and the trench go by it.
          Have buried lines marked before you dig, and shore or slope any pit that someone climbs into.
        </p>
      ) : null}
      {pits.map((pit) => (
        <Told key={pit.id} thing={{ kind: "pit", id: pit.id }}>
          <PitCard pit={pit} />
        </Told>
      ))}
      <div className="card-acts">
        <Action icon="draw" look="quiet" onPress={() => pickTool("pit")}>
          Put a pit on the plan
        </Action>
      </div>
      <WhatTheySay />
    </Section>
  );
}

function PitCard({ pit }: { pit: TestPit }) {
  const { id, name } = pit;
  const survey = useProject((project) => project.survey);
  const outline = useProject(({ building }) => building?.outline) ?? [];
  const { at } = placeResolver(survey, outline)(pit.place);
  const change = (patch: Partial<Omit<TestPit, "id">>) => tryRun(pitEdits.changePit, { id, patch });
  const move = ([x, y]: Point) => change({ place: { kind: "at", x, y } });
  const [x, y] = at ?? [null, null];
  return (
    <fieldset className="card">
      <legend className="visually-hidden">{name || "Test pit"}</legend>
      <div className="card-head">
        <WordsField
          layout="bare"
          label="Name of the pit"
          text={name}
          onCommit={(text) => change({ name: text })}
        />
        <IconAction
          icon="place"
          label="Show it on the plan"
          isDisabled={at === null}
          onPress={() => at && goTo([at[0], at[1]])}
        />
        <IconAction
          icon="trash"
          label={`Remove ${name || "the pit"}`}
          onPress={() => runEdit(pitEdits.removePit, { id })}
        />
      </div>
      <LengthField label="East" m={x} onCommit={(m) => move([m, y ?? 0])} />
      <LengthField label="North" m={y} onCommit={(m) => move([x ?? 0, m])} />
      <PitDepths pit={pit} />
    </fieldset>
  );
}

/** Corner by corner against the bottom of the trench. */
function WhatTheySay() {
  const pits = useResults((results) => results.pits);
  const trench = useResults((results) => results.trench);
  const notation = useNotation();
  const told = pits.corners.filter(
    ({ firm, rock, water }) => firm !== null || rock !== null || water !== null,
  );
  if (told.length === 0 || trench.length === 0) return null;
  const bottom = new Map(trench.map((corner) => [corner.corner, corner.bottom]));
  const against = (corner: string, height: number | null) =>
    height === null ? "–" : notation.signed(height - (bottom.get(corner) ?? 0));
  return (
    <>
      <FigureTable
        label="Ground below the trench's corners"
        heads={["corner", "firm ground", "rock", "water"]}
        rows={told.map(({ corner, firm, rock, water }) => [
          corner,
          against(corner, firm),
          against(corner, rock),
          against(corner, water),
        ])}
      />
      <p className="soft small">
        {`Above (+) or below (−) the bottom of the trench, guessed between ${
          pits.count === 1 ? "one pit and the corners" : `${pits.count} pits`
        }. What the soil can carry, an engineer or the building office says.`}
      </p>
    </>
  );
}
