/** The key of cut and fill: the classes' colours, their edges in numbers, and the words. */
import { depthClasses } from "../../drawing";
import { shownProject } from "../../store/store";
import { useApp } from "../../store/useApp";
import { depthOpacity } from "../paint/depthPicture";

export function Legend() {
  const display = useApp((state) => shownProject(state).display);
  const shown = useApp((state) => state.results.surface !== null && !state.hidden.has("depth"));
  if (!shown) return null;
  const classes = depthClasses(display);
  const side = (name: "cut" | "fill") => classes.filter(({ id }) => id.startsWith(name));
  return (
    <section className="plan-card legend" aria-label="Key of cut and fill">
      <Side word="cut" classes={side("cut")} />
      <Side word="fill" classes={side("fill")} />
    </section>
  );
}

function Side({ word, classes }: { word: "cut" | "fill"; classes: ReturnType<typeof depthClasses> }) {
  return (
    <dl className={`legend-side ${word}`}>
      <div className="legend-word">{word}</div>
      {classes.map(({ id, ink, words, short }) => (
        <div key={id} className="legend-class">
          <dt>
            <span
              className="legend-colour"
              style={{ background: `var(--${ink})`, opacity: depthOpacity }}
              title={words}
            />
          </dt>
          <dd>{short}</dd>
        </div>
      ))}
    </dl>
  );
}
