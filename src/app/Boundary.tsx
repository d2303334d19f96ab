/** Where drawing the window fails, the project is still here: a calm page with ways on, never a white one. */
import { Component, type ErrorInfo, type ReactNode } from "react";
import { undoLabel } from "../document";
import { undoEdit } from "../store/actions";
import { appStore } from "../store/store";
import type { Files } from "./files";

interface BoundaryProps {
  readonly files: Files;
  readonly children: ReactNode;
}

interface BoundaryState {
  readonly error: Error | null;
}

export class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { error: null };

  static getDerivedStateFromError(error: unknown): BoundaryState {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  private readonly again = () => this.setState({ error: null });

  private readonly takeBack = () => {
    undoEdit();
    this.again();
  };

  override render(): ReactNode {
    const { error } = this.state;
    if (error === null) return this.props.children;
    const last = undoLabel(appStore.getState().history);
    return (
      <main className="broken" role="alert">
        <h1>The window couldn't be drawn.</h1>
        <p>Your plan is safe: nothing of it is lost. Save a copy first, then try one of the other ways on.</p>
        <div className="broken-ways">
          <button
            type="button"
            className="button button-accent"
            onClick={() => void this.props.files.saveAs()}
          >
            Save a copy
          </button>
          {last === null ? null : (
            <button type="button" className="button button-plain" onClick={this.takeBack}>
              Undo the last edit ({last})
            </button>
          )}
          <button type="button" className="button button-plain" onClick={this.again}>
            Try again
          </button>
        </div>
        <details>
          <summary>What went wrong</summary>
          <pre>{error.stack ?? error.message}</pre>
        </details>
      </main>
    );
  }
}
