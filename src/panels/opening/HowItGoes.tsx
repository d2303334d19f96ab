/** The job in three steps, each with a small drawing of our own. */
import type { ReactNode } from "react";

export function HowItGoes() {
  return (
    <section aria-labelledby="start-how-title">
      <h2 className="start-heading" id="start-how-title">
        How it goes
      </h2>
      <ol className="how">
        <HowStep drawing={<Shooting />} title="Shoot the ground">
          Type readings as the tape reads. A bigger reading is lower ground.
        </HowStep>
        <HowStep drawing={<Settling />} title="Settle the floor">
          Drag one height: fill, cut, loads, the drive and the water follow.
        </HowStep>
        <HowStep drawing={<SettingOut />} title="Set out from one mark">
          Print a site plan that tells every height from a mark that stays.
        </HowStep>
      </ol>
    </section>
  );
}

function HowStep({ drawing, title, children }: { drawing: ReactNode; title: string; children: ReactNode }) {
  return (
    <li className="how-step">
      <svg className="how-drawing" viewBox="0 0 84 54" aria-hidden="true" focusable="false">
        {drawing}
      </svg>
      <div>
        <h3 className="how-title">{title}</h3>
        <p className="soft">{children}</p>
      </div>
    </li>
  );
}

/** A laser on its tripod, its beam level, a rod on lower ground. */
function Shooting() {
  return (
    <>
      <path className="how-earth" d="M2 34 82 46V52H2z" />
      <path className="how-ground" d="M2 34 82 46" />
      <path className="how-line" d="m20 16-8 19.5M20 16l8 22M20 16v20.6" />
      <path className="how-solid" d="M16 9h8v7h-8z" />
      <path className="how-beam" d="M24 12.5h52" />
      <path className="how-line" d="M66 6v37.5M66 18h3M66 24h3M66 30h3M66 36h3" />
    </>
  );
}

/** A building across the fall, its floor a line with a handle, fill below it on the low side. */
function Settling() {
  return (
    <>
      <path className="how-fill" d="M22 30h40v12.5L22 36z" />
      <path className="how-ground" d="M2 33 82 45" />
      <path className="how-line" d="M22 38V14l20-9 20 9v30" />
      <path className="how-floor" d="M22 30h40" />
      <path className="how-handle" d="M74 24v12m-3-9 3-3 3 3m-6 6 3 3 3-3" />
    </>
  );
}

/** A sheet with a plan on it, a mark, and the line from which heights are told. */
function SettingOut() {
  return (
    <>
      <path className="how-paper" d="M14 4h56v46H14z" />
      <path className="how-line" d="M20 10h32v34H20z" strokeDasharray="7 2.5 1.5 2.5" />
      <path className="how-building" d="M28 17h17v12H28z" />
      <path className="how-mark" d="m25 40 3-5 3 5z" />
      <path className="how-thin" d="M57 12h9M57 17h9M57 22h9M57 27h6M57 40h9M57 44h9M36.5 29v15" />
    </>
  );
}
