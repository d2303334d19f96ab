import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { type AppCommand, menuPlaces } from "../command";
import { IconAction } from "../fields/Choice";
import { keysText, onMac } from "../keys";

/** Keys that belong to one part of the window, beside those of the list of commands. */
const elsewhere: readonly (readonly [part: string, rows: readonly (readonly [string, string])[]])[] = [
  [
    "While drawing",
    [
      ["A length, then its bearing", "type, Tab, type, Enter"],
      ["A place so far east and north of the one before", "12, 5 or 5 S, 12 W"],
      ["Lock the direction east, north, west or south", "arrows"],
      ["Lock it along the line under the pointer", "A"],
      ["Lock it perpendicular to that line", "P"],
      ["Keep the present direction", "K"],
      ["Let the lock go; step back", "Esc"],
      ["Let snaps go", "hold Shift"],
    ],
  ],
  [
    "What is on the plan",
    [
      ["Add to what is selected, or leave one out", "Mod+click"],
      ["Select all that a box touches", "Shift + drag"],
      ["Drag a copy", "Alt + drag"],
      ["Move by a small step, by ten of them", "arrows, Shift + arrows"],
      ["Zoom, turn the plan", "wheel, Shift + wheel"],
      ["Move the plan", "Space + drag, middle button"],
      ["The menu of what is under the pointer", "right click, Shift + F10"],
    ],
  ],
  [
    "Level book and tables",
    [
      ["Go from cell to cell", "arrows, Tab"],
      ["Change a cell", "type, or F2"],
      ["Keep it and go down; add a row at the end", "Enter"],
      ["Take the typing back", "Esc"],
      ["Clear a cell", "Delete"],
      ["Choose several rows", "Shift + arrows"],
      ["Fill the first of them down", "Mod+D"],
      ["Find words in it", "Mod+F"],
      ["Put the rows in a column's order, for the eye", "click its head"],
      ["Remove the rows", "Mod+Delete"],
    ],
  ],
];

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
