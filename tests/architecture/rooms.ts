/** Who may import whom: reads the table of src/README.md, and checks the imports of files against it. */
import { posix } from "node:path";

/** Each room with the rooms it may import; "all" for the one that wires. */
export type Rooms = ReadonlyMap<string, ReadonlySet<string> | "all">;

/** Path from the repository's root → source text. */
export type Sources = ReadonlyMap<string, string>;

/** The rows `| room | answers | may import |`; a room's name stands in backquotes. */
export function readRooms(markdown: string): Rooms {
  const rows = markdown.matchAll(/^\| `([a-z-]+)` \|.*\| ([^|]+) \|$/gm);
  return new Map([...rows].map(([, room = "", list = ""]) => [room, listed(list)]));
}

function listed(list: string): ReadonlySet<string> | "all" {
  if (list === "all") return "all";
  return new Set(list === "–" ? [] : list.split(", "));
}

interface Import {
  readonly from: string;
  readonly to: string;
}

/** Every complaint about the imports between files of src/ and from electron/; empty when all is well. */
export function complaints(sources: Sources, rooms: Rooms): string[] {
  const imports = [...sources].flatMap(([path, text]) => relativeImports(path, text));
  return [
    ...unknownRooms(sources, rooms),
    ...rowsToNowhere(rooms),
    ...imports.flatMap((one) => complaintAbout(one, sources, rooms)),
    ...cycles(imports),
  ];
}

function unknownRooms(sources: Sources, rooms: Rooms): string[] {
  const found = new Set([...sources.keys()].map(roomOf));
  const unlisted = [...found].filter((room) => room !== "electron" && !rooms.has(room));
  return unlisted.map((room) => `src/${room} is not in the table`);
}

function rowsToNowhere(rooms: Rooms): string[] {
  return [...rooms].flatMap(([room, uses]) => {
    const missing = uses === "all" ? [] : [...uses].filter((used) => !rooms.has(used));
    return missing.map((used) => `the table lets ${room} use ${used}, which it does not list`);
  });
}

const besideSource: ReadonlySet<string> = new Set(["host", "start", "look"]);

function complaintAbout({ from, to }: Import, sources: Sources, rooms: Rooms): string[] {
  const [room, target] = [roomOf(from), roomOf(to)];
  if (!to.startsWith("src/") && !to.startsWith("electron/")) return outside(from, to);
  if (!isThere(to, sources)) return [`${from} imports ${to}, which is not there`];
  if (room === target) return [];
  const uses = room === "electron" ? besideSource : rooms.get(room);
  return uses === "all" || uses?.has(target) ? [] : [`${from} (${room}) may not import ${to} (${target})`];
}

/** Assets and demos may be bundled by the page; nothing else lies outside src/ for a room. */
function outside(from: string, to: string): string[] {
  const allowed = to.startsWith("assets/") || to.startsWith("demo-projects/");
  return allowed ? [] : [`${from} imports ${to}, outside src/`];
}

/** `src/solve/results*.ts` count as a room of their own: the types that stages answer and views read. */
function roomOf(path: string): string {
  if (path.startsWith("electron/")) return "electron";
  const withoutEnding = path.replace(/\.tsx?$/, "");
  return /^src\/solve\/results(-\w+)?$/.test(withoutEnding) ? "results" : (path.split("/")[1] ?? "");
}

const endings = ["", ".ts", ".tsx", "/index.ts", "/index.tsx"];
const isThere = (path: string, sources: Sources): boolean =>
  /\.(css|svg|json|png)$/.test(path) || endings.some((ending) => sources.has(path + ending));

function relativeImports(path: string, text: string): Import[] {
  return importedNames(text)
    .filter((name) => name.startsWith("."))
    .map((name) => name.replace(/\?.*$/, ""))
    .map((name) => ({ from: path, to: posix.join(posix.dirname(path), name) }));
}

/** Names in import and export declarations, in `import(…)` (also as a type) and in workers' `new URL(…)`. */
export function importedNames(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "");
  const patterns = [
    /\b(?:import|export)\b[^;"'`()]*?\bfrom\s*["']([^"']+)["']/g,
    /^\s*import\s*["']([^"']+)["']/gm,
    /\bimport\s*\(\s*["']([^"']+)["']/g,
    /\bnew URL\(\s*["']([^"']+)["'],\s*import\.meta\.url/g,
  ];
  return patterns.flatMap((pattern) => [...code.matchAll(pattern)].map(([, name = ""]) => name));
}

/** Rooms that import each other, over any number of steps. */
function cycles(imports: readonly Import[]): string[] {
  const graph = new Map<string, Set<string>>();
  for (const { from, to } of imports) {
    const [room, target] = [roomOf(from), roomOf(to)];
    if (room !== target) graph.set(room, (graph.get(room) ?? new Set()).add(target));
  }
  const reaches = (start: string, goal: string, seen = new Set<string>()): boolean =>
    [...(graph.get(start) ?? [])].some(
      (next) => next === goal || (!seen.has(next) && reaches(next, goal, seen.add(next))),
    );
  return [...graph.keys()]
    .filter((room) => reaches(room, room))
    .map((room) => `${room} is in a cycle of rooms`);
}
