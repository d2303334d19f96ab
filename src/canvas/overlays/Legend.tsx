/** The key of cut and fill: the classes' colours with the depths at which they change, and the words. */
import type { Display } from "../../document";
import { type DepthClass, depthClasses, edgeText } from "../../drawing";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { depthOpacity } from "../paint/depthPicture";
import { HatchKey } from "./HatchKey";
import { KeyCard } from "./KeyCard";
import { KeyToAll } from "./KeyToAll";
import { MapLegend } from "./MapLegend";

export function Legend() {
  const display = useApp((state) => shownProject(state).display);
  const shown = useApp((state) => state.results.surface !== null && !state.hidden.has("depth"));
  if (!shown) return <MapLegend />;
  const classes = depthClasses(display);
  const side = (name: "cut" | "fill") => classes.filter(({ id }) => id.startsWith(name));
  return (
    <KeyCard colours={classes.map(({ ink }) => `var(--${ink})`)} word="cut, fill">
      <section className="plan-card legend" aria-label="Key of cut and fill">
        <Side word="cut" classes={side("cut")} display={display} />
        <Side word="fill" classes={side("fill")} display={display} />
        <HatchKey />
        <KeyToAll />
      </section>
    </KeyCard>
  );
}

interface SideProps {
  readonly word: "cut" | "fill";
  readonly classes: readonly DepthClass[];
  readonly display: Display;
}

/** One colour a class; a number stands where one class ends and the next begins. */
function Side({ word, classes, display }: SideProps) {
  const shallow = word === "cut" ? "to" : "from";
  // Millimetres are long: the unit stands once, beside the word.
  const inMm = edgeText(1, display).endsWith(" mm");
  const edge = (depth: number) => edgeText(Math.abs(depth), display).replace(" mm", "");
  return (
    <div className={`legend-side ${word}`}>
      <span className="legend-word">{inMm ? `${word}, mm` : word}</span>
      <ul>
        {classes.map(({ id, ink, words, [shallow]: depth }) => (
          <li key={id} title={words}>
            <span className="legend-colour" style={{ background: `var(--${ink})`, opacity: depthOpacity }} />
            <span className="legend-edge" aria-hidden="true">
              {edge(depth)}
            </span>
            <span className="visually-hidden">{words}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
