import type { Quantity } from '../base/quantity.ts';

/** What the rails are like today. */
export const railStates = ['dry', 'damp', 'wet', 'greasy', 'sanded'] as const;
export type RailState = (typeof railStates)[number];

/** Adhesion under wheels that no sand reaches: sand is thrown by the engine, on a dry rail. */
export const unsanded = (
  { adhesion }: { readonly adhesion: Readonly<Record<RailState, Quantity>> },
  state: RailState,
): Quantity => adhesion[state === 'sanded' ? 'dry' : state];
