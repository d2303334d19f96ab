/** The guide to the present step: its drawing, what to do, what to watch, what goes wrong, where it can hurt. */
import { Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { type GuideStep, guideSteps, guides } from "../../help";
import { openDialog, openGlossary, setStep } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { Action, IconAction } from "../fields/Choice";
import { stepTitles } from "../steps";
import { drawings } from "./drawings";
import { Linked } from "./Linked";

export function GuideDialog() {
  const open = useApp((state) => state.dialog === "guide");
  const step = useApp((state) => state.step);
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "guide" : null)}
      isDismissable
    >
      <Modal className="modal modal-wide modal-guide">
        <Dialog className="dialog guide-dialog">
          <GuidePage key={step} step={step} />
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function GuidePage({ step }: { step: GuideStep }) {
  const guide = guides[step];
  const Drawing = drawings[step];
  return (
    <>
      <Heading slot="title" className="dialog-title">
        {guide.title}
      </Heading>
      <div className="dialog-close">
        <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
      </div>
      <p className="guide-about">
        <Linked text={guide.about} />
      </p>
      <div className="guide-columns">
        <div className="guide-column">
          <figure className="guide-figure">
            <Drawing label={guide.caption} />
            <figcaption>
              <Linked text={guide.caption} />
            </figcaption>
          </figure>
          <Part title="Where it can hurt" look="caution" texts={guide.cautions} />
        </div>
        <div className="guide-column">
          <Part title="What you do" look="steps" texts={guide.doing} />
          <Part title="What to watch" look="list" texts={guide.watch} />
          <Part title="What goes wrong again and again" look="list" texts={guide.slips} />
        </div>
      </div>
      <GuideFoot step={step} />
    </>
  );
}

interface PartProps {
  readonly title: string;
  readonly look: "steps" | "list" | "caution";
  readonly texts: readonly string[];
}

function Part({ title, look, texts }: PartProps) {
  const List = look === "steps" ? "ol" : "ul";
  return (
    <section className={`guide-part guide-part-${look}`}>
      <h3 className="part-title">{title}</h3>
      <List>
        {texts.map((text) => (
          <li key={text}>
            <Linked text={text} />
          </li>
        ))}
      </List>
    </section>
  );
}

/** The guides beside this one; going there goes to their step as well. */
function GuideFoot({ step }: { step: GuideStep }) {
  const at = guideSteps.indexOf(step);
  const [before, after] = [guideSteps[at - 1], guideSteps[at + 1]];
  return (
    <div className="dialog-acts guide-foot">
      {before ? <Action onPress={() => setStep(before)}>{`Before: ${stepTitles[before]}`}</Action> : null}
      {after ? <Action onPress={() => setStep(after)}>{`Next: ${stepTitles[after]}`}</Action> : null}
      <span className="head-gap" />
      <Action look="quiet" onPress={() => openGlossary()}>
        Words of the trade
      </Action>
    </div>
  );
}
