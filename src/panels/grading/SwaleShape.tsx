/** How a swale's bed runs and what its section is. */
import { type Swale, siteEdits } from "../../document";
import { run, tryRun } from "../../store/actions";
import { Choice } from "../fields/Choice";
import { SlopeField } from "../fields/fields";

const shapes = [
  { value: "trapezoid", words: "flat bottom" },
  { value: "dish", words: "smooth dish" },
] as const;

export function SwaleShape({ swale }: { swale: Swale }) {
  const { id } = swale;
  const follow = (leastFall: number | null) => tryRun(siteEdits.changeSwale, { id, patch: { leastFall } });
  return (
    <>
      <Choice
        label="Section"
        value={swale.shape}
        options={shapes}
        onChoose={(shape) => run(siteEdits.changeSwale, { id, patch: { shape } })}
      />
      <SlopeField
        label="Follow the ground, falling at least"
        ratio={swale.leastFall}
        placeholder="an even fall"
        onEmpty={() => follow(null)}
        onCommit={(leastFall) => follow(leastFall)}
      />
    </>
  );
}
