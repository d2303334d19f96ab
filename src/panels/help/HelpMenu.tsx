/** The question mark in the window's head: guide, words, shortcuts, tour. */
import { Button, Menu, MenuItem, MenuTrigger, Popover } from "react-aria-components";
import type { AppCommand, RunCommand } from "../command";
import { Icon } from "../icons";
import { keysText, onMac } from "../keys";

export interface HelpMenuProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

export function HelpMenu({ commands, run }: HelpMenuProps) {
  const items = commands.filter(({ place, id }) => place === "Help" && id !== "help.find");
  return (
    <MenuTrigger>
      <Button className="icon-button" aria-label="Help" data-tour="help">
        <Icon name="help" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu className="list" onAction={(key) => run(String(key))} aria-label="Help">
          {items.map(({ id, name, keys = [] }) => (
            <MenuItem key={id} id={id} className="list-item" textValue={name}>
              <span>{name}</span>
              {keys[0] ? <kbd>{keysText(keys[0], onMac())}</kbd> : null}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
