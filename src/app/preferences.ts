/** A person's own choices (text size, motion, what the window begins with), kept outside the plan. */
import { type RuleSet, ruleSetSchema } from "../document";
import { setPreferences } from "../store/actions";
import { type Preferences, textSizes } from "../store/state";
import { appStore } from "../store/store";

const remembered = "drysill.preferences";

/** Takes up what was chosen, sets it on the page, and keeps what is chosen from now on. */
export function startPreferences(): void {
  setPreferences(understoodPreferences(read()));
  apply(appStore.getState().preferences);
  appStore.subscribe((state, before) => {
    if (state.preferences === before.preferences) return;
    apply(state.preferences);
    keep(state.preferences);
  });
}

/** What can be read of a kept text; a spoilt one is as none. */
export function understoodPreferences(text: string | null): Partial<Preferences> {
  const kept = parsed(text);
  const textSize = textSizes.find((size) => size === kept.textSize);
  return {
    ...(textSize === undefined ? {} : { textSize }),
    ...(kept.motion === "system" || kept.motion === "less" ? { motion: kept.motion } : {}),
    ...(kept.opens === "start" || kept.opens === "last" ? { opens: kept.opens } : {}),
    ...(Array.isArray(kept.ruleSets) ? { ruleSets: kept.ruleSets.flatMap(understoodRuleSet) } : {}),
  };
}

/** A set that can't be read is left out; values it doesn't have are the general ones. */
function understoodRuleSet(kept: unknown): RuleSet[] {
  const read = ruleSetSchema.safeParse(kept);
  return read.success ? [read.data] : [];
}

function parsed(text: string | null): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text ?? "{}");
    return typeof value === "object" && value !== null ? { ...value } : {};
  } catch {
    return {};
  }
}

function apply({ textSize, motion }: Preferences): void {
  const root = document.documentElement;
  root.style.setProperty("--text", String(textSize));
  root.dataset.text = String(Math.round(textSize * 100));
  root.dataset.motion = motion;
}

/** A page without storage (a private window) simply forgets. */
function read(): string | null {
  try {
    return localStorage.getItem(remembered);
  } catch {
    return null;
  }
}

function keep(preferences: Preferences): void {
  try {
    localStorage.setItem(remembered, JSON.stringify(preferences));
  } catch {
    // Nothing to do: the choices hold for this window.
  }
}
