/**
 * The one place for colour, space and type. The page turns it into CSS variables, the canvas and the
 * sheets read it directly. Cut and fill: ColorBrewer's BrBG (colour-blind-safe), always beside words.
 */

const light = {
  paper: "#f6f2e8",
  sheet: "#fdfbf5",
  raised: "#fffefa",
  ink: "#22282b",
  soft: "#5d6569",
  rule: "#dcd5c4",
  accent: "#a8481f",
  accentSoft: "#f5e1d6",
  onAccent: "#fffaf5",
  water: "#2a6796",
  waterSoft: "#cfe1ee",
  ok: "#2a7352",
  warn: "#8f5a00",
  bad: "#a3312a",
  cutInk: "#8c510a",
  fillInk: "#01665e",
  cut3: "#8c510a",
  cut2: "#bf812d",
  cut1: "#dfc27d",
  cut0: "#f6e8c3",
  fill0: "#c7eae5",
  fill1: "#80cdc1",
  fill2: "#35978f",
  fill3: "#01665e",
} as const;

export type Ink = keyof typeof light;
export type Palette = Readonly<Record<Ink, string>>;

const dark: Palette = {
  paper: "#1b2124",
  sheet: "#20272a",
  raised: "#283034",
  ink: "#ebe7dc",
  soft: "#a3aeb1",
  rule: "#3a4549",
  accent: "#e58f63",
  accentSoft: "#40302a",
  onAccent: "#1b2124",
  water: "#7db6de",
  waterSoft: "#284459",
  ok: "#6dc39b",
  warn: "#e0b057",
  bad: "#ea8d81",
  cutInk: "#d9a15c",
  fillInk: "#6fcabd",
  cut3: "#e0ab68",
  cut2: "#bd873c",
  cut1: "#926b34",
  cut0: "#6b5530",
  fill0: "#2d5d58",
  fill1: "#367a72",
  fill2: "#459c92",
  fill3: "#77d2c5",
};

export const palettes: Readonly<Record<"light" | "dark", Palette>> = { light, dark };
export type Theme = keyof typeof palettes;

/** Spacing steps, px. */
export const space = [0, 2, 4, 8, 12, 16, 24, 32, 48] as const;

/** Type sizes, px at 100 %. */
export const type = { small: 12, body: 14, lead: 15, title: 16, figure: 30 } as const;

export const typeface = '"Source Sans 3", "Noto Sans", system-ui, sans-serif';

/** The page's variable that holds an ink: `--cut-ink` for `cutInk`. */
export function inkVariable(ink: string): string {
  return `--${ink.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`)}`;
}
