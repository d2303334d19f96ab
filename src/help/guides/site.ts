/** Guides to the steps that take in the site: lot, shots, building. */
import type { StepGuide } from "./guide";

export const lot: StepGuide = {
  title: "The lot and what stands on it",
  about: "The lines that you may not cross, and the things that the work must stay clear of.",
  doing: [
    "Draw the [[lot lines|lot line]] by clicking the corners in order, or by typing each length. Take them from the plat or the deed.",
    "Turn north as the plat has it. A compass is good enough for a permit sketch, not for a line.",
    "Put in well, septic field, trees to keep, buried and overhead lines, each with the distance to keep clear.",
  ],
  watch: [
    "A [[setback]] may count from the eaves or the steps, not from the wall. Ask the permit office, and write down who said it.",
    "An [[easement]] crosses a lot without showing on the ground.",
  ],
  slips: [
    "A fence or a mown edge was taken for the lot line.",
    "A length was taped along the slope: it comes out too long. Hold the tape along a [[level line]].",
  ],
  cautions: [
    "Only a licensed surveyor settles where a lot line runs.",
    "Have buried lines located before any digging. Private ones (yard lights, propane, drain tile, a well's wire) aren't marked by the locating service.",
  ],
  caption:
    "The building keeps its distance from lot lines, well and septic field, on the ground and not only on paper.",
};

export const shots: StepGuide = {
  title: "Shooting the ground",
  about:
    "The ground as the laser saw it. A [[reading]] goes down from the beam: the bigger it is, the lower the ground.",
  doing: [
    "Choose a [[benchmark]] outside the dig that nobody will move, and a spare one. Give it a round height, such as 100.",
    "Put the laser where it sees everything, and read the mark first: that gives the [[beam height]].",
    "Read every corner, the middle of long walls, 10 to 30 ft (3 to 9 m) outside each wall, the drive every 20 to 25 ft (6 to 8 m), the road's edge, and wherever the ground bends.",
    "Type each reading as the rod shows it, with its place. The program reduces it.",
    "Read the mark once more at the end. The same? Then the laser stood still.",
  ],
  watch: [
    "Ground outside the outermost shots is guessed, and drawn so. A few shots further out cost minutes.",
    "Moving the laser starts a new [[set-up]]: read the mark again, or a [[turning point]] from both places.",
  ],
  slips: [
    "Inches typed where feet were meant, or tenths of a foot read as inches: 5.2 ft is 5′ 2⅜″.",
    "The rod was read once at the top and once at the bottom of the [[receiver|laser receiver]]'s clamp.",
    "The tripod was bumped at lunch, and nobody read the mark again.",
    "The drive was taken as the mark, and then it was dug away.",
  ],
  cautions: [
    "Don't look into the beam, nor point it at people or the road.",
    "Mind overhead lines with a long rod.",
  ],
  caption:
    "One beam, three readings. Height = beam − reading: at the stake that reads most, the ground is lowest.",
};

export const building: StepGuide = {
  title: "Placing the building",
  about: "The outside of the foundation wall on the ground, and where its doors are.",
  doing: [
    "Pull the building out from corner to corner, or type its two sides. Move and turn it till it feels right: the floor answers at once.",
    "Let the door face the drive, and leave room before it to turn.",
    "Put doors in. A door decides where the drive ends and what the floor means there.",
    "On the ground: measure the sides level, then both [[diagonals|diagonal]], and shift the far side until the diagonals agree.",
  ],
  watch: [
    "Turning the long side along the [[contours|contour]] saves fill and wall.",
    "A few feet uphill or downhill change the load count more than most other choices.",
  ],
  slips: [
    "Inside and outside of the wall were mixed: all sizes here are to the outside.",
    "The tape was pulled along the slope, so the far corners came too near.",
    "The instrument was carried from corner to corner: the errors add. Set out all corners from one place.",
  ],
  cautions: [
    "Setbacks, easements and the septic reserve come before the view. The permit office decides.",
    "Dig test pits before the floor is settled: soft, black or filled ground wants an engineer.",
  ],
  caption: "Equal sides and equal diagonals make it square. Three, four and five make the first corner.",
};
