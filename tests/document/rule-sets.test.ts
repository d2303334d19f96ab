import { describe, expect, it } from "vitest";
import {
  differsFrom,
  generalRules,
  newProject,
  ruleSetEdits,
  ruleSetOf,
  siteEdits,
} from "../../src/document";
import type { Project } from "../../src/document/schema";

function edited(
  project: Project,
  edit: { ok: true; project: Project } | { ok: false; why: string },
): Project {
  if (!edit.ok) throw new Error(edit.why);
  return { ...project, ...edit.project };
}

describe("sets of limits", () => {
  it("a new plan goes by the general set, unchanged", () => {
    const { rules } = newProject();
    expect(rules.set).toBe(generalRules.name);
    expect(differsFrom(rules, generalRules)).toBe(false);
  });

  it("a set of one's own holds values and switches, not the levels of one site or the purse", () => {
    const project = newProject();
    const rules = { ...project.rules, leastShowing: 0.3, off: ["landing"], roadLevel: 99, costLimit: 5000 };
    const set = ruleSetOf(rules, "county");
    expect(set.values).toMatchObject({ leastShowing: 0.3, off: ["landing"] });
    expect(set.values).not.toHaveProperty("roadLevel");
    expect(set.values).not.toHaveProperty("costLimit");
    const other = { ...project, rules: { ...project.rules, roadLevel: 101, costLimit: 20 } };
    const taken = edited(other, ruleSetEdits.takeRuleSet.run(other, { set }));
    expect(taken.rules).toMatchObject({
      leastShowing: 0.3,
      off: ["landing"],
      roadLevel: 101,
      costLimit: 20,
      set: "county",
    });
    expect(differsFrom(taken.rules, set)).toBe(false);
  });

  it("a value typed over shows as a change, and taking the set again undoes it", () => {
    const project = newProject();
    const changed = edited(project, siteEdits.changeRules.run(project, { patch: { steepestDrive: 0.1 } }));
    expect(differsFrom(changed.rules, generalRules)).toBe(true);
    const back = edited(changed, ruleSetEdits.takeRuleSet.run(changed, { set: generalRules }));
    expect(back.rules).toEqual(project.rules);
  });

  it("none may pass for the general set, and none is without a name", () => {
    const project = newProject();
    expect(ruleSetEdits.nameRuleSet.run(project, { name: " " }).ok).toBe(false);
    expect(ruleSetEdits.nameRuleSet.run(project, { name: generalRules.name }).ok).toBe(false);
  });
});
