import { setPreferences, setTheme } from "../../store/actions";
import { type Preferences, type ThemeChoice, textSizes } from "../../store/state";
import { useApp } from "../../store/useApp";
import { Choice } from "../fields/Choice";
import { Nudge } from "../inspector/Nudge";

const themes: readonly { value: ThemeChoice; words: string }[] = [
  { value: "system", words: "as the system" },
  { value: "light", words: "light" },
  { value: "dark", words: "dark" },
];
const sizes = textSizes.map((size) => ({ value: String(size), words: `${Math.round(size * 100)} %` }));
const motions: readonly { value: Preferences["motion"]; words: string }[] = [
  { value: "system", words: "as the system" },
  { value: "less", words: "none" },
];
const openings: readonly { value: Preferences["opens"]; words: string }[] = [
  { value: "start", words: "the start screen" },
  { value: "last", words: "the last plan" },
];

/** A person's own: on this computer, for every plan. */
export function OwnPreferences({ canReopen }: { canReopen: boolean }) {
  const theme = useApp((state) => state.theme);
  const { textSize, motion, opens } = useApp((state) => state.preferences);
  return (
    <>
      <p className="soft">Kept on this computer, for every plan. No plan changes by them.</p>
      <div className="part">
        <Choice label="Theme" value={theme} options={themes} onChoose={setTheme} />
        <Choice
          label="Text size"
          value={String(textSize)}
          options={sizes}
          onChoose={(chosen) =>
            setPreferences({ textSize: textSizes.find((size) => String(size) === chosen) ?? 1 })
          }
          help="Of the whole window, the plan too. Printed sheets keep theirs."
        />
        <Choice
          label="Motion"
          value={motion}
          options={motions}
          onChoose={(chosen) => setPreferences({ motion: chosen })}
        />
        {canReopen ? (
          <Choice
            label="Begin with"
            value={opens}
            options={openings}
            onChoose={(chosen) => setPreferences({ opens: chosen })}
          />
        ) : null}
        <Nudge label="Arrow keys move things by" />
      </div>
    </>
  );
}
