/** Finding a command by the words of its name, in any order, each by its beginning; then by letters in order. */
import type { AppCommand } from "../command";

export function findCommands(commands: readonly AppCommand[], typed: string): readonly AppCommand[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return commands;
  return commands
    .map((command, index) => ({ command, index, score: score(command, words) }))
    .filter(({ score: points }) => points > 0)
    .sort((a, b) => b.score - a.score || a.index - b.index)
    .map(({ command }) => command);
}

/** Every typed word must be found; a beginning in the name counts most, letters in order least. */
function score(command: AppCommand, words: readonly string[]): number {
  const name = plain(command.name);
  const nameWords = wordsOf(name);
  const otherWords = wordsOf(plain(`${command.also ?? ""} ${command.place}`));
  let points = 0;
  for (const word of words) {
    const one =
      wordScore(word, name, nameWords, otherWords) ||
      (isPlural(word) ? wordScore(word.slice(0, -1), name, nameWords, otherWords) : 0);
    if (one === 0) return 0;
    points += one;
  }
  return points + (nameWords[0]?.startsWith(words[0] ?? "") ? 2 : 0);
}

const isPlural = (word: string) => word.length > 3 && word.endsWith("s");

function wordScore(
  word: string,
  name: string,
  nameWords: readonly string[],
  otherWords: readonly string[],
): number {
  if (nameWords.some((each) => each === word)) return 12;
  if (nameWords.some((each) => each.startsWith(word))) return 10;
  if (otherWords.some((each) => each.startsWith(word))) return 6;
  if (name.includes(word)) return 4;
  return word.length > 2 && nameWords.some((each) => lettersInOrder(word, each)) ? 1 : 0;
}

/** The words of a text; one with a hyphen counts whole, without it, and by its parts. */
function wordsOf(text: string): readonly string[] {
  return text
    .split(/\s+/)
    .flatMap((word) => (word.includes("-") ? [word, word.replaceAll("-", ""), ...word.split("-")] : [word]));
}

function lettersInOrder(letters: string, text: string): boolean {
  let at = 0;
  for (const letter of text) if (letter === letters[at]) at++;
  return at === letters.length;
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[…:,.]/g, " ")
    .trim();
}
