/** The key of the maps of heights and steepness: their classes' colours, with the figures at which they change. */
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { depthOpacity } from "../paint/depthPicture";
import { type ShownMap, shownMap } from "../scene/shownMap";
import { HatchCard, HatchKey } from "./HatchKey";
import { KeyCard } from "./KeyCard";
import { KeyToAll } from "./KeyToAll";
import { useTheme } from "./useTheme";

export function MapLegend() {
  const theme = useTheme();
  useApp((state) => state.results);
  useApp((state) => state.hidden);
  useApp((state) => state.mapGround);
  const map = shownMap(appStore.getState(), theme);
  if (!map?.classes) return <HatchCard />;
  const { colours, edgeTexts, words } = map.classes;
  const title = titleOf(map);
  const { layer } = map;
  return (
    <KeyCard colours={colours} word={layer === "slopes" ? "steepness" : "heights"}>
      <section className="plan-card map-legend" aria-label={`Key: ${title}`}>
        <span className="legend-word">{title}</span>
        <ul>
          {colours.map((colour, i) => (
            <li key={colour} title={words[i]}>
              <span className="legend-colour" style={{ background: colour, opacity: depthOpacity }} />
              {edgeTexts[i] === undefined ? null : (
                <span className="legend-edge" aria-hidden="true">
                  {edgeTexts[i]}
                </span>
              )}
              <span className="visually-hidden">{words[i]}</span>
            </li>
          ))}
        </ul>
        <HatchKey />
        <KeyToAll />
      </section>
    </KeyCard>
  );
}

function titleOf({ layer, ground, fromMark }: ShownMap): string {
  const which = ground === "finished" ? "finished ground" : "ground as it is";
  if (layer === "slopes") return `steepness, ${which}`;
  return `height ${fromMark ? "from the mark" : "in the datum"}, ${which}`;
}
