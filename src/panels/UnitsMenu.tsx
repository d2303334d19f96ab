import { Button, Menu, MenuItem, MenuTrigger, Popover, Separator } from "react-aria-components";
import { siteEdits } from "../document";
import { run as runEdit } from "../store/actions";
import type { RunCommand } from "./command";
import { Icon } from "./icons";
import { unitSetOf, unitSets } from "./units";
import { useProject } from "./useProject";

/** Which units the plan is written in. What was typed stays as it was typed. */
export function UnitsMenu({ run }: { run: RunCommand }) {
  const display = useProject((project) => project.display);
  const present = unitSetOf(display);
  const choose = (key: unknown) => {
    const chosen = unitSets.find((set) => set.id === key);
    if (chosen) runEdit(siteEdits.changeDisplay, { patch: chosen.display });
    else run("view.settings");
  };
  return (
    <MenuTrigger>
      <Button className="button button-plain" aria-label={`Units: ${present?.name ?? "mixed"}. Change them`}>
        <span>{present?.name ?? "Mixed units"}</span>
        <Icon name="down" />
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu
          className="list"
          aria-label="Units"
          onAction={choose}
          selectionMode="single"
          selectedKeys={present ? [present.id] : []}
        >
          {unitSets.map((set) => (
            <MenuItem className="list-item" id={set.id} key={set.id} textValue={set.name}>
              <span>{set.name}</span>
              <span className="soft small">{set.example}</span>
            </MenuItem>
          ))}
          <Separator className="list-rule" />
          <MenuItem className="list-item" id="more" textValue="More about units">
            <span>Units one by one…</span>
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
