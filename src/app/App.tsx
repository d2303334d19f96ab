/** The window: the start screen or the plan, with whatever dialog is open above it. */
import { useCallback } from "react";
import type { Host } from "../host";
import type { AppCommand } from "../panels/command";
import { OptionsDialog } from "../panels/compare/OptionsDialog";
import { CommandFinder } from "../panels/dialogs/CommandFinder";
import { HistoryDialog } from "../panels/dialogs/HistoryDialog";
import { NewPlanDialog } from "../panels/dialogs/NewPlanDialog";
import { ObjectsDialog } from "../panels/dialogs/ObjectsDialog";
import { SettingsDialog } from "../panels/dialogs/SettingsDialog";
import { ShortcutsDialog } from "../panels/dialogs/ShortcutsDialog";
import { TablesDialog } from "../panels/dialogs/TablesDialog";
import { AnswersDialog } from "../panels/help/AnswersDialog";
import { GlossaryDialog } from "../panels/help/GlossaryDialog";
import { GuideDialog } from "../panels/help/GuideDialog";
import { SignsDialog } from "../panels/help/SignsDialog";
import { Tour } from "../panels/help/Tour";
import { Messages } from "../panels/Messages";
import { SurveyDialogs } from "../panels/survey/SurveyDialogs";
import { useApp } from "../store/useApp";
import { AskingDialog } from "./AskingDialog";
import { ExportDialog } from "./ExportDialog";
import type { Files } from "./files";
import { GroundExportDialog } from "./import/GroundExportDialog";
import { ImportDialog } from "./import/ImportDialog";
import { PlanMenu } from "./PlanMenu";
import { PlanScreen } from "./PlanScreen";
import { PageDialog } from "./pictures/PageDialog";
import { runCommand } from "./requests";
import { Start } from "./Start";
import "../panels/shell.css";
import "../panels/rail.css";
import "../panels/messages.css";
import "../panels/controls.css";
import "../panels/fields.css";
import "../panels/lists.css";
import "../panels/panels.css";
import "../panels/checks.css";
import "../panels/floor.css";
import "../panels/dialogs.css";
import "../panels/help/why.css";
import "../panels/help/guide.css";
import "../panels/help/glossary.css";
import "../panels/help/drawings.css";
import "../panels/help/tour.css";
import "../panels/help/answers.css";

export interface AppProps {
  readonly host: Host;
  readonly files: Files;
  readonly commands: readonly AppCommand[];
}

export function App({ host, files, commands }: AppProps) {
  const screen = useApp((state) => state.screen);
  const run = useCallback((id: string) => runCommand(commands, id), [commands]);
  return (
    <>
      {screen === "start" ? (
        <Start host={host} files={files} run={run} />
      ) : (
        <>
          <PlanScreen commands={commands} run={run} />
          <PlanMenu commands={commands} run={run} />
        </>
      )}
      <Messages />
      <CommandFinder commands={commands} run={run} />
      <ShortcutsDialog commands={commands} />
      <HistoryDialog />
      <ObjectsDialog />
      <SettingsDialog canReopen={host.kind === "electron"} />
      <TablesDialog />
      <OptionsDialog />
      <NewPlanDialog onMake={(name, display) => void files.newPlan(name, display)} />
      <ExportDialog files={files} />
      <ImportDialog />
      <GroundExportDialog files={files} />
      <AskingDialog />
      <PageDialog />
      <SurveyDialogs />
      <GuideDialog />
      <AnswersDialog />
      <GlossaryDialog />
      <SignsDialog />
      <Tour />
    </>
  );
}
