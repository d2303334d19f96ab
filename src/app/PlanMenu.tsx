/** The menu of what is under the pointer: its name, and those of the commands that fit it now. */
import { useRef } from "react";
import {
  Header,
  Menu,
  MenuItem,
  MenuSection,
  Popover,
  Separator,
  SubmenuTrigger,
} from "react-aria-components";
import { kindWord, thingName } from "../document";
import { type AppCommand, canRun, type RunCommand } from "../panels/command";
import { Icon } from "../panels/icons";
import { keysText, onMac } from "../panels/keys";
import { useProject } from "../panels/useProject";
import { capital } from "../panels/words";
import { closePlanMenu } from "../store/actions";
import { useApp } from "../store/useApp";
import { actsAtPlace } from "./atPlace";

const onThings = [
  ["arrange.place", "edit.copy", "edit.duplicate", "arrange.turn", "arrange.mirror"],
  ["arrange.lock", "arrange.unlock", "arrange.hide"],
  ["edit.delete"],
] as const;
const onGround = [
  ["edit.paste", "edit.selectAll", "edit.objects"],
  ["arrange.showAll", "arrange.unlockAll"],
  ["view.fit", "view.fitBuilding"],
] as const;

export interface PlanMenuProps {
  readonly commands: readonly AppCommand[];
  readonly run: RunCommand;
}

export function PlanMenu(props: PlanMenuProps) {
  const open = useApp((state) => state.planMenu);
  const anchor = useRef<HTMLSpanElement>(null);
  return (
    <>
      <span
        ref={anchor}
        aria-hidden="true"
        style={{
          position: "fixed",
          left: open?.x ?? 0,
          top: open?.y ?? 0,
          width: 1,
          height: 1,
          pointerEvents: "none",
        }}
      />
      <Popover
        className="popover plan-menu"
        aria-label="Menu of the plan"
        triggerRef={anchor}
        isOpen={open !== null}
        onOpenChange={(to) => {
          if (!to) closePlanMenu();
        }}
        placement="bottom start"
        offset={2}
        key={open ? `${open.x} ${open.y}` : "shut"}
      >
        <Acts {...props} />
      </Popover>
    </>
  );
}

function Acts({ commands, run }: PlanMenuProps) {
  const state = useApp((now) => now);
  const title = useTitle();
  const isAboutThings = state.planMenu?.of === "selection" && state.selection.length > 0;
  const groups = isAboutThings ? onThings : onGround;
  const here = isAboutThings ? actsAtPlace.filter((each) => canRun(each, state)) : [];
  const fitting = groups
    .map((ids) => ids.flatMap((id) => commands.find((each) => each.id === id && canRun(each, state)) ?? []))
    .filter((group) => group.length > 0);
  const aligning = commands.filter((each) => each.id.startsWith("arrange.align.") && canRun(each, state));
  return (
    <Menu
      className="list"
      aria-label={title}
      autoFocus="first"
      onAction={(key) => {
        const act = here.find(({ id }) => id === key);
        if (act) act.run();
        else run(String(key));
      }}
      onClose={closePlanMenu}
    >
      <MenuSection>
        <Header className="plan-menu-title">{title}</Header>
        {here.map(actItem)}
        {fitting[0]?.map(actItem)}
        {isAboutThings && aligning.length > 0 && state.selection.length > 1 ? (
          <SubmenuTrigger>
            <MenuItem className="list-item" textValue="Line up">
              <span>Line up</span>
              <Icon name="right" />
            </MenuItem>
            <Popover className="popover">
              <Menu className="list" aria-label="Line up" onAction={(key) => run(String(key))}>
                {aligning.map(actItem)}
              </Menu>
            </Popover>
          </SubmenuTrigger>
        ) : null}
      </MenuSection>
      {fitting.slice(1).map((group) => (
        <MenuSection key={group[0]?.id}>
          <Separator className="list-rule" />
          {group.map(actItem)}
        </MenuSection>
      ))}
    </Menu>
  );
}

function actItem(command: AppCommand) {
  const key = command.keys?.[0];
  return (
    <MenuItem className="list-item" id={command.id} key={command.id} textValue={command.name}>
      <span>{command.name}</span>
      {key ? <kbd>{keysText(key, onMac())}</kbd> : null}
    </MenuItem>
  );
}

/** "Drive", "Tree, feature", "3 things". */
function useTitle(): string {
  const selection = useApp((state) => state.selection);
  const isAboutPlan = useApp((state) => state.planMenu?.of === "plan");
  return useProject((project) => {
    const [only] = selection;
    if (!only || isAboutPlan) return "Plan";
    if (selection.length > 1) return `${selection.length} things`;
    const [name, kind] = [thingName(project, only), kindWord(only.kind)];
    return capital(name.includes(kind) ? name : `${name}, ${kind}`);
  });
}
