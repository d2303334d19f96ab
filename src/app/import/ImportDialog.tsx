/** A file of ground, or pasted rows, looked at before anything of it joins the plan. */
import { useEffect, useRef, useState } from "react";
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import {
  fileKind,
  guessTable,
  type Incoming,
  type RasterWish,
  type TableMapping,
  type ThinnedPoints,
  textOf,
  tooLarge,
} from "../../files/incoming";
import { Action } from "../../panels/fields/Choice";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { ChooseForm } from "./ChooseForm";
import { importStore } from "./importing";
import { LookForm } from "./LookForm";
import { RasterPart } from "./RasterPart";
import { beginReading, type Reading } from "./reader";
import { TableForm } from "./TableForm";
import "./import.css";

interface Source {
  readonly name: string;
  readonly bytes: Uint8Array;
}

type Stage =
  | { readonly at: "choose"; readonly fault: string | null }
  | {
      readonly at: "table";
      readonly source: Source;
      readonly mapping: TableMapping;
      readonly fault: string | null;
    }
  | { readonly at: "reading"; readonly source: Source; readonly share: number }
  | {
      readonly at: "look";
      readonly source: Source;
      readonly mapping: TableMapping | null;
      readonly incoming: Incoming;
      readonly thinned: ThinnedPoints | null;
      readonly raster: RasterStage | null;
    };

/** A grid of heights: where all of it lies, the part that was read, and why another part couldn't be. */
interface RasterStage {
  readonly whole: NonNullable<Incoming["bounds"]>;
  readonly wish: RasterWish | null;
  readonly fault: string | null;
}

export function ImportDialog() {
  const open = useApp((state) => state.dialog === "import-ground");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => {
        if (!to) openDialog(null);
      }}
    >
      <Modal className="modal import-modal">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Import ground
          </Heading>
          {open ? <Import /> : null}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

const begin: Stage = { at: "choose", fault: null };

function Import() {
  const [stage, setStage] = useState<Stage>(begin);
  const reading = useRef<Reading | null>(null);
  useEffect(() => () => reading.current?.stop(), []);

  const read = async (
    source: Source,
    mapping: TableMapping | null,
    part?: { readonly wish: RasterWish; readonly before: Stage & { at: "look" } },
  ) => {
    setStage({ at: "reading", source, share: 0 });
    const job = beginReading({ ...source, mapping, raster: part?.wish ?? null }, (share) =>
      setStage((now) => (now.at === "reading" ? { ...now, share } : now)),
    );
    reading.current = job;
    const { result, thinned } = await job.answer;
    if (reading.current !== job) return;
    reading.current = null;
    if (result.ok) {
      const { incoming } = result;
      const whole = part?.before.raster?.whole ?? incoming.bounds;
      const raster = isRaster(incoming) && whole ? { whole, wish: part?.wish ?? null, fault: null } : null;
      setStage({ at: "look", source, mapping, incoming, thinned, raster });
    } else if (part?.before.raster) {
      const { before } = part;
      setStage({ ...before, raster: { ...part.before.raster, wish: part.wish, fault: result.message } });
    } else if (mapping) setStage({ at: "table", source, mapping, fault: result.message });
    else setStage({ at: "choose", fault: result.message });
  };

  const take = (source: Source) => {
    const kind = fileKind(source.name, source.bytes);
    if (typeof kind === "object") setStage({ at: "choose", fault: kind.fault });
    else if (kind !== "table") void read(source, null);
    else {
      const { form, uses } = guessTable(startOf(source));
      setStage({ at: "table", source, mapping: { form, uses }, fault: null });
    }
  };
  const takeFile = async (file: File) => {
    const large = tooLarge(file.name, file.size);
    if (large) return setStage({ at: "choose", fault: large });
    try {
      take({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
    } catch {
      setStage({ at: "choose", fault: `“${file.name}” can't be read. It may have been moved or deleted.` });
    }
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: a dropped file is taken once, as the dialog opens
  useEffect(() => {
    const { file } = importStore.getState();
    importStore.setState({ file: null });
    if (file) void takeFile(file);
  }, []);

  if (stage.at === "choose")
    return (
      <ChooseForm
        fault={stage.fault}
        onFile={(file) => void takeFile(file)}
        onPaste={(text) => take({ name: "the pasted rows", bytes: new TextEncoder().encode(text) })}
      />
    );
  if (stage.at === "table")
    return (
      <TableForm
        name={stage.source.name}
        text={startOf(stage.source)}
        mapping={stage.mapping}
        fault={stage.fault}
        onChange={(mapping) => setStage({ ...stage, mapping, fault: null })}
        onRead={() => void read(stage.source, stage.mapping)}
        onBack={() => setStage(begin)}
      />
    );
  if (stage.at === "reading")
    return <Progress name={stage.source.name} share={stage.share} onStop={() => reading.current?.stop()} />;
  const { source, mapping, incoming, thinned, raster } = stage;
  const back = (): Stage => (mapping ? { at: "table", source, mapping, fault: null } : begin);
  return (
    <LookForm
      name={source.name}
      incoming={incoming}
      thinned={thinned}
      part={
        raster ? (
          <>
            <RasterPart
              whole={raster.whole}
              wish={raster.wish}
              onRead={(wish) => void read(source, mapping, { wish, before: stage })}
            />
            {raster.fault ? (
              <p className="field-fault import-said" role="alert">
                {raster.fault}
              </p>
            ) : null}
          </>
        ) : null
      }
      onBack={() => setStage(back())}
    />
  );
}

function isRaster({ kind }: Incoming): boolean {
  return kind === "ascii-grid" || kind === "geotiff";
}

/** So much of a table as its first rows stand in. */
function startOf({ bytes }: Source): string {
  return textOf(bytes.subarray(0, 64 * 1024));
}

function Progress({ name, share, onStop }: { name: string; share: number; onStop: () => void }) {
  return (
    <>
      <p>{`Reading ${name}…`}</p>
      <progress className="import-progress" max={1} value={share} aria-label={`Reading ${name}`} />
      <div className="dialog-acts">
        <Action onPress={onStop}>Stop</Action>
      </div>
    </>
  );
}
