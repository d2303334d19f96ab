/** Guides to the steps that shape the ground: drive, water, floor. */
import type { StepGuide } from "./guide";

export const drive: StepGuide = {
  title: "The drive",
  about: "From the road to the door, and how steep that makes it.",
  doing: [
    "Draw the centreline from the road's edge to the door. It ends on the [[landing]] before the door.",
    "Type the road's height if you read it; else the ground there is taken.",
    "Look at the steepest piece. Lengthen the way with a bend, lower the floor, or accept it knowingly.",
  ],
  watch: [
    "Up to 8 % is easy, 10 to 12 % is a usual limit, and more needs care with ice and trailers.",
    "Where level and steep meet, long vehicles scrape: ease the change over 10 to 20 ft (3 to 6 m).",
    "The landing falls away from the door a little, 1 to 2 %.",
  ],
  slips: [
    "A drive that falls to the door leads the hill's water in: it needs a drain across it.",
    "The drive dams the [[swale]]: a [[culvert]] or a dip has to let the water through.",
    "The loaded truck can't turn or climb what the car can.",
  ],
  cautions: [
    "The road's owner permits the entrance, its [[culvert]] and its first stretch; a long drive may need to carry a fire engine.",
    "Machines go straight up and down a slope, not across it, and keep off fresh edges.",
  ],
  caption: "Rise over level distance is the grade. The landing stays nearly level.",
};

export const water: StepGuide = {
  title: "Water round the walls",
  about: "Rain has to run off every wall, and what comes down the hill has to go round the building.",
  doing: [
    "Shape the [[apron]]: 6 in of fall within 10 ft (150 mm in 3 m) of earth is the usual rule (IRC R401.3), 2 % on a hard surface.",
    "Uphill, draw a [[swale]] from its high end to where it comes out. It should fall all the way.",
    "Look at each wall's line: does it fall away, and over what width?",
    "Look at the [[low places|low place]], and give each a way out or accept the puddle.",
  ],
  watch: [
    "A swale's bed wants 1 % at least, 2 % is better; beyond 4 or 5 % bare earth washes out.",
    "Keep the swale 10 ft (3 m) off the wall where there is room.",
    "On ground nearly as steep as its [[side slope]], a slope runs out very far: look where its [[toe|catch point]] comes.",
  ],
  slips: [
    "The swale is level: it is a pond.",
    "The swale has no outlet lower than its start, or the outlet is the neighbour's.",
    "Downspouts empty at the corner of the footing. An inch of rain on a 32 × 48 ft roof is some 950 US gallons.",
  ],
  cautions: [
    "Don't send water to a neighbour, a road, or a septic field. Moving an outlet can be a matter of law.",
    "Wet land, streams and larger areas of bare earth may need a permit.",
  ],
  caption:
    "Uphill: apron down to the swale, swale round the building. Downhill: apron, then the side slope to the ground.",
};

export const floor: StepGuide = {
  title: "Choosing the floor",
  about:
    "The one height that everything else follows. Too low lets water in; too high costs wall, [[fill]] and drive.",
  doing: [
    "Begin with the high corner about a foot (300 mm) out of the ground.",
    "Drag the floor on the rod. Watch the low corner, the drive and the loads while you move it.",
    "Read what limits it: each limit names the place that makes it so, its value and its source.",
    "Settle it, and write down why.",
  ],
  watch: [
    "The high corner looks harmless; the low corner decides the cost.",
    "Deep fill under a [[slab]] settles unless it is laid in [[lifts|lift]] and compacted.",
    "Each inch has its price in loads: it stands below the curve.",
  ],
  slips: [
    "The floor was set from the low side, and the uphill wall stands in water.",
    "[[Top of wall]], [[finished floor]] and top of stone were mixed up.",
  ],
  cautions: [
    "The limits are usual rules, not those of your place: local code and its officials decide.",
    "Fill under a slab beyond 24 in of sand or gravel, or 8 in of earth, needs approval (IRC R506.2.1).",
  ],
  caption: "One level floor over falling ground: little shows at the high corner, much at the low one.",
};
