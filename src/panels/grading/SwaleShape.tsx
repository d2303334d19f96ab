/** How a swale's bed runs and what its section is. */
import { type Swale, siteEdits, usualBottomWidth } from "../../document";
import { run, tryRun } from "../../store/actions";
import { Action, Choice, IconAction } from "../fields/Choice";
import { SlopeField } from "../fields/fields";
import { LengthField } from "../fields/LengthField";
import { useResults } from "../useProject";

const sections = [
  { value: "flat", words: "flat bottom" },
  { value: "vee", words: "V" },
  { value: "dish", words: "smooth dish" },
] as const;

type Section = (typeof sections)[number]["value"];

/** What a section is in the document: a V is a flat bottom without a width. */
const patchOf = (section: Section, { bottomWidth }: Swale): Partial<Swale> => {
  const wide = bottomWidth > 0 ? bottomWidth : usualBottomWidth;
  if (section === "vee") return { shape: "trapezoid", bottomWidth: 0 };
  return { shape: section === "dish" ? "dish" : "trapezoid", bottomWidth: wide };
};

const sectionOf = ({ shape, bottomWidth }: Swale): Section =>
  bottomWidth === 0 ? "vee" : shape === "dish" ? "dish" : "flat";

export function SwaleShape({ swale }: { swale: Swale }) {
  const { id } = swale;
  const section = sectionOf(swale);
  const stations = useResults(({ water }) => water.swales.find((one) => one.id === id)?.stations ?? null);
  const follow = (leastFall: number | null) => tryRun(siteEdits.changeSwale, { id, patch: { leastFall } });
  const setBeds = (beds: Swale["beds"]) => tryRun(siteEdits.changeSwale, { id, patch: { beds } });
  // The middle of the bed as it is: nothing changes until it is typed over.
  const middle = stations?.[Math.floor(stations.length / 2)];
  return (
    <>
      <Choice
        label="Section"
        value={section}
        options={sections}
        onChoose={(to) => run(siteEdits.changeSwale, { id, patch: patchOf(to, swale) })}
      />
      {section === "vee" ? null : (
        <LengthField
          label="Bottom width"
          m={swale.bottomWidth}
          least={0}
          onCommit={(bottomWidth) => tryRun(siteEdits.changeSwale, { id, patch: { bottomWidth } })}
        />
      )}
      <SlopeField
        label="Follow the ground, falling at least"
        ratio={swale.leastFall}
        placeholder="an even fall"
        onEmpty={() => follow(null)}
        onCommit={(leastFall) => follow(leastFall)}
      />
      {swale.beds.map((bed, index) => {
        const change = (patch: Partial<typeof bed>) =>
          setBeds(swale.beds.map((one, i) => (i === index ? { ...one, ...patch } : one)));
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a height is known by its place in the list
          <fieldset className="part-group" key={index} aria-label={`Bed height ${index + 1}`}>
            <LengthField
              label={`Bed ${index + 1} from the high end`}
              m={bed.at}
              least={0}
              onCommit={(at) => change({ at })}
            />
            <LengthField
              label={`Bed ${index + 1} height`}
              m={bed.height}
              onCommit={(height) => change({ height })}
            />
            <IconAction
              icon="trash"
              label={`Remove bed height ${index + 1}`}
              onPress={() => setBeds(swale.beds.filter((_, i) => i !== index))}
            />
          </fieldset>
        );
      })}
      {middle ? (
        <Action
          icon="plus"
          look="quiet"
          onPress={() => setBeds([...swale.beds, { at: middle.distance, height: middle.bed }])}
        >
          Type a height of the bed
        </Action>
      ) : null}
    </>
  );
}
