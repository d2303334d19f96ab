/** What leaves over each lot line, as it is and as planned. */
import { goTo } from "../../store/actions";
import { flowUnit, formatRate } from "../../units";
import { IconAction } from "../fields/Choice";
import { Icon } from "../icons";
import { Section } from "../parts";
import { useNotation, useResults } from "../useProject";

/** Less ground than this over a line isn't worth a row, m2. */
const worthTelling = 5;

export function Leaving() {
  const leaving = useResults(({ water }) => water.leaving);
  const notation = useNotation();
  const feet = notation.display.area === "ft2";
  if (leaving.length === 0) return null;
  const told = leaving.filter(({ before, after }) => Math.max(before, after) >= worthTelling);
  return (
    <Section title="Water over the lot's lines" aside="before, and as planned">
      <ul className="checks">
        {told.map((line) => (
          <li key={line.line} className={`check check-${line.rises ? "bad" : "ok"}`}>
            <Icon name={line.rises ? "warn" : "check"} />
            <div>
              <p>
                <b>{`Line ${line.line + 1}`}</b>
                {`: ${notation.area(line.before)}, then ${notation.area(line.after)}`}
              </p>
              {line.peakBefore === null || line.peakAfter === null ? null : (
                <p className="soft small">
                  {`Peak ${formatRate(line.peakBefore, flowUnit(feet))}, then ${formatRate(line.peakAfter, flowUnit(feet))}.`}
                </p>
              )}
              {line.rises ? (
                <p className="soft small">
                  More comes to the neighbour than before: lead it another way, or hold it back.
                </p>
              ) : null}
            </div>
            <IconAction icon="place" label={`Show line ${line.line + 1}`} onPress={() => goTo(line.middle)} />
          </li>
        ))}
      </ul>
      {told.length === 0 ? <p className="soft small">Next to nothing leaves over them.</p> : null}
    </Section>
  );
}
