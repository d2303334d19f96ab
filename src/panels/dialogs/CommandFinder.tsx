import { type KeyboardEvent, useId, useState } from "react";
import { Dialog, Modal, ModalOverlay } from "react-aria-components";
import { openDialog } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import type { AppCommand, RunCommand } from "../command";
import { Icon } from "../icons";
import { keysText, onMac } from "../keys";
import { findCommands } from "./find";

interface CommandFinderProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

/** Type a few letters, Enter does it. */
export function CommandFinder({ commands, run }: CommandFinderProps) {
  const open = useApp((state) => state.dialog === "commands");
  return (
    <ModalOverlay
      className="overlay overlay-high"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "commands" : null)}
      isDismissable
    >
      <Modal className="modal finder">
        <Dialog className="finder-dialog" aria-label="Find a command">
          <Finder commands={commands} run={run} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Finder({ commands, run }: CommandFinderProps) {
  const listId = useId();
  const [typed, setTyped] = useState("");
  const [at, setAt] = useState(0);
  const found = findCommands(commands, typed).filter(
    (command) => command.id !== "help.find" && canRun(command),
  );
  const present = Math.min(at, found.length - 1);
  const choose = (command: AppCommand | undefined) => {
    if (!command) return;
    openDialog(null);
    run(command.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (by !== 0) {
      event.preventDefault();
      setAt((present + by + found.length) % Math.max(1, found.length));
    } else if (event.key === "Enter") {
      event.preventDefault();
      choose(found[present]);
    }
  };
  return (
    <>
      <div className="finder-field">
        <Icon name="find" />
        <input
          // biome-ignore lint/a11y/noAutofocus: the dialog is opened in order to type here
          autoFocus
          role="combobox"
          aria-label="Find a command"
          aria-expanded="true"
          aria-controls={listId}
          aria-activedescendant={found[present] ? `${listId}-${present}` : undefined}
          placeholder="What do you want to do?"
          value={typed}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            setAt(0);
          }}
          onKeyDown={onKeyDown}
        />
      </div>
      <div className="finder-list" id={listId} role="listbox" aria-label="Commands">
        {found.map((command, index) => (
          <FinderRow
            key={command.id}
            id={`${listId}-${index}`}
            command={command}
            here={index === present}
            onChoose={() => choose(command)}
          />
        ))}
        {found.length === 0 ? <p className="finder-none soft">No command has these words.</p> : null}
      </div>
    </>
  );
}

function canRun(command: AppCommand): boolean {
  return command.enabled?.(appStore.getState()) ?? true;
}

interface FinderRowProps {
  readonly id: string;
  readonly command: AppCommand;
  readonly here: boolean;
  readonly onChoose: () => void;
}

function FinderRow({ id, command, here, onChoose }: FinderRowProps) {
  const keys = command.keys?.[0];
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys go to the field above, which names this row as active
    <div
      id={id}
      className={`finder-row${here ? " finder-here" : ""}`}
      role="option"
      aria-selected={here}
      tabIndex={-1}
      onClick={onChoose}
      ref={(row) => {
        if (here) row?.scrollIntoView?.({ block: "nearest" });
      }}
    >
      <span>{command.name}</span>
      <span className="finder-place soft small">{command.place}</span>
      {keys ? <kbd>{keysText(keys, onMac())}</kbd> : null}
    </div>
  );
}
