import { Dialog, Heading, Modal, ModalOverlay, Tab, TabList, TabPanel, Tabs } from "react-aria-components";
import { type Display, type LengthNotation, siteEdits } from "../../document";
import { openDialog, run } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, Choice } from "../fields/Choice";
import { useNotation } from "../useProject";
import { OwnPreferences } from "./OwnPreferences";
import { PlanPreferences } from "./PlanPreferences";

const lengths: readonly { value: LengthNotation; words: string }[] = [
  { value: "ft-in", words: "feet and inches" },
  { value: "in", words: "inches" },
  { value: "ft", words: "feet and hundredths" },
  { value: "m", words: "metres" },
  { value: "cm", words: "centimetres" },
  { value: "mm", words: "millimetres" },
];
const areas = [
  { value: "ft2", words: "square feet" },
  { value: "m2", words: "square metres" },
] as const;
const volumes = [
  { value: "yd3", words: "cubic yards" },
  { value: "m3", words: "cubic metres" },
] as const;
const slopes = [
  { value: "percent", words: "percent, 5.0 %" },
  { value: "ratio", words: "one in so much, 1 in 20" },
  { value: "in-per-10ft", words: "inches in ten feet, 6″ in 10′" },
] as const;

/** Smallest part shown, for inches and for decimals. */
const fractions = [2, 4, 8, 16, 32].map((value) => ({ value: String(value), words: `1⁄${value} inch` }));
const decimals = [0, 1, 2, 3].map((value) => ({
  value: String(value),
  words: value === 0 ? "whole numbers" : `${value} decimals`,
}));
const usualRounding: Readonly<Record<LengthNotation, number>> = {
  "ft-in": 8,
  in: 8,
  ft: 2,
  m: 3,
  cm: 1,
  mm: 0,
};

/** What belongs to a person, kept on this computer, and what belongs to the plan, kept in its file. */
export function SettingsDialog({ canReopen }: { canReopen: boolean }) {
  const dialog = useApp((state) => state.dialog);
  const hasPlan = useApp((state) => state.screen === "plan");
  const open = dialog === "settings" || dialog === "preferences";
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => {
        if (!to) openDialog(null);
      }}
      isDismissable
    >
      <Modal className="modal modal-preferences">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Preferences
          </Heading>
          {hasPlan ? (
            <Tabs className="tabs" defaultSelectedKey={dialog === "settings" ? "units" : "own"}>
              <TabList className="tab-list" aria-label="Preferences">
                <Tab className="tab" id="own">
                  Yours
                </Tab>
                <Tab className="tab" id="units">
                  Units of this plan
                </Tab>
                <Tab className="tab" id="work">
                  Paper, rules and earth
                </Tab>
              </TabList>
              <TabPanel className="tab-panel" id="own">
                <OwnPreferences canReopen={canReopen} />
              </TabPanel>
              <TabPanel className="tab-panel" id="units">
                <Units />
              </TabPanel>
              <TabPanel className="tab-panel" id="work">
                <PlanPreferences />
              </TabPanel>
            </Tabs>
          ) : (
            <OwnPreferences canReopen={canReopen} />
          )}
          <div className="dialog-acts">
            <Action look="accent" onPress={() => openDialog(null)}>
              Done
            </Action>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** How this plan writes its figures. What was typed is kept as it was typed. */
function Units() {
  const notation = useNotation();
  const { display } = notation;
  const change = (patch: Partial<Display>) => run(siteEdits.changeDisplay, { patch });
  const inches = display.length === "ft-in" || display.length === "in";
  return (
    <>
      <p className="soft">Only how figures are written changes; nothing that you typed or measured does.</p>
      <div className="part">
        <Choice
          label="Lengths and heights"
          value={display.length}
          options={lengths}
          onChoose={(length) => change({ length, rounding: usualRounding[length] })}
        />
        <Choice
          label="Rounded to"
          value={String(display.rounding)}
          options={inches ? fractions : decimals}
          onChoose={(rounding) => change({ rounding: Number(rounding) })}
          help={`The same length then reads ${notation.length(3.0289)}.`}
        />
        <Choice
          label="Readings at the laser"
          value={display.reading}
          options={lengths}
          onChoose={(reading) => change({ reading })}
        />
        <Choice label="Areas" value={display.area} options={areas} onChoose={(area) => change({ area })} />
        <Choice
          label="Volumes"
          value={display.volume}
          options={volumes}
          onChoose={(volume) => change({ volume })}
        />
        <Choice
          label="Slopes"
          value={display.slope}
          options={slopes}
          onChoose={(slope) => change({ slope })}
        />
      </div>
    </>
  );
}
