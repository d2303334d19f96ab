/** Which set of limits the plan goes by: the general one, or one of the person's own. */
import { type FormEvent, memo, useState } from "react";
import { Input, Label, TextField } from "react-aria-components";
import { differsFrom, generalRules, generalSet, type RuleSet, ruleSetEdits, ruleSetOf } from "../../document";
import { setPreferences, tryRun } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, Choice } from "../fields/Choice";
import { refusal } from "../fields/LengthField";
import { useProject } from "../useProject";
import "./band.css";

export const RuleSetChoice = memo(function RuleSetChoice() {
  const rules = useProject((project) => project.rules);
  const own = useApp(({ preferences }) => preferences.ruleSets);
  const sets = [generalRules, ...own];
  const present = sets.find(({ name }) => name === rules.set);
  const changed = present !== undefined && differsFrom(rules, present);
  const options = [
    ...sets.map(({ name }) => ({ value: name, words: name === generalSet.name ? "general" : name })),
    ...(present ? [] : [{ value: rules.set, words: `${rules.set} (of this plan)` }]),
  ];
  const take = (name: string) => {
    const set = sets.find((each) => each.name === name);
    if (set) tryRun(ruleSetEdits.takeRuleSet, { set });
  };
  return (
    <div className="rule-set">
      <Choice label="Limits" value={rules.set} options={options} onChoose={take} />
      <p className="soft small">
        {rules.set === generalSet.name
          ? `${generalSet.edition}. It isn't your local code: ask the building office, and type its values over these.`
          : "Your own values. The building office says which hold where you build."}
        {changed ? " Some of them were changed in this plan." : ""}
      </p>
      {changed && present ? (
        <Action look="quiet" onPress={() => tryRun(ruleSetEdits.takeRuleSet, { set: present })}>
          {`Back to “${present.name}”`}
        </Action>
      ) : null}
      {changed || !present ? <KeepSet own={own} /> : null}
      {own.some(({ name }) => name === rules.set) ? (
        <Action
          look="quiet"
          onPress={() => setPreferences({ ruleSets: own.filter(({ name }) => name !== rules.set) })}
        >
          {`Forget “${rules.set}”`}
        </Action>
      ) : null}
    </div>
  );
});

/** Keeps the plan's values under a name, for other plans too; one of that name is replaced. */
function KeepSet({ own }: { own: readonly RuleSet[] }) {
  const rules = useProject((project) => project.rules);
  const [name, setName] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const refused = refusal(tryRun(ruleSetEdits.nameRuleSet, { name }));
    setFault(refused);
    if (refused !== null) return;
    const set = ruleSetOf(rules, name.trim());
    setPreferences({ ruleSets: [...own.filter((each) => each.name !== set.name), set] });
    setName("");
  };
  return (
    <form className="rule-set-keep" onSubmit={keep}>
      <TextField value={name} onChange={setName} isInvalid={fault !== null}>
        <Label className="field-label">Keep them as a set of your own</Label>
        <Input className="field-input field-wide" placeholder="county, 2024" />
      </TextField>
      <Action look="quiet" icon="plus" type="submit">
        Keep
      </Action>
      {fault ? <p className="field-fault">{fault}</p> : null}
    </form>
  );
}
