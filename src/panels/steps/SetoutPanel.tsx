import { memo } from "react";
import { surveyEdits } from "../../document";
import type { SetoutResult } from "../../solve/results";
import { setStep, tryRun } from "../../store/actions";
import { Action } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { Why } from "../help/Why";
import type { Notation } from "../notation";
import { Caution, FigureTable, Guide, Panel, Section } from "../parts";
import { askBook } from "../survey/bookRequest";
import { useNotation, useProject, useResults } from "../useProject";

export function SetoutPanel() {
  const setout = useResults((results) => results.setout);
  return (
    <Panel step="setout" purpose="One reading on the mark, and every height is a reading to look for.">
      {setout.mark === null ? (
        <Guide title="There is no mark yet">
          <p>Set-out starts from a mark that stays. Add it with the shots.</p>
          <Action
            look="accent"
            onPress={() => {
              setStep("shots");
              askBook(null);
            }}
          >
            Go to the shots
          </Action>
        </Guide>
      ) : (
        <>
          <Today setout={setout} />
          <Readings setout={setout} />
        </>
      )}
      <Caution>
        Check the mark against its spare before each day's work: a laser or a mark that moved puts every
        height wrong. Don't look into the beam.
      </Caution>
    </Panel>
  );
}

function Today({ setout }: { setout: SetoutResult }) {
  const notation = useNotation();
  const typed = useProject(({ worksheet }) => worksheet.markReading);
  return (
    <Section
      title="Today"
      aside={
        setout.markHeight === null ? undefined : `${setout.mark} is ${notation.length(setout.markHeight)}`
      }
    >
      <TypedField
        label={`Reading on ${setout.mark}`}
        shown={typed ? notation.reading(typed.m) : ""}
        placeholder="not read yet"
        help={todayHelp(setout, typed !== null, notation)}
        commit={(text) => refusal(tryRun(surveyEdits.setMarkReading, { text }))}
      />
    </Section>
  );
}

function todayHelp({ beam }: SetoutResult, typed: boolean, notation: Notation): string {
  if (beam === null)
    return "Set up the laser where it sees everything, read the mark, and type what the rod says.";
  return typed
    ? `The beam is at ${notation.length(beam)} today. Read again at the end: same reading, or the laser moved.`
    : `Until it is typed, the readings below are those of the survey's set-up, with its beam at ${notation.length(beam)}.`;
}

const Readings = memo(function Readings({ setout }: { setout: SetoutResult }) {
  const notation = useNotation();
  const today = useProject(({ worksheet }) => worksheet.markReading !== null);
  const heads = ["what", "from the mark", setout.beam === null ? "height" : "to read"];
  const rows = setout.rows.map((row, index) => [
    <span key="what">
      {row.what}
      {row.where ? <span className="fact-note">{row.where}</span> : null}
    </span>,
    row.fromMark === null ? "–" : notation.aboveBelow(row.fromMark),
    <span key="reading">
      {row.reading === null ? notation.length(row.height) : <b>{notation.reading(row.reading)}</b>}
      <Why kind="setout" id={String(index)} of={row.where ? `${row.what}, ${row.where}` : row.what} />
    </span>,
  ]);
  if (rows.length === 0)
    return (
      <Section title="Heights to set out">
        <p className="soft small">They follow once there is a building.</p>
      </Section>
    );
  return (
    <Section title={readingsTitle(setout, today)} aside="a bigger reading is lower">
      <FigureTable label="Heights to set out" heads={heads} rows={rows} />
    </Section>
  );
});

function readingsTitle({ beam }: SetoutResult, today: boolean): string {
  if (beam === null) return "Heights to set out";
  return today ? "Readings to look for today" : "Readings in the survey's set-up";
}
