/** A grid of stakes that is being laid: what the plan shows of it, and the row that was clicked for it. */
import { createStore } from "zustand/vanilla";

type XY = readonly [number, number];

/** The first stake, and a place that its row runs towards. */
export interface StakeRow {
  readonly from: XY;
  readonly towards: XY;
}

export interface StakeGridState {
  /** Stakes in the order they are walked, m. */
  readonly stakes: readonly XY[];
  /** The sheet they are typed in, while it lies over the plan. */
  readonly sheet: HTMLElement | null;
  /** Clicking is over: with a row, or given up. The sheet takes it over. */
  readonly picked: { readonly row: StakeRow | null } | null;
}

export const stakeGridStore = createStore<StakeGridState>(() => ({
  stakes: [],
  sheet: null,
  picked: null,
}));

export function showStakes(stakes: readonly XY[]): void {
  if (stakes.length === 0 && stakeGridStore.getState().stakes.length === 0) return;
  stakeGridStore.setState({ stakes });
}

export function pickStakeRow(picked: StakeGridState["picked"]): void {
  stakeGridStore.setState({ picked });
}

export function stakeSheet(sheet: HTMLElement | null): void {
  stakeGridStore.setState({ sheet });
}
