import { siteEdits } from "../../document";
import { tryRun } from "../../store/actions";
import { CUBIC_YARD } from "../../units";
import { Action } from "../fields/Choice";
import { NumberField } from "../fields/fields";
import { LengthField, refusal } from "../fields/LengthField";
import { TypedField } from "../fields/TypedField";
import { useNotation, useProject, useResults } from "../useProject";
import { counted } from "../words";

/** What the earth is counted with: stripping, swell, shrink and the truck. */
export function EarthFields() {
  const materials = useProject((project) => project.materials);
  const truck = useProject((project) => project.truck);
  const notation = useNotation();
  const yards = notation.display.volume === "yd3";
  const unit = yards ? CUBIC_YARD : 1;
  const changeTruck = (text: string): string | null => {
    const number = Number(text.replace(/[^\d.,-]/g, "").replace(",", "."));
    if (!(number > 0))
      return `Can't read "${text.trim()}" as a volume. Write a number of ${yards ? "cubic yards" : "cubic metres"}, like 12.`;
    return refusal(tryRun(siteEdits.changeTruck, { patch: { volume: number * unit } }));
  };
  return (
    <>
      <LengthField
        label="Strip topsoil"
        small
        m={materials.stripDepth}
        least={0}
        onCommit={(stripDepth) => tryRun(siteEdits.changeMaterials, { patch: { stripDepth } })}
      />
      <StripByPits />
      <NumberField
        label="Swell"
        value={materials.swell}
        help="Loose for one in the bank: loam 1.10 to 1.25, clay 1.25 to 1.40, sand and gravel 1.10 to 1.15."
        onCommit={(swell) => tryRun(siteEdits.changeMaterials, { patch: { swell } })}
      />
      <NumberField
        label="Shrink"
        value={materials.shrink}
        help="Compacted for one in the bank: loam 0.85 to 0.95, clay 0.80 to 0.90, sand and gravel 0.90 to 1."
        onCommit={(shrink) => tryRun(siteEdits.changeMaterials, { patch: { shrink } })}
      />
      <TypedField label="A truck holds, loose" shown={notation.volume(truck.volume)} commit={changeTruck} />
    </>
  );
}

/** What the test pits met, offered for the strip; nothing is taken unasked. */
function StripByPits() {
  const topsoil = useResults(({ pits }) => pits.topsoil);
  const strip = useProject(({ materials }) => materials.stripDepth);
  const notation = useNotation();
  if (topsoil === null) return null;
  const { mean, least, most, count, of } = topsoil;
  const pits = count === of ? counted(of, "test pit") : `${count} of ${counted(of, "test pit")}`;
  const range = count > 1 ? `, from ${notation.length(least)} to ${notation.length(most)}` : "";
  const taken = Math.abs(mean - strip) < 0.0005;
  return (
    <div className="usual">
      <span className="soft small">
        {`${pits}: ${notation.length(mean)} of topsoil${count > 1 ? " on average" : ""}${range}.`}
        {taken ? " The strip goes by it." : ""}
      </span>
      {taken ? null : (
        <Action
          look="quiet"
          onPress={() => tryRun(siteEdits.changeMaterials, { patch: { stripDepth: mean } })}
        >
          {`Take ${notation.length(mean)}`}
        </Action>
      )}
    </div>
  );
}
