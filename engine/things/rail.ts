import type { Quantity } from '../base/quantity.ts';

/** What the rails are like today. */
export const railStates = ['dry', 'damp', 'wet', 'greasy', 'sanded'] as const;
export type RailState = (typeof railStates)[number];

/** What a stretch may be by itself: worse than dry, and sand is nobody's habit. */
export const badRail: readonly ['damp', 'wet', 'greasy'] = ['damp', 'wet', 'greasy'];

/** What a stretch may be seen to be. */
export const seenRail: readonly ['dry', ...typeof badRail] = ['dry', ...badRail];

/** Adhesion under wheels that no sand reaches: sand is thrown by the engine, on a dry rail. */
export const unsanded = (
  { adhesion }: { readonly adhesion: Readonly<Record<RailState, Quantity>> },
  state: RailState,
): Quantity => adhesion[state === 'sanded' ? 'dry' : state];

type Adhesions = Readonly<Record<RailState, Quantity>>;

/** Of two states the one that holds less. */
export const worseRail = (adhesion: Adhesions, a: RailState, b: RailState): RailState =>
  adhesion[b].value < adhesion[a].value ? b : a;

const byWetness: readonly RailState[] = ['sanded', 'dry', 'damp', 'wet', 'greasy'];

/** Of two states the one that wets the blocks more. */
export const wetter = (a: RailState, b: RailState): RailState =>
  byWetness.indexOf(b) > byWetness.indexOf(a) ? b : a;
