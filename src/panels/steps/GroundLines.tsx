import { breaklineWord, surveyEdits } from "../../document";
import { run as runEdit, select, tryRun } from "../../store/actions";
import { pickTool } from "../../store/pickTool";
import { Action, IconAction } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { Told } from "../inspector/Told";
import { Section } from "../parts";
import { useProject } from "../useProject";

/** What shapes the ground between the shots: breaklines, holes, and how far triangles reach at its edge. */
export function GroundLines() {
  const lines = useProject(({ survey }) => survey.breaklines);
  const longest = useProject(({ survey }) => survey.longestEdge);
  return (
    <Section title="Ground between the shots">
      {lines.length === 0 ? (
        <p className="soft small">
          Where the ground bends along a ditch, a bank or a wall, draw it: then no slope is laid across it.
        </p>
      ) : null}
      {lines.map(({ id, name, kind }) => (
        <Told key={id} thing={{ kind: "breakline", id }}>
          <div className="card">
            <WordsField
              label={`Name of the ${breaklineWord(kind)}`}
              text={name}
              onCommit={(words) => tryRun(surveyEdits.changeBreakline, { id, patch: { name: words } })}
            />
            <div className="card-acts">
              <Action icon="place" look="quiet" onPress={() => select([{ kind: "breakline", id }])}>
                Show it
              </Action>
              <IconAction
                icon="trash"
                label={`Remove ${name || breaklineWord(kind)}`}
                onPress={() => runEdit(surveyEdits.removeBreakline, { id })}
              />
            </div>
          </div>
        </Told>
      ))}
      <Action icon="draw" look="quiet" onPress={() => pickTool("breakline")}>
        Draw a breakline
      </Action>
      <LengthField
        label="Longest side at the edge"
        m={longest}
        least={0}
        placeholder="any"
        help="A triangle at the outermost shots with a longer side is a guess, and hatched. Empty or 0: none is."
        onEmpty={() => tryRun(surveyEdits.setLongestEdge, { m: null })}
        onCommit={(m) => tryRun(surveyEdits.setLongestEdge, { m })}
      />
    </Section>
  );
}
