/** Where the ground comes from: a file that is chosen or dropped, or rows that are pasted. */
import { type DragEvent, useRef, useState } from "react";
import { Action } from "../../panels/fields/Choice";
import { openDialog } from "../../store/actions";
import { groundFiles } from "./importing";

export interface ChooseFormProps {
  readonly fault: string | null;
  readonly onFile: (file: File) => void;
  readonly onPaste: (text: string) => void;
}

export function ChooseForm({ fault, onFile, onPaste }: ChooseFormProps) {
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const drop = (event: DragEvent) => {
    event.preventDefault();
    event.stopPropagation();
    const [file] = event.dataTransfer.files;
    if (file) onFile(file);
  };
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same by key */}
      <div className="import-drop" onDrop={drop} onDragOver={(event) => event.preventDefault()}>
        <p>
          Points, lines or surfaces: CSV and other tables, DXF, LandXML, GeoJSON, ASCII grids, GeoTIFF
          terrain.
        </p>
        <Action icon="folder" look="accent" onPress={() => field.current?.click()}>
          Choose a file…
        </Action>
        <p className="soft small">or drop it here</p>
        <input
          ref={field}
          className="visually-hidden"
          type="file"
          accept={groundFiles}
          aria-label="File of ground"
          tabIndex={-1}
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            event.currentTarget.value = "";
            if (file) onFile(file);
          }}
        />
      </div>
      {fault ? (
        <p className="field-fault import-said" role="alert">
          {fault}
        </p>
      ) : null}
      <label className="import-paste">
        <span className="field-label">Or paste rows of a spreadsheet</span>
        <textarea
          rows={5}
          value={text}
          spellCheck={false}
          placeholder={"1\t105.20\t48.75\t99.31"}
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <div className="dialog-acts">
        <Action isDisabled={text.trim() === ""} onPress={() => onPaste(text)}>
          Take the pasted rows
        </Action>
        <Action look="quiet" onPress={() => openDialog(null)}>
          Cancel
        </Action>
      </div>
    </>
  );
}
