/** Words of earth, slopes and water. */
import type { Term } from "./term";

export const groundTerms: readonly Term[] = [
  {
    name: "apron",
    also: ["ground round the walls"],
    meaning:
      "The strip along the walls that is shaped so that rain runs off them. At a door also the paved piece in front of it.",
  },
  {
    name: "balance",
    also: ["cut and fill balance"],
    meaning:
      "What is left over, or short, if all the [[cut]] is used as [[fill]]. The fill is first counted back into ground as it lies, for earth packs closer when it is compacted.",
  },
  {
    name: "bank measure",
    also: ["bank yard", "bank volume", "in the bank"],
    meaning:
      "Earth as it lies in the ground before it is dug. A bank yard is less than a [[loose|loose measure]] one.",
  },
  {
    name: "bench",
    also: ["benching"],
    meaning:
      "Level steps cut into a hillside before fill is laid on it. Fill on a smooth slope can slide; on benches it is keyed in.",
  },
  {
    name: "berm",
    also: ["bund"],
    meaning: "A low ridge of earth that turns water aside. Often it lies on the low side of a [[swale]].",
  },
  {
    name: "borrow",
    also: ["brought-in earth"],
    meaning: "Earth or stone that is brought in because the [[cut]] isn't enough or isn't fit.",
  },
  {
    name: "catch point",
    also: ["toe", "where the slope ends"],
    meaning:
      "Where a side slope meets the ground as it is. On ground nearly as steep as the slope it lies far out, or never comes.",
  },
  {
    name: "compacted measure",
    also: ["in place"],
    meaning: "Earth after rolling or tamping, the room that the [[fill]] takes in the end.",
  },
  {
    name: "contour",
    meaning:
      "A line through places of one height. Close lines are steep ground, water runs straight across them, and they bend uphill in a valley.",
  },
  {
    name: "culvert",
    meaning: "A pipe under a drive that lets a [[swale]] or ditch through. Without it the drive is a dam.",
  },
  {
    name: "cut",
    also: ["dig"],
    meaning: "Where the finished ground lies below the ground as it is, and how much.",
  },
  {
    name: "daylight",
    also: ["outfall", "come out"],
    meaning:
      "To come out at the surface: where a pipe, a [[swale]]'s bed or a slope meets the ground and ends.",
  },
  {
    name: "fall",
    also: ["gradient", "grade of a slope"],
    meaning: "How much a line drops over a distance: 2 % is two of drop for a hundred along, measured level.",
  },
  {
    name: "fill",
    meaning:
      "Where the finished ground lies above the ground as it is, and what is put there. It is laid in [[lifts|lift]].",
  },
  {
    name: "grade",
    also: ["ground level", "finished grade", "existing grade"],
    meaning:
      "Said of the ground's surface, of a slope, and of a planned height. Ask which one is meant; here they are called ground, fall and height.",
  },
  {
    name: "lift",
    also: ["layer"],
    meaning:
      "One layer of [[fill]], thin enough for the machine to compact all of it: 6 to 8 in (150 to 200 mm) loose is usual for a plate or small roller.",
  },
  {
    name: "loose measure",
    also: ["loose yard", "loose volume"],
    meaning:
      "Earth as it lies on the truck. Loads are counted in it; it is more than the same earth in the bank by the [[swell]].",
  },
  {
    name: "low place",
    also: ["pond", "depression"],
    meaning: "Ground with no way out for water: rain stands in it until it is high enough to spill.",
  },
  {
    name: "riprap",
    also: ["rock armour"],
    meaning: "Heavy stone laid where running water would carry earth away, as at the end of a pipe.",
  },
  {
    name: "shrink",
    meaning:
      "How much of its bank volume earth keeps once compacted, as 0.9. Dividing the [[fill]] by it tells how much bank earth it takes.",
  },
  {
    name: "side slope",
    also: ["batter", "embankment"],
    meaning:
      "The slope at the edge of a fill or cut, written as run for one of rise: 3:1 can be mown, 2:1 is about the steepest for earth.",
  },
  {
    name: "spoil",
    also: ["muck"],
    meaning: "What was dug and lies in the way. It stays back from the edge of a trench.",
  },
  {
    name: "strip",
    also: ["topsoil strip", "sod"],
    meaning:
      "Taking turf and dark soil off before anything is built: it rots and settles. It is heaped up and put back on top at the end.",
  },
  {
    name: "swale",
    also: ["grassed channel", "spoon drain"],
    meaning:
      "A wide, shallow ditch in grass that leads the hill's water round the building. Its bed falls all the way to where it comes out; a level one is a pond.",
  },
  {
    name: "swell",
    also: ["bulking"],
    meaning:
      "How much room earth takes once dug, for one in the bank: 1.25 means a quarter more on the truck.",
  },
  {
    name: "undisturbed ground",
    also: ["natural ground", "virgin soil"],
    meaning:
      "Ground that was never dug or filled. Footings stand on it; not on topsoil, and not on earth that was put back.",
  },
];
