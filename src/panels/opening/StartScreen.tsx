/** The first screen: a new plan, a file, what was open lately, what a crash left, and the demos. */
import { memo } from "react";
import { Button } from "react-aria-components";
import { Action } from "../fields/Choice";
import { Icon, Logo } from "../icons";
import { HowItGoes } from "./HowItGoes";
import { Stamp } from "./Stamp";
import type { Thumbnail } from "./thumbnail";

export interface DemoCard {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly figures: string;
  readonly picture: Thumbnail | null;
}

export interface RecentEntry {
  readonly name: string;
  readonly folder: string;
  readonly token: string;
}

export interface StartScreenProps {
  readonly demos: readonly DemoCard[];
  readonly recent: readonly RecentEntry[];
  /** Said where there is no recent file: why, and what to do instead. */
  readonly noRecent: string;
  readonly recovered: { readonly name: string; readonly when: string } | null;
  readonly onNew: () => void;
  readonly onOpen: () => void;
  readonly onOpenRecent: (token: string) => void;
  readonly onOpenDemo: (id: string) => void;
  readonly onRecover: () => void;
  readonly onForget: () => void;
  /** The tour; offered with more weight until it was seen. */
  readonly onTour: () => void;
  readonly tourSeen: boolean;
}

export function StartScreen(props: StartScreenProps) {
  const { demos, recent, recovered } = props;
  return (
    <main className="start">
      <section className="start-first">
        <h1 className="start-name">
          <Logo />
          Drysill
        </h1>
        <p className="start-job">
          How high should the floor be? Shoot the ground with a laser, settle the floor on falling ground, and
          set the building out from one mark.
        </p>
        <div className="start-acts">
          <Action look="accent" icon="plus" onPress={props.onNew}>
            New plan
          </Action>
          <Action icon="folder" onPress={props.onOpen}>
            Open a file…
          </Action>
          <Action look={props.tourSeen ? "quiet" : "plain"} icon="help" onPress={props.onTour}>
            {props.tourSeen ? "The tour again" : "Take the tour"}
          </Action>
        </div>
        <p className="soft small">Or drop a project file anywhere on this window.</p>
        {recovered ? (
          <Recovered recovered={recovered} onRecover={props.onRecover} onForget={props.onForget} />
        ) : null}
        <Recent recent={recent} noRecent={props.noRecent} onOpenRecent={props.onOpenRecent} />
        <HowItGoes />
      </section>
      <section className="start-demos" aria-labelledby="start-demos-title">
        <h2 className="start-heading" id="start-demos-title">
          Try it on a demo
        </h2>
        <ul className="demos">
          {demos.map((demo) => (
            <Demo key={demo.id} demo={demo} onOpenDemo={props.onOpenDemo} />
          ))}
        </ul>
      </section>
    </main>
  );
}

interface RecoveredProps extends Pick<StartScreenProps, "onRecover" | "onForget"> {
  readonly recovered: { readonly name: string; readonly when: string };
}

function Recovered({ recovered, onRecover, onForget }: RecoveredProps) {
  return (
    <section className="recovered" aria-label="Unsaved work was found">
      <p>
        <b>Unsaved work was found:</b> {recovered.name}, last touched {recovered.when}.
      </p>
      <div className="start-acts">
        <Action look="accent" onPress={onRecover}>
          Bring it back
        </Action>
        <Action look="quiet" onPress={onForget}>
          Not now
        </Action>
      </div>
    </section>
  );
}

/** As many as leave the rest of the screen in sight. */
const shownRecent = 5;

type RecentProps = Pick<StartScreenProps, "recent" | "noRecent" | "onOpenRecent">;

function Recent({ recent, noRecent, onOpenRecent }: RecentProps) {
  return (
    <section aria-labelledby="start-recent-title">
      <h2 className="start-heading" id="start-recent-title">
        Lately
      </h2>
      {recent.length === 0 ? <p className="soft start-none">{noRecent}</p> : null}
      <ul className="recent">
        {recent.slice(0, shownRecent).map(({ name, folder, token }) => (
          <li key={token}>
            <Button className="recent-file" onPress={() => onOpenRecent(token)}>
              <Icon name="sheet" />
              <span className="recent-name">{name}</span>
              <span className="recent-folder">{folder}</span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

const Demo = memo(function Demo({ demo, onOpenDemo }: { demo: DemoCard; onOpenDemo: (id: string) => void }) {
  return (
    <li>
      <Button className="demo" onPress={() => onOpenDemo(demo.id)}>
        <Stamp picture={demo.picture} />
        <span className="demo-words">
          <span className="demo-name">{demo.name}</span>
          <span className="demo-about">{demo.about}</span>
          <span className="demo-figures">{demo.figures}</span>
        </span>
      </Button>
    </li>
  );
});
