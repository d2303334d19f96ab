/** Which part of a grid of heights comes in, and how many of them: typed in the file's own coordinates. */
import { type FormEvent, useState } from "react";
import { Input, Label, TextField } from "react-aria-components";
import { type Incoming, mostRasterPoints, type RasterWish } from "../../files/incoming";
import { Action } from "../../panels/fields/Choice";
import { parseNumber } from "../../units";

const sides = [
  ["minX", "West"],
  ["minY", "South"],
  ["maxX", "East"],
  ["maxY", "North"],
] as const;

export interface RasterPartProps {
  readonly whole: NonNullable<Incoming["bounds"]>;
  readonly wish: RasterWish | null;
  readonly onRead: (wish: RasterWish) => void;
}

export function RasterPart({ whole, wish, onRead }: RasterPartProps) {
  const part = wish?.window ?? whole;
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({
    ...Object.fromEntries(sides.map(([side]) => [side, told(part[side])])),
    most: String(wish?.most ?? mostRasterPoints),
  });
  const [fault, setFault] = useState<string | null>(null);
  const type = (name: string, text: string) => {
    setTexts({ ...texts, [name]: text });
    setFault(null);
  };
  const read = (event: FormEvent) => {
    event.preventDefault();
    const asked = rasterWish(texts);
    if (typeof asked === "string") setFault(asked);
    else onRead(asked);
  };
  return (
    <form className="raster-part" onSubmit={read}>
      <p className="field-label">Only what lies between, in the file's coordinates</p>
      <div className="raster-sides">
        {sides.map(([side, words]) => (
          <Typed key={side} words={words} text={texts[side] ?? ""} onType={(text) => type(side, text)} />
        ))}
        <Typed words="At most heights" text={texts.most ?? ""} onType={(text) => type("most", text)} />
        <Action type="submit">Read this part</Action>
      </div>
      {fault ? (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      ) : null}
    </form>
  );
}

interface TypedProps {
  readonly words: string;
  readonly text: string;
  readonly onType: (text: string) => void;
}

function Typed({ words, text, onType }: TypedProps) {
  return (
    <TextField className="raster-side" value={text} onChange={onType}>
      <Label>{words}</Label>
      <Input className="field-input" inputMode="decimal" />
    </TextField>
  );
}

/** What was typed as a wish, or in words why it is none. */
export function rasterWish(texts: Readonly<Record<string, string>>): RasterWish | string {
  const number = (name: string) => parseNumber(texts[name] ?? "");
  for (const [side, words] of sides)
    if (!Number.isFinite(number(side)))
      return `${words}: can't read “${(texts[side] ?? "").trim()}” as a number. Write one like 412.5.`;
  const window = { minX: number("minX"), minY: number("minY"), maxX: number("maxX"), maxY: number("maxY") };
  if (window.minX >= window.maxX) return "East must be more than west.";
  if (window.minY >= window.maxY) return "North must be more than south.";
  const most = number("most");
  if (!Number.isInteger(most) || most < 4) return "At most heights: write a whole number of at least 4.";
  return { window, most };
}

function told(value: number): string {
  return String(Number(value.toFixed(3)));
}
