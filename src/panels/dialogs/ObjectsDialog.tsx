/** All things of the plan by group, walked by arrows: Enter shows one, F2 renames it, Delete takes it away. */
import { type KeyboardEvent, useMemo, useRef, useState } from "react";
import {
  Button,
  Collection,
  Dialog,
  Heading,
  ListLayout,
  Modal,
  ModalOverlay,
  type Selection,
  Tree,
  TreeItem,
  TreeItemContent,
  Virtualizer,
} from "react-aria-components";
import {
  allThings,
  arrangeEdits,
  canRename,
  drawingEdits,
  isHidden,
  isLocked,
  type Point,
  type Project,
  present,
  renameThing,
  type Thing,
  thingKey,
  thingName,
  thingShape,
} from "../../document";
import { boundsOf } from "../../geometry";
import { goTo, openDialog, run as runEdit, select, tryRun } from "../../store/actions";
import { appStore } from "../../store/store";
import { useApp } from "../../store/useApp";
import { IconAction } from "../fields/Choice";
import { Icon } from "../icons";
import { useProject } from "../useProject";
import { capital } from "../words";

const groupsOf = {
  Lot: ["lot", "feature"],
  Survey: ["mark", "shot", "breakline", "pit"],
  Building: ["building", "door", "window"],
  Drives: ["drive"],
  Swales: ["swale"],
  "Shapes of the ground": ["pad", "berm", "retaining-wall", "grade-point"],
  Notes: ["note"],
  Dimensions: ["dimension"],
  "Section lines": ["section"],
  Pictures: ["underlay"],
} as const satisfies Readonly<Record<string, readonly Thing["kind"][]>>;

interface Group {
  readonly name: string;
  readonly things: readonly Thing[];
}

/** Groups that have something in them. */
function grouped(project: Project): Group[] {
  const things = allThings(project);
  return Object.entries(groupsOf)
    .map(([name, kinds]) => ({
      name,
      things: things.filter(({ kind }) => (kinds as readonly string[]).includes(kind)),
    }))
    .filter((group) => group.things.length > 0);
}

export function ObjectsDialog() {
  const open = useApp((state) => state.dialog === "objects");
  return (
    <ModalOverlay
      className="overlay overlay-clear"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "objects" : null)}
      isDismissable
    >
      <Modal className="modal objects">
        <Dialog className="objects-dialog">
          <div className="history-head">
            <Heading slot="title" className="part-title">
              Things of the plan
            </Heading>
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <Things />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Things() {
  const project = useProject((now) => now);
  const groups = useMemo(() => grouped(project), [project]);
  const selection = useApp((state) => state.selection);
  const [shut, setShut] = useState<ReadonlySet<string>>(() => new Set(longGroups(groups)));
  const [renaming, setRenaming] = useState<Thing | null>(null);
  const box = useRef<HTMLDivElement>(null);
  const known = useMemo(() => byKey(groups), [groups]);

  function take(keys: Selection): void {
    const chosen = keys === "all" ? [...known.keys()] : [...keys].map(String);
    select(chosen.flatMap((key) => known.get(key) ?? []));
  }

  function onKeyDown(event: KeyboardEvent): void {
    const thing = known.get(focusedKey(box.current) ?? "");
    if (!thing || event.target instanceof HTMLInputElement) return;
    if (event.key === "F2" && canRename(thing)) setRenaming(thing);
    else if (event.key === "Delete") remove(thing);
    else return;
    event.preventDefault();
  }

  if (groups.length === 0) return <p className="soft">There is nothing on the plan yet.</p>;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the tree within, which has the role
    <div className="objects-body" ref={box} onKeyDown={onKeyDown}>
      <Virtualizer layout={ListLayout} layoutOptions={{ rowHeight: 32 }}>
        <Tree
          className="objects-tree"
          aria-label="Things of the plan"
          items={groups}
          dependencies={[project]}
          selectionMode="multiple"
          selectionBehavior="replace"
          escapeKeyBehavior="none"
          selectedKeys={selection.map(thingKey)}
          onSelectionChange={take}
          expandedKeys={groups.map(({ name }) => name).filter((name) => !shut.has(name))}
          onExpandedChange={(keys) =>
            setShut(new Set(groups.map(({ name }) => name).filter((name) => !keys.has(name))))
          }
          disabledBehavior="selection"
          disabledKeys={groups.map(({ name }) => name)}
          onAction={(key) => show(known.get(String(key)))}
          autoFocus
        >
          {({ name, things }) => (
            <TreeItem id={name} textValue={name}>
              <TreeItemContent>
                <Button slot="chevron" className="objects-chevron" aria-label={`Open or shut ${name}`}>
                  <Icon name="right" />
                </Button>
                <span className="objects-group">{name}</span>
                <span className="soft small">{things.length}</span>
              </TreeItemContent>
              <Collection items={things.map((thing) => ({ id: thingKey(thing), thing }))}>
                {({ id, thing }) => <ThingRow key={id} project={project} thing={thing} />}
              </Collection>
            </TreeItem>
          )}
        </Tree>
      </Virtualizer>
      {renaming ? (
        <Rename
          thing={renaming}
          onDone={() => {
            setRenaming(null);
            refocus(box.current, thingKey(renaming));
          }}
        />
      ) : (
        <p className="soft small objects-foot">
          <kbd>Enter</kbd> shows it, <kbd>F2</kbd> renames, <kbd>Delete</kbd> removes, <kbd>→</kbd> to lock or
          hide
        </p>
      )}
    </div>
  );
}

/** A long list of shots would hide everything else. */
function longGroups(groups: readonly Group[]): string[] {
  return groups.filter(({ things }) => things.length > 60).map(({ name }) => name);
}

function byKey(groups: readonly Group[]): ReadonlyMap<string, Thing> {
  return new Map(groups.flatMap(({ things }) => things.map((thing) => [thingKey(thing), thing] as const)));
}

function focusedKey(box: HTMLElement | null): string | null {
  const row = document.activeElement?.closest<HTMLElement>("[role=row]");
  return row && box?.contains(row) ? (row.dataset.key ?? null) : null;
}

function refocus(box: HTMLElement | null, key: string): void {
  requestAnimationFrame(() => {
    box?.querySelector<HTMLElement>(`[role=row][data-key="${CSS.escape(key)}"]`)?.focus();
  });
}

function show(thing: Thing | undefined): void {
  if (!thing) return;
  select([thing]);
  const points = thingShape(present(appStore.getState().history), thing)?.points ?? [];
  const box = boundsOf(points);
  const middle: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  if (points.length > 0) goTo(middle);
}

/** With the thing all that is selected goes, where the thing is part of it. */
function remove(thing: Thing): void {
  const { selection } = appStore.getState();
  const key = thingKey(thing);
  const things = selection.some((each) => thingKey(each) === key) ? selection : [thing];
  if (runEdit(arrangeEdits.removeThings, { things }).ok) select([]);
}

function ThingRow({ project, thing }: { project: Project; thing: Thing }) {
  const name = capital(thingName(project, thing));
  const [locked, hidden] = [isLocked(project, thing), isHidden(project, thing)];
  const states = [locked ? "locked" : "", hidden ? "hidden" : ""].filter(Boolean).join(", ");
  return (
    <TreeItem
      id={thingKey(thing)}
      textValue={states ? `${name}, ${states}` : name}
      className={`objects-thing${hidden ? " objects-hidden" : ""}`}
    >
      <TreeItemContent>
        <span className="objects-name">{name}</span>
        <RowToggle
          on={locked}
          icon={locked ? "lock" : "unlocked"}
          label={`${locked ? "Unlock" : "Lock"} ${name}`}
          onPress={() => runEdit(drawingEdits.lockThings, { things: [thing], locked: !locked })}
        />
        <RowToggle
          on={hidden}
          icon={hidden ? "eyeShut" : "eye"}
          label={`${hidden ? "Show" : "Hide"} ${name}`}
          onPress={() => runEdit(drawingEdits.hideThings, { things: [thing], hidden: !hidden })}
        />
      </TreeItemContent>
    </TreeItem>
  );
}

interface RowToggleProps {
  readonly on: boolean;
  readonly icon: "lock" | "unlocked" | "eye" | "eyeShut";
  readonly label: string;
  readonly onPress: () => void;
}

function RowToggle({ on, icon, label, onPress }: RowToggleProps) {
  return (
    <Button
      className={`icon-button objects-toggle${on ? " objects-on" : ""}`}
      aria-label={label}
      onPress={onPress}
    >
      <Icon name={icon} />
    </Button>
  );
}

function Rename({ thing, onDone }: { thing: Thing; onDone: () => void }) {
  const name = useProject((project) => {
    const note = thing.kind === "note" ? project.drawing.notes.find(({ id }) => id === thing.id) : undefined;
    return note ? note.text : thingName(project, thing).replace(/^shot /, "");
  });
  const [text, setText] = useState(name);
  const [fault, setFault] = useState<string | null>(null);
  return (
    <form
      className="objects-rename"
      onSubmit={(event) => {
        event.preventDefault();
        const edit = tryRun(renameThing, { thing, name: text });
        if (edit.ok) onDone();
        else setFault(edit.why);
      }}
    >
      <label>
        <span className="soft small">Name</span>
        <input
          className="field-input field-wide"
          value={text}
          // biome-ignore lint/a11y/noAutofocus: it appears because the person asked to rename
          autoFocus
          onFocus={(event) => event.currentTarget.select()}
          aria-invalid={fault !== null}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            event.stopPropagation();
            if (event.key === "Escape") onDone();
          }}
        />
      </label>
      {fault ? <p role="alert">{fault}</p> : null}
    </form>
  );
}
