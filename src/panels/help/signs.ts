/** What every colour and sign of the plan, the rod, the panels and the level book means, in groups. */
import type { StyleName, SymbolMark } from "../../drawing";
import type { StepState } from "../steps";

/** How a sign is shown in the key: as the plan draws it, or by what the window makes of it. */
export type Sign =
  | { readonly as: "line" | "area"; readonly style: StyleName }
  | { readonly as: "symbol"; readonly style: StyleName; readonly symbol: SymbolMark["symbol"] }
  | { readonly as: "colours"; readonly inks: readonly string[] }
  | { readonly as: "state"; readonly state: StepState }
  | { readonly as: "sample"; readonly look: Sample };

/** Signs of the window, by what they look like. */
export type Sample =
  | "rod-floor"
  | "rod-outside"
  | "rod-allowed"
  | "rod-none"
  | "warning"
  | "fault"
  | "guessed-words"
  | "odd-shot"
  | "untied"
  | "misread"
  | "aside-row"
  | "chosen-row";

export interface SignGroup {
  readonly name: string;
  readonly signs: readonly (readonly [sign: Sign, words: string])[];
}

const line = (style: StyleName): Sign => ({ as: "line", style });
const area = (style: StyleName): Sign => ({ as: "area", style });
const symbol = (shape: SymbolMark["symbol"], style: StyleName): Sign => ({
  as: "symbol",
  style,
  symbol: shape,
});
const sample = (look: Sample): Sign => ({ as: "sample", look });

export const signGroups: readonly SignGroup[] = [
  {
    name: "Yours to move",
    signs: [
      [line("selected"), "the one accent colour: what is selected, and buttons and words that do something"],
      [symbol("dot", "handle"), "handle: drag it"],
      [symbol("dot", "handle-between"), "faint handle: pulling it makes something new"],
      [line("preview-line"), "what you are drawing or moving, until you let go"],
      [symbol("ring", "snap-ring"), "the place that the hand snaps to, with a word for it"],
      [line("snap-guide"), "the line that a snap follows"],
      [symbol("arrow", "move"), "move the stake this way to square the building"],
    ],
  },
  {
    name: "Cut, fill and the ground",
    signs: [
      [
        { as: "colours", inks: ["cut3", "cut2", "cut1", "cut0"] },
        "cut: dig; the stronger the colour, the deeper",
      ],
      [
        { as: "colours", inks: ["fill0", "fill1", "fill2", "fill3"] },
        "fill: bring up; the stronger the colour, the higher",
      ],
      [area("cut-hatch"), "cut on paper"],
      [area("fill-hatch"), "fill on paper"],
      [symbol("dot", "depth-spot"), "the deepest cut or fill, on paper"],
      [line("contour-existing-major"), "contour of the ground as it is"],
      [line("contour-guessed"), "contour where the ground is guessed"],
      [line("contour-finished-major"), "contour of the finished ground"],
      [line("daylight"), "where cut or fill runs out into the ground as it is"],
      [area("guessed-hatch"), "guessed ground: no shots near enough. Shoot there before you rely on it"],
      [line("guessed-edge"), "rim of the ground that was measured"],
    ],
  },
  {
    name: "Shots and marks",
    signs: [
      [symbol("cross", "shot"), "a shot; the figure beside it is its height"],
      [symbol("plus", "shot"), "a turning point, where the laser was moved"],
      [symbol("cross", "shot-untied"), "grey: not counted. It has no height yet, or was set aside"],
      [symbol("triangle", "mark-symbol"), "a mark that heights are told from"],
      [line("breakline"), "breakline: the ground bends here"],
      [line("breakline-round"), "breakline that closes on itself"],
      [symbol("ring", "pit"), "test pit"],
    ],
  },
  {
    name: "Water",
    signs: [
      [symbol("arrow", "arrow"), "water runs this way over the finished ground"],
      [symbol("ring", "arrow"), "too flat for water to run off"],
      [line("run-most"), "run of water; the heavier, the more comes together"],
      [line("run-drop"), "the way of a drop from the pointer"],
      [area("pond"), "low place that holds water"],
      [line("wall-wet"), "water reaches this wall"],
      [symbol("chevron", "swale-mark"), "swale; it falls the way the signs point"],
      [line("pipe"), "pipe under the ground"],
      [line("footing-drain"), "drain beside the footing"],
      [area("bare-slope"), "bare slope that rain can wash away"],
      [line("silt-barrier"), "barrier that holds the mud back"],
      [area("feature-water"), "water that is there already"],
    ],
  },
  {
    name: "Building, lot and works",
    signs: [
      [line("wall"), "outside of the foundation wall"],
      [
        symbol("ring", "corner-ring"),
        "corner with its name; “out” is how far the wall stands out of the ground as it is",
      ],
      [line("door"), "door"],
      [line("window"), "window"],
      [line("trench"), "edge of the trench, on paper"],
      [line("drive-edge"), "drive"],
      [line("drive-centre"), "middle of the drive"],
      [line("drive-steep"), "the drive's steepest stretch"],
      [line("station"), "station along a drive or swale"],
      [area("ground-pad"), "parking or another flat pad"],
      [line("ground-berm"), "berm"],
      [line("retaining-wall"), "retaining wall"],
      [line("lot-line"), "lot line"],
      [line("setback"), "setback: no building beyond it"],
      [line("feature"), "tree, stump, well or other thing of the lot"],
      [line("feature-line"), "fence, or a septic tank or field"],
      [
        line("feature-danger"),
        "danger to life: overhead or buried line. Keep off, and have it located before you dig",
      ],
      [line("keep-clear"), "keep clear of the thing inside"],
      [line("section-line"), "section below the plan is cut here; it looks the way of the arrows"],
      [line("dimension"), "dimension"],
      [line("tie"), "tie: tape this from a corner to the lot line"],
    ],
  },
  {
    name: "The rod",
    signs: [
      [sample("rod-floor"), "the floor: drag the flag"],
      [sample("rod-outside"), "the floor breaks a limit"],
      [sample("rod-allowed"), "heights that every limit allows; their ends are named"],
      [sample("rod-none"), "limits that can't all be met"],
    ],
  },
  {
    name: "Steps and panels",
    signs: [
      [{ as: "state", state: "empty" }, "nothing yet"],
      [{ as: "state", state: "work" }, "in work"],
      [{ as: "state", state: "complete" }, "complete"],
      [{ as: "state", state: "attention" }, "needs attention; the step says why"],
      [sample("warning"), "amber with a triangle: look at it"],
      [sample("fault"), "red with a stop sign: wrong, put it right first"],
      [sample("guessed-words"), "rests on guessed ground"],
    ],
  },
  {
    name: "The level book",
    signs: [
      [sample("odd-shot"), "odd shot: it doesn't fit its neighbours. It stays as written until you decide"],
      [sample("untied"), "a set-up that isn't tied to the others: its shots have no height yet"],
      [sample("misread"), "not understood; what you typed stays"],
      [sample("aside-row"), "set aside: kept, not counted"],
      [sample("chosen-row"), "chosen rows"],
    ],
  },
];
