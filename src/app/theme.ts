/** The one place where tokens become CSS variables: on the root element, for the theme in force. */
import { inkVariable, palettes, space, type Theme, typeface, type as typeSizes } from "../look/tokens";
import { setTheme } from "../store/actions";
import type { ThemeChoice } from "../store/state";
import { appStore } from "../store/store";

const remembered = "drysill.theme";
const darkWanted = () => window.matchMedia("(prefers-color-scheme: dark)");

export function themeInForce(choice: ThemeChoice): Theme {
  if (choice !== "system") return choice;
  return darkWanted().matches ? "dark" : "light";
}

function applyTheme(theme: Theme): void {
  const root = document.documentElement;
  for (const [ink, colour] of Object.entries(palettes[theme])) {
    root.style.setProperty(inkVariable(ink), colour);
  }
  space.forEach((px, step) => {
    root.style.setProperty(`--space-${step}`, `${px}px`);
  });
  for (const [name, px] of Object.entries(typeSizes))
    root.style.setProperty(`--type-${name}`, `calc(${px}px * var(--text))`);
  root.style.setProperty("--typeface", typeface);
  root.style.colorScheme = theme;
  root.dataset.theme = theme;
}

/** Follows the person's choice and the system's; the choice is kept outside the project. */
export function startTheme(wanted: string | null): void {
  const stored = wanted ?? readRemembered();
  if (stored === "light" || stored === "dark" || stored === "system") setTheme(stored);
  const apply = () => applyTheme(themeInForce(appStore.getState().theme));
  apply();
  darkWanted().addEventListener("change", apply);
  appStore.subscribe((state, before) => {
    if (state.theme === before.theme) return;
    apply();
    remember(state.theme);
  });
}

/** A page without storage (a private window) simply forgets. */
function readRemembered(): string | null {
  try {
    return localStorage.getItem(remembered);
  } catch {
    return null;
  }
}

function remember(theme: ThemeChoice): void {
  try {
    localStorage.setItem(remembered, theme);
  } catch {
    // Nothing to do: the choice holds for this window.
  }
}
