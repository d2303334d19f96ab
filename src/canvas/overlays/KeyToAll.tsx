/** From a key on the plan to the key of everything. */
import { openDialog } from "../../store/actions";

const words = "What the colours and signs mean";

export function KeyToAll() {
  return (
    <button
      type="button"
      className="key-to-all"
      aria-label={`all signs: ${words}`}
      title={words}
      onClick={() => openDialog("signs")}
    >
      all signs
    </button>
  );
}
