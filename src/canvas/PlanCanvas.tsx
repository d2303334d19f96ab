/** The plan: ground, design and tools on one sheet, with its legend, read-out and tool bar. */
import "./canvas.css";

export function PlanCanvas() {
  return <section className="plan-canvas" aria-label="Plan" />;
}
