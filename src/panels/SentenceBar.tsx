import { memo } from "react";
import { type SentencePart, sentence } from "./sentence";
import { useNotation, useProject, useResults } from "./useProject";

/** How things stand, in one sentence above the plan. */
export function SentenceBar() {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const notation = useNotation();
  const parts = sentence(project, results, notation);
  return (
    <section className="say" data-tour="sentence" aria-label="How things stand">
      <p>
        {parts.map((part, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the parts have no name but their order
          <Part key={index} {...part} />
        ))}
      </p>
    </section>
  );
}

const Part = memo(function Part({ text, strong }: SentencePart) {
  return strong ? <b>{text}</b> : <span>{text}</span>;
});
