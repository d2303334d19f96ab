/** Pipes where swales cross drives: size, cover, water before the inlet, inverts. */
import { type Drainage, siteEdits } from "../../document";
import { pipeWords } from "../../solve/pipe-words";
import type { PipeResult } from "../../solve/results";
import { goTo, run, tryRun } from "../../store/actions";
import { Choice, IconAction } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { Icon } from "../icons";
import { Caution, Facts, Section } from "../parts";
import { useNotation, useProject, useResults } from "../useProject";

const crossings = [
  { value: "pipe", words: "a pipe takes it under the drive" },
  { value: "dip", words: "the drive dips down to its bed" },
] as const;

const kinds = [
  { value: "metal-projecting", words: "corrugated metal that projects" },
  { value: "metal-headwall", words: "corrugated metal in a headwall" },
  { value: "concrete-groove", words: "concrete, groove end" },
  { value: "concrete-square", words: "concrete, square edge" },
] as const;

export function Pipes() {
  const pipes = useResults(({ water }) => water.pipes);
  const pipe = useProject(({ drainage }) => drainage.pipe);
  if (pipes.length === 0 && pipe.crossing === "pipe") return null;
  return (
    <Section title="Pipes under drives">
      {pipes.map((one) => (
        <PipeCard key={`${one.swale} ${one.drive} ${one.at.join(" ")}`} pipe={one} />
      ))}
      <Choice
        label="Where a swale crosses a drive"
        value={pipe.crossing}
        options={crossings}
        onChoose={(crossing) => run(siteEdits.changeDrainage, { part: "pipe", patch: { crossing } })}
      />
      {pipe.crossing === "dip" ? (
        <p className="soft small">
          The drive dips down to the swale's bed: water runs over it in a storm. Pave the dip with stone that
          it can't carry off, and don't drive through running water.
        </p>
      ) : (
        <PipeFields />
      )}
      <Caution>
        A pipe at a public road or in a stream needs a permit, and its size is the road office's or an
        engineer's to settle.
      </Caution>
    </Section>
  );
}

function PipeFields() {
  const notation = useNotation();
  const pipe = useProject(({ drainage }) => drainage.pipe);
  const change = (patch: Partial<Drainage["pipe"]>) =>
    tryRun(siteEdits.changeDrainage, { part: "pipe", patch });
  return (
    <>
      <Choice
        label="Kind of pipe"
        value={pipe.kind}
        options={kinds}
        onChoose={(kind) => run(siteEdits.changeDrainage, { part: "pipe", patch: { kind } })}
      />
      <LengthField
        label="Bore"
        small
        m={pipe.bore}
        placeholder="the least that does"
        help="Empty: the least standard size that carries the storm."
        onEmpty={() => change({ bore: null })}
        onCommit={(bore) => change({ bore })}
      />
      <LengthField
        label="Cover wanted over it"
        small
        m={pipe.cover}
        least={0}
        help={`From the maker's table for the pipe and the load; ${notation.rule("12 in", "300 mm")} is common practice.`}
        onCommit={(cover) => change({ cover })}
      />
    </>
  );
}

function PipeCard({ pipe }: { pipe: PipeResult }) {
  const notation = useNotation();
  const good = pipe.verdict === "carries it";
  return (
    <div className="card">
      <p className={`check check-${pipe.verdict === null ? "note" : good ? "ok" : "bad"}`}>
        <Icon name={pipe.verdict === null ? "note" : good ? "check" : "warn"} />
        <span>
          <b>{`${pipe.name}.`}</b> {pipeWords(pipe, { length: notation.length, bore: notation.bore })}
        </span>
      </p>
      <Facts
        facts={[
          { name: "Invert upstream", figure: notation.length(pipe.inverts[0]) },
          { name: "Invert downstream", figure: notation.length(pipe.inverts[1]) },
          {
            name: "Length",
            figure: notation.length(pipe.length),
            note: `falls ${notation.slope(pipe.fall)}`,
          },
          ...(pipe.peak === null
            ? []
            : [{ name: "Comes to it in the storm", figure: notation.flow(pipe.peak) }]),
          ...(pipe.headwater === null
            ? []
            : [
                {
                  name: "Water before its inlet stands at",
                  figure: notation.length(pipe.headwater),
                  why: { kind: "pipe" as const, id: pipe.name, of: `water before ${pipe.name}` },
                  note: `${pipe.by === "inlet" ? "the inlet governs" : "the pipe and what stands below it govern"}; the drive's low point over the ditch: ${notation.length(pipe.lowPoint)}`,
                },
              ]),
        ]}
      />
      <IconAction icon="place" label={`Show ${pipe.name}`} onPress={() => goTo(pipe.at)} />
    </div>
  );
}
