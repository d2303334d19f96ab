/** The demo projects, part of the build. */
import { fileEnding } from "../document";

export interface Demo {
  /** Name without the ending, as in the address: ?demo=pottery-studio */
  readonly id: string;
  readonly file: string;
  readonly text: () => Promise<string>;
}

const files = import.meta.glob<string>("../../demo-projects/*.drysill.json", {
  query: "?raw",
  import: "default",
});

/** The first to try comes first; one that isn't named here comes last. */
const order = ["pottery-studio", "joinery-shed", "potting-barn", "open-hillside"];
const rank = ({ id }: Demo) => (order.includes(id) ? order.indexOf(id) : order.length);

export const demos: readonly Demo[] = Object.entries(files)
  .map(([path, text]) => {
    const file = path.slice(path.lastIndexOf("/") + 1);
    return { id: file.slice(0, -fileEnding.length), file, text };
  })
  .sort((a, b) => rank(a) - rank(b));
