/** Text of a project file → a project, or a list of what is wrong with it and where, in words. */
import { z } from "zod";
import { migrate, newestVersion } from "./migrations";
import { type Project, projectSchema, type Shot, shotSchema } from "./schema";
import { canBeSetAside, withStandIns } from "./setAside";
import { isRun, noRun } from "./sideSlopes";

export interface FileProblem {
  /** Where in the file: "survey › shots › 3 › reading". Empty for the file as a whole. */
  readonly path: string;
  readonly message: string;
}

export type Opened =
  | { readonly ok: true; readonly project: Project; readonly warnings: readonly FileProblem[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** Opens the text of a project file. Never throws; an unknown field is kept and reported as a warning. */
export function openProject(text: string): Opened {
  const json = readJson(text);
  if (!json.ok) return refuse(json.message);
  if (!isRecord(json.value))
    return refuse("This is not a Drysill project: the file should hold one { … } object.");

  const version = json.value.drysill;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return refuse('This is not a Drysill project: it has no "drysill" version number.');
  }
  if (version > newestVersion) {
    return refuse(
      `This project was saved by a newer Drysill (format ${version}; this one reads up to ${newestVersion}). Update Drysill to open it.`,
    );
  }

  const { rest, cloud } = withoutCloud(migrate(json.value, version));
  const parsed = parsedAround(rest);
  const warnings: FileProblem[] = [];
  const shots = readCloud(cloud, warnings);
  if (!parsed.success || shots.issues.length > 0)
    return { ok: false, problems: [...(parsed.error?.issues ?? []), ...shots.issues].map(inWords) };

  carryUnknown(rest, parsed.data, [], warnings);
  const project = parsed.data;
  if (shots.read.length > 0) project.survey.shots = shots.read;
  return { ok: true, project, warnings };
}

/** Pieces whose figures make no sense are kept as they were typed; whoever reckons sets them aside. */
function parsedAround(file: unknown): ReturnType<typeof projectSchema.safeParse> {
  const parsed = projectSchema.safeParse(file);
  if (parsed.success || !parsed.error.issues.every(canBeSetAside)) return parsed;
  const putBack = withStandIns(file, parsed.error.issues);
  const again = projectSchema.safeParse(file);
  if (!again.success) return parsed;
  putBack(again.data);
  return again;
}

/** From so many shots on they are read a part at a time. */
const cloudFrom = 5000;
const partOfCloud = 1000;
const shotsPath = ["survey", "shots"] as const;

/** The file without its shots where those are very many, and the shots. */
function withoutCloud(file: Record<string, unknown>): {
  readonly rest: Record<string, unknown>;
  readonly cloud: unknown[];
} {
  const { survey } = file;
  if (!isRecord(survey) || !Array.isArray(survey.shots) || survey.shots.length < cloudFrom)
    return { rest: file, cloud: [] };
  const cloud: unknown[] = survey.shots;
  survey.shots = [];
  return { rest: file, cloud };
}

/** Checks shots a part at a time and lets go what was read: a million of them aren't there twice. */
function readCloud(cloud: unknown[], warnings: FileProblem[]) {
  const read: Shot[] = [];
  const issues: z.core.$ZodIssue[] = [];
  for (let from = 0; from < cloud.length; from += partOfCloud) {
    const part = cloud.slice(from, from + partOfCloud);
    cloud.fill(null, from, from + partOfCloud);
    const parsed = shotsSchema.safeParse(part);
    for (const [i, shot] of (parsed.data ?? []).entries()) {
      carryUnknown(part[i], shot, [...shotsPath, from + i], warnings);
      read.push(shot);
    }
    for (const issue of parsed.error?.issues ?? [])
      issues.push({ ...issue, path: [...shotsPath, from + Number(issue.path[0]), ...issue.path.slice(1)] });
  }
  return { read, issues };
}

const shotsSchema = z.array(shotSchema);

/** An empty project with every default in place. */
export function newProject(name = "Untitled plan"): Project {
  return projectSchema.parse({ drysill: 1, name });
}

function refuse(message: string): Opened {
  return { ok: false, problems: [{ path: "", message }] };
}

type JsonRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly message: string };

function readJson(text: string): JsonRead {
  const body = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (body.trim() === "") return { ok: false, message: "The file is empty." };
  try {
    return { ok: true, value: JSON.parse(body) };
  } catch (error) {
    if (!/^\s*[{[]/.test(body)) return { ok: false, message: "The file is not a Drysill plan." };
    return {
      ok: false,
      message: `The file is damaged or cut short: it is not valid JSON${whereInText(body, error)}.`,
    };
  }
}

function whereInText(text: string, error: unknown): string {
  const position = error instanceof SyntaxError ? /position (\d+)/.exec(error.message)?.[1] : undefined;
  if (position === undefined) return "";
  const before = text.slice(0, Number(position)).split("\n");
  return ` (line ${before.length}, column ${(before.at(-1) ?? "").length + 1})`;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function inWords(issue: z.core.$ZodIssue): FileProblem {
  return { path: pathInWords(issue.path), message: issueInWords(issue) };
}

function pathInWords(path: readonly PropertyKey[]): string {
  return path.map((step) => (typeof step === "number" ? String(step + 1) : String(step))).join(" › ");
}

function issueInWords(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return `Expected ${typeInWords(issue.expected)}, found ${foundInWords(issue)}.`;
    case "too_small":
      if (issue.origin === "array")
        return `Needs at least ${issue.minimum} entries${issue.path.at(-1) === "line" ? ", the places [x, y] where it starts and ends: add what is missing, or take the whole thing out" : ""}.`;
      if (isRun(issue.path.at(-1)) && issue.minimum === 0) return noRun;
      return `Should be ${issue.inclusive ? "at least" : "more than"} ${issue.minimum}.`;
    case "too_big":
      return `Should be ${issue.inclusive ? "at most" : "less than"} ${issue.maximum}.`;
    case "invalid_value":
      return `Should be one of: ${issue.values.join(", ")}.`;
    case "invalid_union":
      return "options" in issue && Array.isArray(issue.options)
        ? `Should be one of: ${issue.options.join(", ")}.`
        : `${issue.message}.`;
    default:
      return `${issue.message}.`;
  }
}

function typeInWords(type: string): string {
  const words: Record<string, string> = {
    number: "a number",
    string: "a text",
    array: "a list",
    tuple: "a pair [x, y]",
    object: "an object { … }",
    boolean: "true or false",
  };
  return words[type] ?? type;
}

function foundInWords(issue: z.core.$ZodIssue): string {
  const found = /received (.+)$/.exec(issue.message)?.[1];
  return found === undefined || found === "undefined" ? "nothing" : found;
}

/** Puts fields that the schema doesn't know back into the parsed copy, so that saving loses nothing. */
function carryUnknown(
  raw: unknown,
  parsed: unknown,
  path: readonly PropertyKey[],
  warnings: FileProblem[],
): void {
  if (Array.isArray(raw) && Array.isArray(parsed)) {
    for (const [index, item] of raw.entries()) carryUnknown(item, parsed[index], [...path, index], warnings);
    return;
  }
  if (!isRecord(raw) || !isRecord(parsed)) return;
  for (const [key, value] of Object.entries(raw)) {
    if (key in parsed) {
      carryUnknown(value, parsed[key], [...path, key], warnings);
    } else if (key !== "__proto__") {
      parsed[key] = value;
      warnings.push({
        path: pathInWords([...path, key]),
        message: "Drysill doesn't know this field; it is kept, but not used.",
      });
    }
  }
}
