/** Sets of limits: taken into a plan as a whole, or made of a plan's own. */

import { z } from "zod";
import { generalSet } from "../ruleSets";
import { type Rules, rulesSchema } from "../rulesSchema";
import { command, done, refuse } from "./command";

/** What is particular to one site or one purse belongs to no set. */
const siteOnly = { roadLevel: true, toRoad: true, floodLevel: true, costLimit: true, set: true } as const;

const valuesSchema = rulesSchema.omit(siteOnly);

/** A set of one's own, as it is kept outside the plan. */
export const ruleSetSchema = z.object({
  name: z.string().trim().min(1).max(60),
  values: valuesSchema,
});

export type RuleSet = z.infer<typeof ruleSetSchema>;

/** The set that every plan begins with. */
export const general: RuleSet = { name: generalSet.name, values: valuesSchema.parse({}) };

/** The values of a plan's rules under a name. */
export function ruleSetOf(rules: Rules, name: string): RuleSet {
  return { name, values: valuesSchema.parse(rules) };
}

/** Whether a plan's rules are no longer as its set has them. */
export function differsFrom(rules: Rules, set: RuleSet): boolean {
  return JSON.stringify(valuesSchema.parse(rules)) !== JSON.stringify(valuesSchema.parse(set.values));
}

/** Takes a set into the plan; levels of road and flood and the limit of cost stay. */
export const takeRuleSet = command("rules.takeSet", (project, args: { set: RuleSet }) => {
  const read = ruleSetSchema.safeParse(args.set);
  if (!read.success) return refuse("That set of limits can't be read.");
  const { name, values } = read.data;
  return done({ ...project, rules: { ...project.rules, ...values, set: name } }, `take the limits “${name}”`);
});

/** Says that the plan's rules, as they are now, are the set of this name. */
export const nameRuleSet = command("rules.nameSet", (project, args: { name: string }) => {
  const name = args.name.trim();
  if (name === "") return refuse("A set of limits needs a name.");
  if (name === generalSet.name)
    return refuse(`“${name}” is the name of the set that every plan begins with: take another.`);
  return done({ ...project, rules: { ...project.rules, set: name } }, `keep the limits as “${name}”`);
});
