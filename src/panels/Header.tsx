/** The window's head: which plan this is, whether it is saved, and the acts of every moment. */
import {
  Button,
  Menu,
  MenuItem,
  MenuTrigger,
  Popover,
  Separator,
  SubmenuTrigger,
} from "react-aria-components";
import { redoLabel, siteEdits, undoLabel } from "../document";
import { tryRun } from "../store/actions";
import { isDirty } from "../store/store";
import { useApp } from "../store/useApp";
import { type AppCommand, canRun, menuPlaces, type RunCommand } from "./command";
import { IconAction } from "./fields/Choice";
import { refusal } from "./fields/LengthField";
import { TypedField } from "./fields/TypedField";
import { HelpMenu } from "./help/HelpMenu";
import { Icon, Logo } from "./icons";
import { keysText, onMac } from "./keys";
import { savedWords } from "./savedWords";
import { UnitsMenu } from "./UnitsMenu";
import { useProject } from "./useProject";

export interface HeaderProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

export function Header({ commands, run }: HeaderProps) {
  const built = useProject(({ building }) => building !== null);
  return (
    <header className="head">
      <PlanMenu commands={commands} run={run} />
      <PlanName />
      <SavedState />
      <span className="head-gap" />
      <UndoButtons run={run} />
      <UnitsMenu run={run} />
      <Button className="button button-plain" onPress={() => run("help.find")}>
        <Icon name="find" />
        <span className="button-word">Find a command</span>
        <kbd>{keysText("Mod+K", onMac())}</kbd>
      </Button>
      <HelpMenu commands={commands} run={run} />
      <ThemeButton run={run} />
      <Button
        className="button button-accent"
        data-tour="sheets"
        isDisabled={!built}
        onPress={() => run("plan.exportSitePlan")}
      >
        <Icon name="sheet" />
        <span>Site plan…</span>
      </Button>
    </header>
  );
}

/** Every command has its place here: those of the plan at once, the others a step further. */
function PlanMenu({ commands, run }: HeaderProps) {
  const own = commands.filter((command) => command.place === "Plan");
  return (
    <MenuTrigger>
      <Button
        className="logo-button"
        aria-label="Plan menu: new, open, save, export, and every other command"
      >
        <Logo />
        <Icon name="down" />
      </Button>
      <Popover className="popover" placement="bottom start">
        <Menu className="list" onAction={(key) => run(String(key))} aria-label="Plan">
          {own.map((command) => (
            <CommandItem key={command.id} command={command} />
          ))}
          <Separator className="list-rule" />
          {menuPlaces
            .filter((place) => place !== "Plan")
            .map((place) => (
              <SubmenuTrigger key={place}>
                <MenuItem className="list-item" textValue={place}>
                  <span>{place}</span>
                  <Icon name="right" />
                </MenuItem>
                <Popover className="popover">
                  <Menu className="list" onAction={(key) => run(String(key))} aria-label={place}>
                    {commands
                      .filter((command) => command.place === place && !command.finderOnly)
                      .map((command) => (
                        <CommandItem key={command.id} command={command} />
                      ))}
                  </Menu>
                </Popover>
              </SubmenuTrigger>
            ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

function CommandItem({ command }: { command: AppCommand }) {
  const enabled = useApp((state) => canRun(command, state));
  const first = command.keys?.[0];
  return (
    <MenuItem className="list-item" id={command.id} isDisabled={!enabled} textValue={command.name}>
      <span>{command.name}</span>
      {first ? <kbd>{keysText(first, onMac())}</kbd> : null}
    </MenuItem>
  );
}

function PlanName() {
  const name = useProject((project) => project.name);
  return (
    <div className="plan-name" style={{ width: `calc(${Math.max(8, name.length)}ch + 28px)` }}>
      <h1 className="visually-hidden">{name}</h1>
      <TypedField
        label="Name of the plan"
        layout="bare"
        shown={name}
        commit={(typed) => refusal(tryRun(siteEdits.renameProject, { name: typed }))}
      />
    </div>
  );
}

function SavedState() {
  const dirty = useApp(isDirty);
  const file = useApp((state) => state.file);
  const { words, more } = savedWords(dirty, file);
  return (
    <span className={`saved${dirty ? " saved-not" : ""}`} title={more} aria-live="polite">
      {words}
    </span>
  );
}

function UndoButtons({ run }: { run: RunCommand }) {
  const undo = useApp((state) => undoLabel(state.history));
  const redo = useApp((state) => redoLabel(state.history));
  return (
    <div className="undo">
      <Button
        className="button button-plain undo-button"
        isDisabled={undo === null}
        onPress={() => run("edit.undo")}
      >
        <Icon name="undo" />
        <span className="undo-words button-word">{undo === null ? "Undo" : `Undo: ${undo}`}</span>
      </Button>
      <Button
        className="button button-plain redo-button"
        isDisabled={redo === null}
        onPress={() => run("edit.redo")}
        aria-label={redo === null ? "Redo" : `Redo: ${redo}`}
      >
        <Icon name="redo" />
      </Button>
      <IconAction
        icon="history"
        label="History: every step by its name"
        onPress={() => run("edit.history")}
      />
    </div>
  );
}

function ThemeButton({ run }: { run: RunCommand }) {
  const theme = useApp((state) => state.theme);
  const icon = ({ light: "sun", dark: "moon", system: "system" } as const)[theme];
  return (
    <IconAction
      icon={icon}
      label={`Theme: ${theme === "system" ? "as the system" : theme}. Change it`}
      onPress={() => run("view.theme")}
    />
  );
}
