/** Text whose trade words can be asked about: a click tells what one means, without leaving the page. */
import { Button, Dialog, DialogTrigger, Heading, Popover } from "react-aria-components";
import { type Term, wordsOf } from "../../help";
import { openGlossary } from "../../store/actions";

export function Linked({ text }: { text: string }) {
  return wordsOf(text).map(({ text: words, term }, index) =>
    // biome-ignore lint/suspicious/noArrayIndexKey: the pieces have no name but their order
    term ? <TermWord key={index} words={words} term={term} /> : <span key={index}>{words}</span>,
  );
}

function TermWord({ words, term }: { words: string; term: Term }) {
  return (
    <DialogTrigger>
      <Button className="term">{words}</Button>
      <Popover className="popover term-popover" placement="bottom start">
        <Dialog className="why">
          {({ close }) => (
            <>
              <Heading slot="title" className="why-title">
                {term.name}
              </Heading>
              <Also term={term} />
              <p>
                <Plain text={term.meaning} />
              </p>
              <Button
                className="link"
                onPress={() => {
                  close();
                  openGlossary(term.name);
                }}
              >
                Words of the trade
              </Button>
            </>
          )}
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}

/** The text without its links. */
function Plain({ text }: { text: string }) {
  return wordsOf(text)
    .map(({ text: words }) => words)
    .join("");
}

export function Also({ term }: { term: Term }) {
  return term.also ? <p className="soft small">{`also: ${term.also.join(", ")}`}</p> : null;
}
