/** The small "i" beside a figure: what it is made of, by which rule, from which source. */
import { memo } from "react";
import { Button, Dialog, DialogTrigger, Heading, Popover } from "react-aria-components";
import { type Why as Told, type WhyKind, whyOf } from "../../help";
import { useNotation, useProject, useResults } from "../useProject";
import { capital } from "../words";

export interface WhyProps {
  readonly kind: WhyKind;
  /** Which one; left out where there is one only. */
  readonly id?: string;
  /** The figure's name, for people who listen: "floor above the ground at A". */
  readonly of: string;
}

export const Why = memo(function Why({ kind, id = "", of }: WhyProps) {
  return (
    <DialogTrigger>
      <Button className="why-button" aria-label={`Why: ${of}`}>
        <svg viewBox="0 0 16 16" aria-hidden="true" focusable="false">
          <circle cx="8" cy="8" r="6.5" />
          <path d="M8 7.2v4M8 4.6v.3" />
        </svg>
      </Button>
      <Popover className="popover why-popover" placement="bottom end">
        <Dialog className="why">
          <WhyWords kind={kind} id={id} />
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
});

function WhyWords({ kind, id }: { kind: WhyKind; id: string }) {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const figures = useNotation();
  const told = whyOf({ kind, id }, { project, results, figures });
  return told ? (
    <Explained told={told} />
  ) : (
    <Heading slot="title" className="why-title">
      It isn't known yet.
    </Heading>
  );
}

function Explained({ told }: { told: Told }) {
  return (
    <>
      <div className="why-head">
        <Heading slot="title" className="why-title">
          {capital(told.title)}
        </Heading>
        <p className="why-figure">{told.figure}</p>
      </div>
      <dl className="why-inputs">
        {told.inputs.map(({ name, figure }) => (
          <div className="why-input" key={name}>
            <dt>{name}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
      <p className="why-formula">{capital(told.formula)}</p>
      <p>{told.rule}</p>
      <p className="soft small">{`Source: ${told.source}.`}</p>
    </>
  );
}
