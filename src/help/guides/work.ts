/** Guides to the steps that hand the work over: foundation, quantities, set-out, sheets. */
import type { StepGuide } from "./guide";

export const foundation: StepGuide = {
  title: "Wall, footing and trench",
  about: "How deep to dig. All of it hangs on the [[top of wall]].",
  doing: [
    "Choose the kind, and type its dimensions on the section: the wall's height, the [[footing]] and the [[slab]], as your designer or your local code gives them.",
    "Type the [[frost depth]] of your place, and which ground your inspector counts it from.",
    "Read off how deep the trench is at each corner, and on the walls in elevation below the plan.",
    "Where a level footing lacks depth, let it step down; look at the fill that walls hold and the fill under the slab.",
    "Dig to the bottom of the footing, and check it with the laser every few feet.",
  ],
  watch: [
    "At the low corner a level footing may come too near the surface: deepen it, make the wall taller, or step it ([[stepped footing]]).",
    "The footing stands on [[undisturbed ground]], below topsoil and below frost, all round.",
    "An inspector wants to see the open trench before the pour.",
  ],
  slips: [
    "The trench was dug to the top of the footing instead of to its bottom.",
    "Dug too deep, and loose earth put back under the footing. Ask the inspector; never refill with earth.",
    "The floor was taken for the top of the wall.",
  ],
  cautions: [
    "Protect trench walls at 5 ft (1.5 m) or deeper, and shallower where the soil is bad (OSHA 29 CFR 1926.652). Ladder from 4 ft; spoil at least 2 ft back (1926.651).",
    "Don't [[backfill]] against a wall before it is cured and braced, nor on one side only. A wall with fill inside and air outside is a [[retaining wall]].",
    "This program doesn't size a footing or a wall: code and licensed people do.",
  ],
  caption: "Bottom of trench = top of wall − wall − footing.",
};

export const quantities: StepGuide = {
  title: "Earth, stone and concrete",
  about: "What comes in and what goes out at the present floor.",
  doing: [
    "Type how deep the topsoil is: it comes off first ([[strip]]).",
    "Choose [[swell]] and [[shrink]] for your soil, and what a truck holds.",
    "Read the loads, and whether [[cut]] and [[fill]] [[balance]].",
    "Order the fill that carries the slab by kind, not only by volume.",
  ],
  watch: [
    "A yard in the bank, a yard on the truck and a yard in place are three different yards.",
    "Cut is fill only if it is fit: no topsoil, roots, wet clay or frozen lumps.",
    "How sure the figures are stands below them; ground outside the shots is guessed.",
  ],
  slips: [
    "Compacted volume was ordered as loose, and the last loads were missing.",
    "The topsoil heap lies where the swale or the drive comes.",
    "Fill was tipped in one go and rolled on top: it settles for years.",
  ],
  cautions: [
    "Never bury stumps, brush or topsoil under a slab or a footing.",
    "Keep raised truck beds and booms away from overhead lines, and wheels from fresh edges.",
  ],
  caption: "The same earth three times: in the bank, loose on the truck, compacted in place.",
};

export const setout: StepGuide = {
  title: "Setting out from the mark",
  about: "One reading on the [[benchmark]], and every height is a [[reading]] to look for.",
  doing: [
    "Set the laser up and read the mark. Type what the rod says.",
    "For each height, hold the rod and move it up or down until it shows the reading in the list.",
    "Mark it: a nail, a line on a form, a [[hub]] with a [[lath]] that says what it counts from.",
    "Read the mark again at the end of the day.",
  ],
  watch: [
    "Strings on [[batter boards|batter board]] outlast the corner stakes.",
    "An [[offset stake]] says how far and which way. On a slope its ground isn't the corner's ground.",
    "Check the mark against its spare before each day's work.",
  ],
  slips: [
    "Yesterday's readings were used with today's laser: every one is off by the same amount.",
    "A cut at the stake was taken for the cut at the corner.",
    "A stake says “down 3 ft” and nobody knows from what.",
  ],
  cautions: [
    "A laser or a mark that moved puts every height wrong: nothing in the list would show it.",
    "Don't look into the beam. Keep out of a machine's swing while holding the rod.",
  ],
  caption: "The reading to look for = today's beam − the height wanted.",
};

export const sheets: StepGuide = {
  title: "On paper",
  about:
    "A drawing for each one who digs, pours, delivers or inspects, and who wasn't there when you decided.",
  doing: [
    "Choose the paper; the scale follows, and is one that a ruler knows.",
    "Fill in the title block, with a date or a revision that you will recognise.",
    "Print at full size, and measure the scale bar with a ruler.",
    "Export again when something changed, and collect the old copies.",
  ],
  watch: [
    "Heights on the sheet are told from the mark; the one who reads it must be able to find the mark.",
    "A printer that fits the page to the paper spoils the scale: print at 100 %.",
  ],
  slips: [
    "The crew works from last week's print.",
    "A copy without colour hides what only colour said: the sheet says it in words too.",
  ],
  cautions: [
    "A drawing doesn't replace a permit, a survey, an engineer's design or a check on site.",
    "Have buried lines located before any digging.",
  ],
  caption: "Plan, bar of scale, north and title block: enough for someone who has never seen the place.",
};
