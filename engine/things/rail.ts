import type { Quantity } from '../base/quantity.ts';

/** What the rails are like today. */
export const railStates = ['dry', 'damp', 'wet', 'greasy', 'sanded'] as const;
export type RailState = (typeof railStates)[number];

/** What a stretch may be by itself: worse than dry, and sand is nobody's habit. */
export const badRail: readonly ['damp', 'wet', 'greasy'] = ['damp', 'wet', 'greasy'];

/** Said of a stretch: as much worse than the day, whatever the day is. */
export const ONE_STEP_WORSE = 'one-step-worse';

/** What the line may say of a stretch. */
export type UsualRail = RailState | typeof ONE_STEP_WORSE;

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

/**
 * The next worse state than the day's in the order dry, damp, wet, greasy that really holds less: rain washes a rail, so
 * that after damp comes greasy. A sanded day's rail is dry beneath. Where none holds less than the day, the day's own.
 */
export function oneStepWorse(adhesion: Adhesions, day: RailState): RailState {
  const less = (state: RailState): boolean => adhesion[state].value < adhesion[day].value;
  const after = (badRail as readonly RailState[]).indexOf(day) + 1;
  return badRail.slice(after).find(less) ?? day;
}

/** What the line says of a stretch, on a day. */
export const railOnDay = (adhesion: Adhesions, usual: UsualRail, day: RailState): RailState =>
  usual === ONE_STEP_WORSE ? oneStepWorse(adhesion, day) : usual;

const byWetness: readonly RailState[] = ['sanded', 'dry', 'damp', 'wet', 'greasy'];

/** Of two states the one that wets the blocks more. */
export const wetter = (a: RailState, b: RailState): RailState =>
  byWetness.indexOf(b) > byWetness.indexOf(a) ? b : a;
