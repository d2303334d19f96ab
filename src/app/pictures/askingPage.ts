/** Which page of a PDF: the dialog shows the question, the asker gets the number. */
import { createStore } from "zustand/vanilla";
import type { PdfFile } from "./pdfFile";

interface AskedPage {
  readonly question: { readonly name: string; readonly file: PdfFile } | null;
  readonly answer: (page: number | null) => void;
}

const nobody = () => undefined;
export const askedPageStore = createStore<AskedPage>(() => ({ question: null, answer: nobody }));

/** Resolves to the page's number (1 is the first), or null where the person leaves it. */
export function askPage(name: string, file: PdfFile): Promise<number | null> {
  askedPageStore.getState().answer(null);
  return new Promise((resolve) => {
    const answer = (page: number | null) => {
      askedPageStore.setState({ question: null, answer: nobody });
      resolve(page);
    };
    askedPageStore.setState({ question: { name, file }, answer });
  });
}
