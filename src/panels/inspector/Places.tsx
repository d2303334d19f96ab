/** East and north of each place, counted from the plan's origin or from a mark. */
import { type Point, shapeEdits, type Thing } from "../../document";
import { goTo, tryRun } from "../../store/actions";
import { Choice, IconAction } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { useProject } from "../useProject";
import { countFrom, useOrigin } from "./origin";
import { placesOf } from "./places";

export interface PlacesProps {
  readonly thing: Thing;
  readonly locked: boolean;
}

/** A line of very many places shows the first ones; the rest is pulled on the plan. */
const mostShown = 60;

export function Places({ thing, locked }: PlacesProps) {
  const project = useProject((now) => now);
  const places = placesOf(project, thing);
  const [ox, oy] = useOrigin(project).from.at;
  if (places.length === 0) return null;
  const put = (index: number, to: Point) => tryRun(shapeEdits.setPlace, { thing, index, to });
  return (
    <section className="inspector-part" aria-label="Places">
      <div className="inspector-part-head">
        <h3 className="part-title">{places.length === 1 ? "Place" : "Places"}</h3>
        <CountedFrom />
      </div>
      <div className="inspector-places">
        <span />
        <span className="soft small" aria-hidden="true">
          east
        </span>
        <span className="soft small" aria-hidden="true">
          north
        </span>
        <span />
        {places.slice(0, mostShown).map(({ name, at: [x, y] }, index) => (
          <PlaceRow
            key={name}
            name={name}
            locked={locked}
            east={x - ox}
            north={y - oy}
            onEast={(m) => put(index, [m + ox, y])}
            onNorth={(m) => put(index, [x, m + oy])}
            onShow={() => goTo([x, y])}
          />
        ))}
      </div>
      {places.length > mostShown ? (
        <p className="soft small">{`${places.length - mostShown} more places; pull them on the plan.`}</p>
      ) : null}
    </section>
  );
}

/** From which place east and north are counted; there is a choice once a mark has a place. */
export function CountedFrom() {
  const { origins, from } = useOrigin(useProject((now) => now));
  if (origins.length === 1) return <span className="soft small">from the plan’s origin</span>;
  return (
    <Choice
      layout="bare"
      label="Counted from"
      value={from.id}
      options={origins.map(({ id, name }) => ({ value: id, words: `from ${name}` }))}
      onChoose={countFrom}
    />
  );
}

interface PlaceRowProps {
  readonly name: string;
  readonly locked: boolean;
  readonly east: number;
  readonly north: number;
  readonly onEast: (m: number) => ReturnType<typeof tryRun>;
  readonly onNorth: (m: number) => ReturnType<typeof tryRun>;
  readonly onShow: () => void;
}

function PlaceRow({ name, locked, east, north, onEast, onNorth, onShow }: PlaceRowProps) {
  const said = name === "place" ? "" : ` of ${name}`;
  return (
    <>
      <span className="inspector-place-name">{name === "place" ? "" : name}</span>
      <LengthField layout="bare" label={`East${said}`} m={east} locked={locked} onCommit={onEast} />
      <LengthField layout="bare" label={`North${said}`} m={north} locked={locked} onCommit={onNorth} />
      <IconAction
        icon="place"
        label={`Show ${name === "place" ? "it" : name} on the plan`}
        onPress={onShow}
      />
    </>
  );
}
