/** Asks for the page of a PDF, by number and by sight. */
import { type FormEvent, useEffect, useRef, useState } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { useStore } from "zustand";
import { Action } from "../../panels/fields/Choice";
import { askedPageStore } from "./askingPage";
import type { PdfFile } from "./pdfFile";
import "./pictures.css";

export function PageDialog() {
  const { question, answer } = useStore(askedPageStore);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={question !== null}
      onOpenChange={(open) => {
        if (!open) answer(null);
      }}
      isDismissable
    >
      <Modal className="modal modal-small">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Which page?
          </Heading>
          {question ? <PageForm {...question} answer={answer} /> : null}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

interface PageFormProps {
  readonly name: string;
  readonly file: PdfFile;
  readonly answer: (page: number | null) => void;
}

function PageForm({ name, file, answer }: PageFormProps) {
  const [text, setText] = useState("1");
  const page = pageNumber(text, file.pages);
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (page !== null) answer(page);
  };
  const step = (by: number) => setText(String(Math.min(file.pages, Math.max(1, (page ?? 1) + by))));
  return (
    <form onSubmit={take}>
      <p className="soft">{`${name} has ${file.pages} pages.`}</p>
      <PagePicture file={file} page={page} />
      <div className="page-row">
        <Action look="quiet" isDisabled={page === 1} onPress={() => step(-1)}>
          Page before
        </Action>
        <label className="page-number">
          <span className="field-label">Page</span>
          <input
            className="field-input"
            inputMode="numeric"
            // biome-ignore lint/a11y/noAutofocus: the dialog asks for this first
            autoFocus
            value={text}
            aria-invalid={page === null}
            onFocus={(event) => event.currentTarget.select()}
            onChange={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Action look="quiet" isDisabled={page === file.pages} onPress={() => step(1)}>
          Page after
        </Action>
      </div>
      {page === null ? (
        <p className="field-fault" role="alert">{`Type a page number from 1 to ${file.pages}.`}</p>
      ) : null}
      <div className="dialog-acts">
        <Action look="accent" type="submit" isDisabled={page === null}>
          Place this page
        </Action>
        <Action look="quiet" onPress={() => answer(null)}>
          Cancel
        </Action>
      </div>
    </form>
  );
}

function pageNumber(text: string, pages: number): number | null {
  const number = Number(text.trim());
  return text.trim() !== "" && Number.isInteger(number) && number >= 1 && number <= pages ? number : null;
}

/** Longest side of the small picture, px: twice its size on the page, for fine screens. */
const previewSide = 520;

/** The page that would be placed; the last one stays until the next is drawn. */
function PagePicture({ file, page }: { file: PdfFile; page: number | null }) {
  const box = useRef<HTMLDivElement>(null);
  const [fault, setFault] = useState(false);
  useEffect(() => {
    if (page === null) return;
    let wanted = true;
    file.draw(page, previewSide).then(
      (canvas) => {
        if (!wanted) return;
        setFault(false);
        canvas.dataset.page = String(page);
        box.current?.replaceChildren(canvas);
      },
      () => {
        if (wanted) setFault(true);
      },
    );
    return () => {
      wanted = false;
    };
  }, [file, page]);
  return (
    <>
      <div className="page-picture" ref={box} role="img" aria-label="The page as it would be placed" />
      {fault ? <p className="field-fault">This page can't be drawn. Choose another one.</p> : null}
    </>
  );
}
