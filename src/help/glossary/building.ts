/** Words of building, foundation and set-out. */
import type { Term } from "./term";

export const buildingTerms: readonly Term[] = [
  {
    name: "anchor bolt",
    also: ["holding-down bolt"],
    meaning: "A bolt cast into the top of the wall, which holds the building down to it.",
  },
  {
    name: "as-built",
    also: ["record drawing", "work as executed"],
    meaning: "What was measured after the work was done, beside what was planned.",
  },
  {
    name: "backfill",
    meaning:
      "Earth put back against a wall. Both sides rise together, in [[lifts|lift]], and not before the wall is cured and held.",
  },
  {
    name: "base course",
    also: ["sub-base", "base stone"],
    meaning:
      "Clean compacted stone right under the slab, 4 in (100 mm) as a rule. It drains and carries evenly.",
  },
  {
    name: "batter board",
    also: ["profile", "profile board"],
    meaning:
      "A level board on stakes outside the dig. Strings between two of them cross over a corner, and can be put back when the corner stake is gone.",
  },
  {
    name: "blockout",
    also: ["door drop"],
    meaning: "A piece of wall left lower for a door. The concrete crew needs its place, width and depth.",
  },
  {
    name: "cover",
    also: ["frost cover"],
    meaning:
      "How much earth lies over the bottom of the [[footing]]. It has to reach below the [[frost depth]].",
  },
  {
    name: "diagonal",
    also: ["diagonals"],
    meaning:
      "From corner to far corner. A rectangle with equal sides is square when both diagonals are alike.",
  },
  {
    name: "easement",
    also: ["wayleave", "right of way"],
    meaning:
      "A strip in which someone else has a right: a line, a pipe, a way. Building there isn't yours to decide.",
  },
  {
    name: "finished floor",
    also: ["FF", "FFL", "floor height"],
    meaning: "The top of the floor that one walks on. It is the height that this program helps to settle.",
  },
  {
    name: "footing",
    also: ["strip footing", "strip foundation"],
    meaning: "The wide base under the wall, which spreads its load. Its bottom is the bottom of the trench.",
  },
  {
    name: "frost depth",
    also: ["frost line"],
    meaning: "How deep the ground freezes in a hard winter. The building office of your place gives it.",
  },
  {
    name: "hub",
    also: ["peg"],
    meaning:
      "A stake driven flush with the ground, whose top carries a height or a point. A [[lath]] beside it tells what it is.",
  },
  {
    name: "invert",
    meaning:
      "The inside bottom of a pipe or channel, along which water runs. Its height is what counts, not the pipe's top.",
  },
  {
    name: "landing",
    meaning:
      "Nearly level ground before a door, so that a car stands and the door opens; a little fall leads water away.",
  },
  {
    name: "lath",
    also: ["marker stake"],
    meaning:
      "A thin tall stake with the words on it: which point, how far off, how much [[cut]] or [[fill]] to what.",
  },
  {
    name: "lot line",
    also: ["property line", "boundary"],
    meaning: "Where a lot ends. A fence doesn't prove it; only a licensed surveyor settles it.",
  },
  {
    name: "offset stake",
    also: ["offset peg", "offset"],
    meaning:
      "A stake moved aside by a round distance, because the point itself will be dug away. It says how far and which way; ground there isn't as high as at the point.",
  },
  {
    name: "over-dig",
    also: ["working space"],
    meaning: "Room dug beyond the outside of the wall so that people and forms fit.",
  },
  {
    name: "retaining wall",
    meaning:
      "A wall with earth higher on one side. It needs more than a wall with earth on both sides; an engineer sizes it from heights that your local code names.",
  },
  {
    name: "setback",
    also: ["building line"],
    meaning:
      "How far a building keeps from a [[lot line]], a road, a well. The permit office tells it, and whether eaves count.",
  },
  {
    name: "set-out",
    also: ["layout", "staking"],
    meaning: "Bringing the plan onto the ground: corners by tape, heights by laser from the [[benchmark]].",
  },
  {
    name: "sill",
    meaning: "The lowest edge of a door or wall frame. Kept above the ground and the water, it stays dry.",
  },
  {
    name: "slab",
    also: ["slab on ground", "slab on grade"],
    meaning:
      "The concrete floor that lies on the [[base course]]. Its weight is carried by what is below it, so that must not settle.",
  },
  {
    name: "stem wall",
    also: ["foundation wall", "frost wall", "rising wall"],
    meaning:
      "The wall from the [[footing]] up to the [[top of wall]]; on falling ground it shows more at the low side.",
  },
  {
    name: "stepped footing",
    also: ["step footing", "stepped foundation"],
    meaning:
      "A footing that goes down a slope in level steps where one level footing would be too deep at the high side or too shallow at the low one.",
  },
  {
    name: "three-four-five",
    also: ["3-4-5"],
    meaning:
      "A triangle with sides of 3, 4 and 5 has a right angle. The largest multiple that fits squares a corner best.",
  },
  {
    name: "top of wall",
    also: ["TOW"],
    meaning:
      "The top of the foundation wall. Forms are set to it; trench, footing and floor are told from it.",
  },
  {
    name: "trench",
    meaning:
      "The ditch for the [[footing]]. Its walls can cave without a sign: protect them at 5 ft (1.5 m) or deeper, and shallower where the soil is bad (OSHA 29 CFR 1926.652).",
  },
  {
    name: "unbalanced fill",
    meaning:
      "How much higher the earth stands on one side of a wall than on the other: the push that the wall has to bear.",
  },
];
