import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { type AppCommand, menuPlaces } from "../command";
import { IconAction } from "../fields/Choice";
import { keysText, onMac } from "../keys";
import { elsewhere } from "./otherKeys";

export function ShortcutsDialog({ commands }: { commands: readonly AppCommand[] }) {
  const open = useApp((state) => state.dialog === "shortcuts");
  const mac = onMac();
  const parts = [
    ...menuPlaces.map((place) => {
      const own = commands.filter((command) => command.place === place && command.keys);
      return [
        place,
        own.map(
          (command) =>
            [command.name, (command.keys ?? []).map((keys) => keysText(keys, mac)).join(" or ")] as const,
        ),
      ] as const;
    }),
    ...elsewhere,
  ].filter(([, rows]) => rows.length > 0);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "shortcuts" : null)}
      isDismissable
    >
      <Modal className="modal modal-wide">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Keyboard shortcuts
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <div className="shortcuts">
            {parts.map(([part, rows]) => (
              <section key={part}>
                <h3 className="part-title">{part}</h3>
                <dl className="facts">
                  {rows.map(([name, keys]) => (
                    <div className="fact" key={name}>
                      <dt>{name}</dt>
                      <dd>
                        <kbd>{keys.replace("Mod+", mac ? "⌘" : "Ctrl+")}</kbd>
                      </dd>
                    </div>
                  ))}
                </dl>
              </section>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
