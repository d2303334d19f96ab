/** How each kind of rod is read, in a small drawing: the beam is accented, an arrow shows which way numbers grow. */
import type { Rod } from "../../document";
import { Area, Arrow, Line, Note } from "../help/drawings/parts";

const captions: Readonly<Record<Rod["kind"], string>> = {
  plain: "A tape on the ground, read where the beam hits it; its numbers grow upwards from the ground.",
  direct: "A rod whose tape is set so that the receiver's edge shows the ground's own height.",
  "cut-fill": "A rod with zero at grade in its middle, cut to one side of it and fill to the other.",
  line: "A beam line on a post, and a measure from it down to the ground.",
};

export function RodDrawing({ kind }: { kind: Rod["kind"] }) {
  return (
    <svg className="rod-kind" viewBox="0 0 250 104" role="img" aria-label={captions[kind]}>
      <Area of="earth" d="M0 84 120 88 250 96V104H0z" />
      <Line d="M0 84 120 88 250 96" />
      <Line d="M26 30 14 84M26 30 38 85" />
      <Area of="thing" d="M18 16h16v14H18z" />
      <Line look="accent" dashed d="M34 23H236" />
      <Note x={60} y={17} look="accent">
        beam
      </Note>
      {kind === "line" ? <Post /> : <Staff kind={kind} />}
    </svg>
  );
}

function Post() {
  return (
    <>
      <Area of="thing" d="M150 10h10v82h-10z" />
      <Line look="accent" d="M144 23h22" />
      <Arrow look="ink" from={[182, 23]} to={[182, 92]} />
      <Note x={190} y={62}>
        down is +
      </Note>
    </>
  );
}

const words = {
  plain: { from: [182, 88], to: [182, 30], text: "reading" },
  direct: { from: [182, 88], to: [182, 30], text: "height" },
  "cut-fill": { from: [182, 56], to: [182, 30], text: "+ cut" },
} as const;

function Staff({ kind }: { kind: Exclude<Rod["kind"], "line"> }) {
  const { from, to, text } = words[kind];
  return (
    <>
      <Area of="thing" d="M150 6h8v84h-8z" />
      <Line d="M150 20h4M150 32h4M150 44h4M150 56h4M150 68h4M150 80h4" />
      <Area of="concrete" d="M160 16h10v14h-10z" />
      <Arrow look="ink" from={from} to={to} />
      <Note x={190} y={kind === "cut-fill" ? 44 : 62}>
        {text}
      </Note>
      {kind === "cut-fill" ? (
        <>
          <Line look="soft" d="M146 56h20" />
          <Arrow look="ink" from={[182, 58]} to={[182, 86]} />
          <Note x={190} y={80}>
            − fill
          </Note>
        </>
      ) : null}
    </>
  );
}
