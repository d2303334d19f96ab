import { type Display, type Project, siteEdits } from "../../document";
import { run as runEdit, tryRun } from "../../store/actions";
import { Action, Choice } from "../fields/Choice";
import { WordsField } from "../fields/fields";
import { Caution, Guide, Panel, Section } from "../parts";
import type { StepPanelProps } from "../SidePanel";
import { useProject, useResults } from "../useProject";

export const paperOptions: readonly { value: Display["paper"]; words: string }[] = [
  { value: "letter", words: "Letter, 8½ × 11 in" },
  { value: "tabloid", words: "Tabloid, 11 × 17 in" },
  { value: "a4", words: "A4, 210 × 297 mm" },
  { value: "a3", words: "A3, 297 × 420 mm" },
];

export function SheetsPanel({ run }: StepPanelProps) {
  const ready = useProject(({ building }) => building !== null);
  const ground = useResults((results) => results.ground !== null);
  return (
    <Panel step="sheets" purpose="On paper, for the people who dig, pour and inspect.">
      <Section title="Site plan">
        {ready && ground ? (
          <p className="soft small">
            Lot, north, building with its sizes, drive, swales, contours, cut and fill in words, and a table
            of heights from the mark, at a true scale.
          </p>
        ) : (
          <Guide title="Not much to print yet">
            <p>The site plan needs a ground and a building.</p>
          </Guide>
        )}
        <PaperChoice />
        <Action icon="sheet" look="accent" isDisabled={!ready} onPress={() => run("plan.exportSitePlan")}>
          Export the site plan…
        </Action>
      </Section>
      <Section title="Foundation">
        <p className="soft small">
          Walls in elevation, sections with their dimensions, corners, and what it takes, at true scales.
        </p>
        <Action icon="sheet" isDisabled={!(ready && ground)} onPress={() => run("plan.exportFoundation")}>
          Export the foundation sheet…
        </Action>
      </Section>
      <TitleBlock />
      <Caution>
        A drawing doesn't replace a permit, a survey or a check on site. Have buried lines located before any
        digging.
      </Caution>
    </Panel>
  );
}

/** `note` tells what each paper would give. */
export function PaperChoice({ note }: { note?: (paper: Display["paper"]) => string }) {
  const paper = useProject(({ display }) => display.paper);
  return (
    <Choice
      label="Paper"
      layout="stack"
      value={paper}
      options={
        note
          ? paperOptions.map(({ value, words }) => ({ value, words: `${words}: ${note(value)}` }))
          : paperOptions
      }
      onChoose={(chosen) => runEdit(siteEdits.changeDisplay, { patch: { paper: chosen } })}
    />
  );
}

export function TitleBlock() {
  const name = useProject((project) => project.name);
  const title = useProject((project) => project.title);
  const change = (patch: Partial<Project["title"]>) => tryRun(siteEdits.changeTitle, { patch });
  return (
    <Section title="Title block">
      <WordsField
        label="Plan"
        text={name}
        onCommit={(typed) => tryRun(siteEdits.renameProject, { name: typed })}
      />
      <WordsField label="Owner" text={title.owner} onCommit={(owner) => change({ owner })} />
      <WordsField label="Place" text={title.place} onCommit={(place) => change({ place })} />
      <WordsField label="Drawn by" text={title.drawnBy} onCommit={(drawnBy) => change({ drawnBy })} />
      <WordsField label="Revision" text={title.revision} onCommit={(revision) => change({ revision })} />
    </Section>
  );
}
