/** The level run as a page that could be printed: both forms of one book, its checks, how well it closes. */
import { useState } from "react";
import { Heading, Tab, TabList, TabPanel, Tabs } from "react-aria-components";
import { surveyEdits } from "../../document";
import { run } from "../../store/actions";
import { misclosureClasses, type Spread } from "../../survey";
import { Choice, Toggle } from "../fields/Choice";
import { Icon } from "../icons";
import { FigureTable } from "../parts";
import { useNotation, useProject } from "../useProject";
import { checkWords, closesWords, type PageForm, pageCells, pageHeads, pageSums, runPage } from "./levelRun";

const spreads: readonly { value: Spread; words: string }[] = [
  { value: "setups", words: "equally over the set-ups" },
  { value: "distance", words: "by the length of the sights" },
];

export function LevelRun() {
  const project = useProject((present) => present);
  const notation = useNotation();
  const [spread, setSpread] = useState<Spread>("setups");
  const made = runPage(project, spread);
  const { misclosureClass, longSights } = project.survey;
  return (
    <>
      <Heading slot="title" className="dialog-title">
        Level run
      </Heading>
      <p className="soft">
        The same book in both of its usual forms. Readings are told as distances below the beam; second looks
        and rows set aside are left out.
      </p>
      {made.ok ? (
        <>
          <Closing closes={closesWords(project, made.page, notation)} />
          <Tabs className="tabs survey-tabs">
            <TabList className="tab-list" aria-label="Form of the page">
              <Tab className="tab" id="instrument">
                Height of instrument
              </Tab>
              <Tab className="tab" id="rise">
                Rise and fall
              </Tab>
            </TabList>
            {(["instrument", "rise"] as const).map((form) => (
              <TabPanel key={form} className="tab-panel" id={form}>
                <Page form={form} page={made.page} />
              </TabPanel>
            ))}
          </Tabs>
        </>
      ) : (
        <ul className="survey-faults">
          {made.whys.map((why) => (
            <li key={why}>{why}</li>
          ))}
        </ul>
      )}
      <div className="survey-choices">
        <Choice
          label="How exact it must be"
          value={misclosureClass}
          options={misclosureClasses.map(({ id, name }) => ({ value: id, words: name }))}
          onChoose={(id) => run(surveyEdits.setMisclosureClass, { id })}
          help={misclosureClasses.find(({ id }) => id === misclosureClass)?.source}
        />
        <Choice
          label="What it misses is spread"
          value={spread}
          options={spreads}
          onChoose={setSpread}
          help={
            spread === "distance" && made.ok && made.page.book.spread !== "distance"
              ? "Not every sight's length is known, so it is spread equally."
              : undefined
          }
        />
        <Toggle
          label="Correct long sights for the earth's curve and refraction"
          on={longSights}
          onToggle={(on) => run(surveyEdits.setLongSights, { on })}
        />
      </div>
    </>
  );
}

function Page({
  form,
  page,
}: {
  form: PageForm;
  page: Extract<ReturnType<typeof runPage>, { ok: true }>["page"];
}) {
  const notation = useNotation();
  const rows = [...page.rows.map((row) => pageCells(row, form, notation)), pageSums(page, form, notation)];
  return (
    <div className="survey-page">
      <p className={page.checks ? "survey-check" : "survey-check survey-check-bad"}>
        <Icon name={page.checks ? "check" : "warn"} />
        {checkWords(page, form, notation)}
      </p>
      <FigureTable
        label={form === "instrument" ? "Page by height of instrument" : "Page by rise and fall"}
        heads={pageHeads[form]}
        rows={rows}
        marked={new Set([rows.length - 1])}
      />
    </div>
  );
}

function Closing({ closes: { within, words } }: { closes: ReturnType<typeof closesWords> }) {
  const icon = within === null ? "note" : within ? "check" : "warn";
  return (
    <p className={within === false ? "survey-check survey-check-bad" : "survey-check"} role="status">
      <Icon name={icon} />
      {words}
    </p>
  );
}
