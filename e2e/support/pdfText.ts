/** Text of every page of a PDF, by a reader that is not ours. */
import { readFile } from "node:fs/promises";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export async function pdfText(path: string): Promise<string> {
  const task = getDocument({ data: new Uint8Array(await readFile(path)), verbosity: 0 });
  const file = await task.promise;
  const pages: string[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const { items } = await (await file.getPage(number)).getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  await task.destroy();
  return pages.join("\n");
}
