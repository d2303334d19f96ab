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
  const found = foundNow(commands, typed);
  const present = Math.min(at, found.length - 1);
  const choose = (one: Found | undefined) => {
    if (!one || one.whyNot !== null) return;
    openDialog(null);
    run(one.command.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.nativeEvent.isComposing) return;
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
        {found.map((one, index) => (
          <FinderRow
            key={one.command.id}
            id={`${listId}-${index}`}
            found={one}
            here={index === present}
            onChoose={() => choose(one)}
          />
        ))}
        {found.length === 0 ? <p className="finder-none soft">No command has these words.</p> : null}
      </div>
    </>
  );
}

interface Found {
  readonly command: AppCommand;
  /** Why it can't be done now; null where it can. */
  readonly whyNot: string | null;
}

/** What was found, with what can't be done now at the end. */
function foundNow(commands: readonly AppCommand[], typed: string): readonly Found[] {
  const state = appStore.getState();
  const found = findCommands(commands, typed)
    .filter(({ id }) => id !== "help.find")
    .map((command) => ({ command, whyNot: command.whyNot?.(state) ?? null }));
  return [...found.filter(({ whyNot }) => whyNot === null), ...found.filter(({ whyNot }) => whyNot !== null)];
}

interface FinderRowProps {
  readonly id: string;
  readonly found: Found;
  readonly here: boolean;
  readonly onChoose: () => void;
}

function FinderRow({ id, found, here, onChoose }: FinderRowProps) {
  const { command, whyNot } = found;
  const keys = command.keys?.[0];
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keys go to the field above, which names this row as active
    <div
      id={id}
      className={`finder-row${here ? " finder-here" : ""}${whyNot === null ? "" : " finder-off"}`}
      role="option"
      aria-selected={here}
      aria-disabled={whyNot !== null}
      tabIndex={-1}
      onClick={onChoose}
      ref={(row) => {
        if (here) row?.scrollIntoView?.({ block: "nearest" });
      }}
    >
      <span>{command.name}</span>
      {whyNot === null ? (
        <>
          <span className="finder-place soft small">{command.place}</span>
          {keys ? <kbd>{keysText(keys, onMac())}</kbd> : null}
        </>
      ) : (
        <span className="finder-why">{whyNot}</span>
      )}
    </div>
  );
}
