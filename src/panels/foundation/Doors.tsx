/** Each door's sill against the ground and the drive outside, and the steps it needs. */
import type { DoorLevels } from "../../solve/results";
import type { Notation } from "../notation";
import { Facts, Section } from "../parts";
import { useNotation, useResults } from "../useProject";

const noDoors: readonly DoorLevels[] = [];

export function Doors() {
  const doors = useResults((results) => results.foundation?.doors ?? noDoors);
  const notation = useNotation();
  if (doors.length === 0) return null;
  return (
    <Section title="Doors">
      {doors.map((door) => (
        <div key={door.id} className="foundation-door">
          <p className="small">
            <strong>{door.name}</strong>, wall {door.wallName}
          </p>
          <Facts facts={factsOf(door, notation)} />
        </div>
      ))}
    </Section>
  );
}

function factsOf({ drop, drive, apronFall, steps }: DoorLevels, notation: Notation) {
  const outside = {
    name: "Sill above the ground outside",
    figure: drop < 0 ? `${notation.length(-drop)} below` : notation.length(drop),
  };
  if (drive)
    return [
      outside,
      { name: `Sill above the end of ${drive.name}`, figure: notation.length(drive.lip) },
      {
        name: "Landing",
        figure: notation.length(drive.landing),
        note: `falls ${notation.slope(drive.landingFall)}`,
      },
      { name: "Steepest", figure: notation.slope(drive.steepest) },
      {
        name: "Change of grade",
        figure: `${notation.slope(drive.breakAtLanding)}, ${notation.slope(drive.breakAtRoad)}`,
        note: "at the landing, at the road",
      },
    ];
  const out = { name: "Ground falls away", figure: notation.slope(apronFall) };
  if (!steps) return [outside, out];
  return [
    outside,
    out,
    {
      name: "Steps",
      figure: `${steps.risers} of ${notation.length(steps.rise)}`,
      note: `treads ${notation.length(steps.tread)}, ${notation.length(steps.run)} out from a landing of ${notation.length(steps.landing)}`,
    },
  ];
}
