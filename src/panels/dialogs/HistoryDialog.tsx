import { useEffect, useRef } from "react";
import { Dialog, Heading, ListBox, ListBoxItem, Modal, ModalOverlay } from "react-aria-components";
import { jumpToStep, openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { IconAction } from "../fields/Choice";
import { capital } from "../words";

/** Every step by its name, the newest at the top: choosing one shows the plan as it was then. */
export function HistoryDialog() {
  const open = useApp((state) => state.dialog === "history");
  return (
    <ModalOverlay
      className="overlay overlay-clear"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "history" : null)}
      isDismissable
    >
      <Modal className="modal history">
        <Dialog className="history-dialog">
          <div className="history-head">
            <Heading slot="title" className="part-title">
              History
            </Heading>
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <Steps />
          <p className="soft small history-foot">
            Steps after the chosen one stay until you change something.
          </p>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Steps() {
  const { steps, now } = useApp((state) => state.history);
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    list.current?.querySelector("[data-selected]")?.scrollIntoView?.({ block: "nearest" });
  }, []);
  const items = steps.map(({ label }, index) => ({
    id: index,
    words: label === "" ? "As it was opened" : capital(label),
    later: index > now,
  }));
  return (
    <ListBox
      ref={list}
      className="list history-list"
      aria-label="Steps, the newest first"
      items={items.reverse()}
      selectionMode="single"
      disallowEmptySelection
      autoFocus
      selectedKeys={[now]}
      onSelectionChange={(keys) => {
        const [key] = keys === "all" ? [] : [...keys];
        if (typeof key === "number") jumpToStep(key);
      }}
    >
      {({ words, later }) => (
        <ListBoxItem className={`list-item${later ? " history-later" : ""}`} textValue={words}>
          <span>{words}</span>
          {later ? <span className="soft small">undone</span> : null}
        </ListBoxItem>
      )}
    </ListBox>
  );
}
