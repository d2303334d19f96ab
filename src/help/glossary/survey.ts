/** Words of laser, rod and heights. */
import type { Term } from "./term";

export const surveyTerms: readonly Term[] = [
  {
    name: "backsight",
    also: ["first reading on the mark"],
    meaning:
      "The reading on a point whose height is known already. It gives the [[beam height]]: known height plus reading.",
  },
  {
    name: "beam height",
    also: ["height of instrument", "height of collimation", "plane of collimation"],
    meaning:
      "The height of the laser's level plane in this plan. Any height is the beam less the [[reading]] there. It holds only until the laser is moved or knocked.",
  },
  {
    name: "benchmark",
    also: ["mark", "reference mark", "temporary benchmark"],
    meaning:
      "A point that stays put and has a height: a bolt in a ledge, a spike in a pole, a corner of an old slab. All heights are told from it, so it stands outside the dig, and has a spare.",
  },
  {
    name: "closing",
    also: ["misclosure", "second look at the mark"],
    meaning:
      "Reading the [[benchmark]] once more at the end. A different [[reading]] tells that the laser moved, and by how much; the shots since the last good look are in doubt.",
  },
  {
    name: "collimation error",
    also: ["level out of true"],
    meaning:
      "A beam that isn't truly level. Its fault grows with the distance, so points at like distances suffer alike. The [[two-peg check]] finds it.",
  },
  {
    name: "datum",
    also: ["level datum"],
    meaning:
      "What a height of zero, or of 100, stands for. A plan may have its own: here it is whatever height you gave the [[benchmark]].",
  },
  {
    name: "foresight",
    meaning:
      "The last reading of a set-up, on the point that carries the height on to the next set-up, the [[turning point]].",
  },
  {
    name: "ground shot",
    also: ["shot", "intermediate sight", "spot height"],
    meaning:
      "A [[reading]] with the rod on bare ground, with its place. Three of them make a surface; more where the ground bends make a better one.",
  },
  {
    name: "laser receiver",
    also: ["detector"],
    meaning:
      "The box on the rod that finds the beam in sunlight. Read the rod always at the same line of it; a different line puts a constant into the readings.",
  },
  {
    name: "level line",
    meaning:
      "A line with the same height all along. Tapes are held along it: a tape laid on a slope measures too much.",
  },
  {
    name: "reading",
    also: ["staff reading", "rod reading"],
    meaning:
      "How far the beam passes above the foot of the [[rod]]. A bigger reading is lower ground: it is counted down from the beam.",
  },
  {
    name: "reduced level",
    also: ["elevation", "level"],
    meaning:
      "The height worked out from a [[reading]]: [[beam height]] less reading, in the plan's [[datum]].",
  },
  {
    name: "rod",
    also: ["staff", "story pole", "tape on a stick"],
    meaning:
      "What stands on the point and is read at the beam: a graded rod, or a tape fixed to a straight stick. Rods in tenths of a foot and tapes in inches look alike and aren't.",
  },
  {
    name: "set-up",
    also: ["station of the laser"],
    meaning:
      "The laser in one place, from one putting down to the next. Each has its own [[beam height]], given by a reading on the [[benchmark]] or on a [[turning point]].",
  },
  {
    name: "turning point",
    also: ["change point"],
    meaning:
      "A hard point that is read from two [[set-ups|set-up]], and so hands the height from one to the next. Rock or the head of a stake; never grass.",
  },
  {
    name: "two-peg check",
    also: ["two-peg test"],
    meaning:
      "Two stakes read from midway, then from beside one. The difference in height must come out the same; if not, the beam isn't level.",
  },
];
