/**
 * What was measured: stays beside the plan until Esc lets it go. While places are still being clicked it gives way to
 * the pointer, so that no place lies hidden under it.
 */
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { useApp } from "../../store/useApp";
import { machine, toolRun } from "../stage/toolRun";
import type { Reading } from "../tools/tool";
import { planView } from "../view/planView";
import { toScreen } from "../view/view";

/** The card goes to the other side when the pointer comes this near, px. */
const nearness = 28;

export function ReadingCard() {
  const reading = useStore(toolRun, ({ state }) => state.reading);
  const card = useRef<HTMLElement>(null);
  const gives = reading?.live ?? false;
  const gaveWay = useGivesWay(card, gives);
  const covers = useCovers(card, reading?.about);
  const [folded, setFolded] = useState(false);
  const away = gaveWay !== covers;
  if (!reading) return null;
  return (
    <section
      ref={card}
      className={`plan-card reading-card${gives ? " live" : ""}${away ? " away" : ""}`}
      // What still changes with each move of the pointer is not read out.
      aria-live={gives ? "off" : "polite"}
      aria-label="What was measured"
      data-testid="reading"
    >
      <h3>
        <button
          type="button"
          className="reading-fold"
          aria-expanded={!folded}
          onClick={() => setFolded(!folded)}
        >
          {folded ? firstLine(reading) : reading.title}
          <span className="reading-fold-sign" aria-hidden="true" />
        </button>
      </h3>
      {folded ? null : <Measured reading={reading} />}
    </section>
  );
}

/** All that a folded card tells. */
function firstLine({ title, rows }: Reading): string {
  return rows[0] ? `${title} · ${rows[0].value}` : title;
}

function Measured({ reading }: { reading: Reading }) {
  return (
    <>
      <dl>
        {reading.rows.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {reading.act === null ? null : (
        <button
          type="button"
          onClick={(event) => {
            machine().use();
            toPlan(event.currentTarget);
          }}
        >
          {reading.act}
        </button>
      )}
    </>
  );
}

/** Would the card cover, where it usually stands, a place that it is about? Found once for each reading. */
function useCovers(card: RefObject<HTMLElement | null>, about: Reading["about"]): boolean {
  const [covers, setCovers] = useState(false);
  useLayoutEffect(() => {
    const slot = card.current?.parentElement;
    if (!card.current || !slot || !about) {
      setCovers(false);
      return;
    }
    const { offsetTop: top, offsetWidth: width, offsetHeight: height } = card.current;
    const [left, right] = [slot.offsetLeft - nearness, slot.offsetLeft + width + nearness];
    const { view } = planView.getState();
    setCovers(
      about.some((place) => {
        const [x, y] = toScreen(view, place);
        return x > left && x < right && y > top - nearness && y < top + height + nearness;
      }),
    );
  }, [card, about]);
  return covers;
}

/** Does the card stand on the other side? It changes sides only when the pointer comes to it. */
function useGivesWay(card: RefObject<HTMLElement | null>, gives: boolean): boolean {
  const [away, setAway] = useState(false);
  const pointer = useApp((state) => state.pointer);
  useEffect(() => {
    const box = card.current;
    if (!gives || !pointer || !box) return;
    const [x, y] = toScreen(planView.getState().view, pointer);
    const { offsetLeft: left, offsetTop: top, offsetWidth: width, offsetHeight: height } = box;
    const near =
      x > left - nearness && x < left + width + nearness && y > top - nearness && y < top + height + nearness;
    if (near) setAway((was) => !was);
  }, [card, gives, pointer]);
  return away;
}

/** Hands the keyboard back to the plan, where the tool goes on. */
export function toPlan(element: HTMLElement): void {
  element.closest(".plan-canvas")?.querySelector<HTMLElement>(".plan-stage")?.focus({ preventScroll: true });
}
