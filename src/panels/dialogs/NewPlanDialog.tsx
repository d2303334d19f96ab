import { type FormEvent, useState } from "react";
import { Dialog, Heading, Label, Modal, ModalOverlay, Radio, RadioGroup } from "react-aria-components";
import type { Display } from "../../document";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action } from "../fields/Choice";
import { type UnitSet, unitSets } from "../units";

interface NewPlanDialogProps {
  readonly onMake: (name: string, display: Partial<Display>) => void;
}

export function NewPlanDialog({ onMake }: NewPlanDialogProps) {
  const open = useApp((state) => state.dialog === "new");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "new" : null)}
      isDismissable
    >
      <Modal className="modal modal-small">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            A new plan
          </Heading>
          <NewPlanForm onMake={onMake} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function NewPlanForm({ onMake }: NewPlanDialogProps) {
  const [name, setName] = useState("");
  const [units, setUnits] = useState<UnitSet["id"]>("inches");
  const make = (event: FormEvent) => {
    event.preventDefault();
    const chosen = unitSets.find(({ id }) => id === units);
    const metric = chosen?.display.area === "m2";
    openDialog(null);
    onMake(name, { ...chosen?.display, paper: metric ? "a3" : "tabloid" });
  };
  return (
    <form onSubmit={make}>
      <div className="field field-stack">
        <label className="field-label" htmlFor="new-plan-name">
          What is it called?
        </label>
        <input
          id="new-plan-name"
          className="field-input field-wide"
          // biome-ignore lint/a11y/noAutofocus: the dialog asks for this first
          autoFocus
          placeholder="Untitled plan"
          value={name}
          onChange={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <RadioGroup
        className="unit-choice"
        value={units}
        onChange={(value) => setUnits(value as UnitSet["id"])}
      >
        <Label className="field-label">How do you measure?</Label>
        {unitSets.map((set) => (
          <Radio key={set.id} value={set.id} className="unit-option">
            <b>{set.name}</b>
            <span className="soft small">{set.example}</span>
          </Radio>
        ))}
      </RadioGroup>
      <p className="soft small">It can be changed at any time; what you typed stays as you typed it.</p>
      <div className="dialog-acts">
        <Action look="accent" type="submit">
          Start
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </form>
  );
}
