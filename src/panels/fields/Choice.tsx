/** A choice from a short list, a yes or no, and the plain button. */
import type { ReactNode } from "react";
import {
  Button,
  type ButtonProps,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
  Switch,
  Tooltip,
  TooltipTrigger,
} from "react-aria-components";
import { Icon, type IconName } from "../icons";
import { howToUnlock } from "./TypedField";

export interface ChoiceOption<Value extends string> {
  readonly value: Value;
  readonly words: string;
}

export interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly ChoiceOption<Value>[];
  readonly onChoose: (value: Value) => void;
  readonly help?: ReactNode;
  readonly layout?: "row" | "stack" | "bare";
  /** It belongs to a thing that is locked: it can be read, not changed. */
  readonly locked?: boolean;
}

export function Choice<Value extends string>(props: ChoiceProps<Value>) {
  const { label, value, options, onChoose, help, layout = "row", locked = false } = props;
  const choose = (key: unknown) => {
    const chosen = options.find((option) => option.value === key);
    if (chosen) onChoose(chosen.value);
  };
  return (
    <div className={`field field-${layout}`} title={locked ? howToUnlock : undefined}>
      <Select className="choice" value={value} onChange={choose} isDisabled={locked}>
        <Label className={layout === "bare" ? "visually-hidden" : "field-label"}>{label}</Label>
        <Button className="choice-button">
          <SelectValue className="choice-value" />
          <Icon name={locked ? "lock" : "down"} />
        </Button>
        <Popover className="popover">
          <ListBox className="list" items={options.map((option) => ({ ...option, id: option.value }))}>
            {(option) => (
              <ListBoxItem className="list-item" id={option.value} textValue={option.words}>
                {option.words}
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </Select>
      {help ? <p className="field-help">{help}</p> : null}
    </div>
  );
}

export interface ToggleProps {
  readonly label: string;
  readonly on: boolean;
  readonly onToggle: (on: boolean) => void;
}

export function Toggle({ label, on, onToggle }: ToggleProps) {
  return (
    <Switch className="toggle" isSelected={on} onChange={onToggle}>
      <span className="toggle-track" aria-hidden="true">
        <span className="toggle-thumb" />
      </span>
      {label}
    </Switch>
  );
}

export interface ActionProps extends Omit<ButtonProps, "className" | "children"> {
  readonly children: ReactNode;
  readonly icon?: IconName;
  readonly look?: "plain" | "accent" | "quiet";
}

export function Action({ children, icon, look = "plain", ...button }: ActionProps) {
  return (
    <Button {...button} className={`button button-${look}`}>
      {icon ? <Icon name={icon} /> : null}
      <span>{children}</span>
    </Button>
  );
}

export interface IconActionProps extends Omit<ButtonProps, "className" | "children"> {
  readonly icon: IconName;
  /** Heard by people who listen, shown as a tooltip to the others. */
  readonly label: string;
}

export function IconAction({ icon, label, ...button }: IconActionProps) {
  return (
    <TooltipTrigger delay={500}>
      <Button {...button} aria-label={label} className="icon-button">
        <Icon name={icon} />
      </Button>
      <Tooltip className="tooltip">{label}</Tooltip>
    </TooltipTrigger>
  );
}
