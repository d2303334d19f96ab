/** One key to everything: what the colours and signs of plan, rod, panels and level book mean. */
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { IconAction } from "../fields/Choice";
import { SignSwatch } from "./SignSwatch";
import { signGroups } from "./signs";
import "./signs.css";

export function SignsDialog() {
  const open = useApp((state) => state.dialog === "signs");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "signs" : null)}
      isDismissable
    >
      <Modal className="modal modal-signs">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            What the colours and signs mean
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <div className="signs">
            {signGroups.map(({ name, signs }) => (
              <section key={name} className="signs-group" aria-label={name}>
                <h3>{name}</h3>
                <ul>
                  {signs.map(([sign, words]) => (
                    <li key={words}>
                      <SignSwatch sign={sign} />
                      <span>{words}</span>
                    </li>
                  ))}
                </ul>
              </section>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
