/** Reading a PDF page as a picture. The reader and its worker are loaded with the first PDF, from our own files. */
import { fittedSize } from "../../underlay";
import { blankCanvas, Unreadable } from "./keepImage";

export interface PdfFile {
  readonly pages: number;
  /** Draws a page (1 is the first) on white, its longest side at most `side` px. */
  draw(page: number, side: number): Promise<HTMLCanvasElement>;
  close(): Promise<void>;
}

/** Fine enough for the small print of a plat, px for one point of 1/72 inch. */
const finest = 300 / 72;

export async function openPdf(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<PdfFile> {
  const [{ getDocument, PDFWorker, VerbosityLevel }, { default: ReaderWorker }] = await Promise.all([
    import("pdfjs-dist/legacy/build/pdf.mjs"),
    import("pdfjs-dist/legacy/build/pdf.worker.mjs?worker"),
  ]);
  const port = new ReaderWorker();
  const task = getDocument({
    // The reader takes the bytes over; the caller's stay.
    data: bytes.slice(),
    worker: PDFWorker.create({ port }),
    // The page's policy allows neither code made from text nor WebAssembly.
    isEvalSupported: false,
    useWasm: false,
    // Here lies its decoder for JPEG 2000 without WebAssembly (vite.config.ts).
    wasmUrl: new URL("pdf/", document.baseURI).href,
    verbosity: VerbosityLevel.ERRORS,
  });
  const close = async () => {
    await task.destroy();
    port.terminate();
  };
  try {
    const file = await task.promise;
    return { pages: file.numPages, draw: (page, side) => drawPage(file, page, side), close };
  } catch (error) {
    await close();
    throw new Unreadable(refusal(name, error));
  }
}

type OpenFile = Awaited<ReturnType<typeof import("pdfjs-dist/legacy/build/pdf.mjs").getDocument>["promise"]>;

async function drawPage(file: OpenFile, number: number, side: number): Promise<HTMLCanvasElement> {
  const page = await file.getPage(number);
  const natural = page.getViewport({ scale: finest });
  const size = fittedSize(natural.width, natural.height, side);
  const viewport = page.getViewport({ scale: finest * (size.width / natural.width) });
  const [canvas] = blankCanvas(size.width, size.height);
  await page.render({ canvas, viewport, background: "#ffffff" }).promise;
  page.cleanup();
  return canvas;
}

function refusal(name: string, error: unknown): string {
  const kind = error instanceof Error ? error.name : "";
  if (kind === "PasswordException")
    return `“${name}” is locked with a password. Save a copy without one, and place that.`;
  if (kind === "InvalidPDFException")
    return `“${name}” can't be read as a PDF: the file is damaged, or something else. Save it anew, or as a picture.`;
  return `“${name}” can't be read (${error instanceof Error ? error.message : String(error)}). Save the page as a picture, and place that.`;
}
