/** What leaves over each lot line, as it is and as planned. */
import { goTo } from "../../store/actions";
import { IconAction } from "../fields/Choice";
import { Why } from "../help/Why";
import { Icon } from "../icons";
import { useNotation, useResults } from "../useProject";
import { Fold } from "./Fold";

/** Less ground than this over a line isn't worth a row, m2. */
const worthTelling = 5;

export function Leaving() {
  const leaving = useResults(({ water }) => water.leaving);
  const notation = useNotation();
  if (leaving.length === 0) return null;
  const told = leaving.filter(({ before, after }) => Math.max(before, after) >= worthTelling);
  const rising = told.filter(({ rises }) => rises).length;
  return (
    <Fold
      title="Water over the lot's lines"
      aside={rising === 0 ? "no more than before" : `more over ${rising} of them`}
      open={rising > 0}
    >
      <ul className="checks">
        {told.map((line) => (
          <li key={line.line} className={`check check-${line.rises ? "bad" : "ok"}`}>
            <Icon name={line.rises ? "warn" : "check"} />
            <div>
              <p>
                <b>{`Line ${line.line + 1}`}</b>
                {` drains ${notation.area(line.before)} as it is, ${notation.area(line.after)} as planned`}
                <Why kind="leaving" id={String(line.line)} of={`water over line ${line.line + 1}`} />
              </p>
              {line.peakBefore === null || line.peakAfter === null ? null : (
                <p className="soft small">
                  {`Peak ${notation.flow(line.peakBefore)} as it is, ${notation.flow(line.peakAfter)} as planned.`}
                </p>
              )}
              {line.rises ? (
                <p className="soft small">
                  {`${line.growth === null ? "More" : `${Math.round(100 * line.growth)} % more`} runs off to the neighbour than before: lead it another way, or hold it back.`}
                </p>
              ) : null}
            </div>
            <IconAction icon="place" label={`Show line ${line.line + 1}`} onPress={() => goTo(line.middle)} />
          </li>
        ))}
      </ul>
      {told.length === 0 ? <p className="soft small">Next to nothing leaves over them.</p> : null}
    </Fold>
  );
}
