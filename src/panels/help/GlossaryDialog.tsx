/** The words of the trade: searched as one types, opened at a word where one was asked for. */
import { useEffect, useRef, useState } from "react";
import { Dialog, Heading, Input, Modal, ModalOverlay, TextField } from "react-aria-components";
import { searchTerms, type Term } from "../../help";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { IconAction } from "../fields/Choice";
import { Icon } from "../icons";
import { counted } from "../words";
import { Also, Linked } from "./Linked";

export function GlossaryDialog() {
  const open = useApp((state) => state.dialog === "glossary");
  const term = useApp((state) => state.term);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "glossary" : null)}
      isDismissable
    >
      <Modal className="modal modal-glossary">
        <Dialog className="dialog glossary">
          <Heading slot="title" className="dialog-title">
            Words of the trade
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <Words key={term} first={term} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Words({ first }: { first: string | null }) {
  const [typed, setTyped] = useState("");
  const found = searchTerms(typed);
  return (
    <>
      <TextField
        className="finder-field glossary-field"
        value={typed}
        onChange={setTyped}
        aria-label="Find a word"
      >
        <Icon name="find" />
        <Input placeholder="Find a word" autoFocus />
      </TextField>
      <p className="visually-hidden" role="status">
        {counted(found.length, "word")}
      </p>
      {found.length === 0 ? (
        <p className="soft">No such word here. Another spelling, or a part of it?</p>
      ) : (
        <dl className="glossary-list">
          {found.map((term) => (
            <Entry key={term.name} term={term} first={term.name === first && typed === ""} />
          ))}
        </dl>
      )}
    </>
  );
}

function Entry({ term, first }: { term: Term; first: boolean }) {
  const entry = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (first) entry.current?.scrollIntoView?.({ block: "center" });
  }, [first]);
  return (
    <div className={first ? "glossary-entry glossary-here" : "glossary-entry"} ref={entry}>
      <dt>{term.name}</dt>
      <dd>
        <Also term={term} />
        <p>
          <Linked text={term.meaning} />
        </p>
      </dd>
    </div>
  );
}
