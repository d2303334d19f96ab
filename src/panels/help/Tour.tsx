/** The tour: a card that points at one part of the window after the other, and leaves everything usable. */
import { useCallback, useEffect, useLayoutEffect, useRef, useState } from "react";
import { type TourStop, tourStops } from "../../help";
import { setStep, setTour } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, IconAction } from "../fields/Choice";
import { type Box, cardPlace, type Spot } from "./tourPlace";

export function Tour() {
  const at = useApp((state) => (state.screen === "plan" ? state.tour : null));
  const stop = at === null ? undefined : tourStops[at];
  return stop && at !== null ? <Stop stop={stop} at={at} /> : null;
}

const leave = () => setTour(null);

function Stop({ stop, at }: { stop: TourStop; at: number }) {
  const card = useRef<HTMLDivElement>(null);
  const { target, place } = usePlaces(stop, card);
  const last = at === tourStops.length - 1;
  useEffect(() => setStep(stop.step), [stop]);
  useEffect(() => card.current?.focus(), []);
  useLeaveByKey();
  return (
    <div className="tour">
      {target ? <div className="tour-ring" style={target} /> : null}
      <div
        className="tour-card"
        ref={card}
        role="dialog"
        aria-label={`Tour: ${stop.title}`}
        aria-describedby="tour-text"
        tabIndex={-1}
        style={place}
        onKeyDown={(event) => {
          if (event.key === "ArrowRight" && !last) setTour(at + 1);
          if (event.key === "ArrowLeft" && at > 0) setTour(at - 1);
        }}
      >
        <div className="tour-close">
          <IconAction icon="close" label="Leave the tour" onPress={leave} />
        </div>
        <p className="soft small">{`${at + 1} of ${tourStops.length}`}</p>
        <h2 className="part-title">{stop.title}</h2>
        <p id="tour-text" aria-live="polite">
          {stop.text}
        </p>
        <div className="tour-acts">
          {at > 0 ? <Action onPress={() => setTour(at - 1)}>Back</Action> : null}
          <Action look="accent" onPress={() => setTour(last ? null : at + 1)}>
            {last ? "Done" : "Next"}
          </Action>
        </div>
      </div>
    </div>
  );
}

/** Esc leaves the tour wherever the keyboard is; nothing else hears that press. */
function useLeaveByKey(): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      leave();
    };
    window.addEventListener("keydown", onKeyDown, true);
    return () => window.removeEventListener("keydown", onKeyDown, true);
  }, []);
}

/** Where the ring and the card stand; found anew when the stop or the window changes. */
function usePlaces(stop: TourStop, card: React.RefObject<HTMLDivElement | null>) {
  const [target, setTarget] = useState<Box | null>(null);
  const [place, setPlace] = useState<Spot>({ left: -9999, top: 0 });
  const find = useCallback(() => {
    const found = document.querySelector(`[data-tour="${stop.anchor}"]`)?.getBoundingClientRect() ?? null;
    const box = found && { left: found.left, top: found.top, width: found.width, height: found.height };
    const size = { width: card.current?.offsetWidth ?? 0, height: card.current?.offsetHeight ?? 0 };
    setTarget(box);
    setPlace(cardPlace(box, size, { width: window.innerWidth, height: window.innerHeight }));
  }, [stop, card]);
  useLayoutEffect(() => {
    find();
    // The stop's step may open another panel first.
    const frame = requestAnimationFrame(find);
    window.addEventListener("resize", find);
    return () => {
      cancelAnimationFrame(frame);
      window.removeEventListener("resize", find);
    };
  }, [find]);
  return { target, place };
}
