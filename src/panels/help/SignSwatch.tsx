/** One sign of the key: as the plan draws it, or a sample of what the window makes of it. */
import type { ReactNode } from "react";
import type { DrawingMark } from "../../drawing";
import { MarksSvg } from "../foundation/MarksSvg";
import { Icon } from "../icons";
import { StateSign } from "../Standing";
import type { Sample, Sign } from "./signs";

const [width, height] = [44, 20];
/** Sign's own pixels are the drawing's metres. */
const scale = { pxPerMetre: 1, left: 0, top: 0, minX: 0, maxY: height };
const middle = height / 2;

/** Symbols a little larger than on the plan, mm. */
const symbolSize = 3.2;

function marksOf(sign: Exclude<Sign, { as: "colours" | "state" | "sample" }>): readonly DrawingMark[] {
  const box = [4, 3, width - 4, 3, width - 4, height - 3, 4, height - 3];
  switch (sign.as) {
    case "line":
      return [{ kind: "line", points: [2, middle, width - 2, middle], style: sign.style }];
    case "area":
      return [{ kind: "area", rings: [box], style: sign.style }];
    case "symbol":
      return [
        { kind: "symbol", at: [width / 2, middle], symbol: sign.symbol, size: symbolSize, style: sign.style },
      ];
  }
}

export function SignSwatch({ sign }: { sign: Sign }) {
  if (sign.as === "colours")
    return (
      <span className="sign-swatch sign-colours" aria-hidden="true">
        {sign.inks.map((ink) => (
          <span key={ink} style={{ background: `var(--${ink})` }} />
        ))}
      </span>
    );
  if (sign.as === "state")
    return (
      <span className="sign-swatch">
        <StateSign state={sign.state} />
      </span>
    );
  if (sign.as === "sample")
    return (
      <span className="sign-swatch" aria-hidden="true">
        {samples[sign.look]}
      </span>
    );
  return (
    <svg className="sign-swatch" width={width} height={height} aria-hidden="true">
      <MarksSvg marks={marksOf(sign)} scale={scale} />
    </svg>
  );
}

const flag = <path d="M2 3h30l8 7-8 7H2z" />;
const zone = <rect x="18" y="1" width="8" height="18" rx="2" />;

function Drawn({ ink, children }: { ink: string; children: ReactNode }) {
  return (
    <svg width={width} height={height} aria-hidden="true" style={{ fill: `var(--${ink})` }}>
      {children}
    </svg>
  );
}

const samples: Readonly<Record<Sample, ReactNode>> = {
  "rod-floor": <Drawn ink="accent">{flag}</Drawn>,
  "rod-outside": <Drawn ink="bad">{flag}</Drawn>,
  "rod-allowed": <Drawn ink="ok">{zone}</Drawn>,
  "rod-none": (
    <Drawn ink="bad">
      <g opacity={0.35}>{zone}</g>
    </Drawn>
  ),
  warning: (
    <span className="sign-warn">
      <Icon name="warn" />
    </span>
  ),
  fault: (
    <span className="sign-bad">
      <Icon name="stop" />
    </span>
  ),
  "guessed-words": <span className="sign-warn">12.3</span>,
  "odd-shot": <span className="book-question">?</span>,
  untied: (
    <span className="sign-warn">
      <Icon name="warn" />
    </span>
  ),
  misread: <span className="book-bad">1.2x</span>,
  "aside-row": <s className="soft">1.234</s>,
  "chosen-row": <span className="sign-chosen">1.234</span>,
};
