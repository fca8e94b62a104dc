import type { Quantity } from '../base/quantity.ts';

/** What the rails are like today: bare, or with sand under the engine's driving wheels. `sanded` by itself is a dry rail. */
export const railStates = [
  'dry',
  'damp',
  'wet',
  'greasy',
  'sanded',
  'damp-sanded',
  'wet-sanded',
  'greasy-sanded',
] as const;
export type RailState = (typeof railStates)[number];

export const bareRails = ['dry', 'damp', 'wet', 'greasy'] as const;
export type BareRail = (typeof bareRails)[number];
export type SandedRail = Exclude<RailState, BareRail>;

const sandedRails: Readonly<Record<BareRail, SandedRail>> = {
  dry: 'sanded',
  damp: 'damp-sanded',
  wet: 'wet-sanded',
  greasy: 'greasy-sanded',
};
export const sandedOn = (bare: BareRail): SandedRail => sandedRails[bare];

/** The rail under the sand; a bare one is itself. */
export const beneath = (state: RailState): BareRail =>
  bareRails.find((bare) => bare === state || sandedRails[bare] === state) as BareRail;

export const isBare = (state: RailState): state is BareRail => state === beneath(state);

/** Of which a table tells: the usual ones, and today's. */
export const toldRails = (today: RailState | undefined): readonly RailState[] =>
  railStates.filter((state) => isBare(state) || state === 'sanded' || state === today);

/** What a stretch may be by itself: worse than dry, and sand is nobody's habit. */
export const badRail: readonly ['damp', 'wet', 'greasy'] = ['damp', 'wet', 'greasy'];

/** Said of a stretch: as much worse than the day, whatever the day is. */
export const ONE_STEP_WORSE = 'one-step-worse';

/** What the line may say of a stretch. */
export type UsualRail = RailState | typeof ONE_STEP_WORSE;

/** What a stretch may be seen to be. */
export const seenRail: readonly ['dry', ...typeof badRail] = ['dry', ...badRail];

/** Adhesion under wheels that no sand reaches: it is thrown by the engine. */
export const unsanded = (
  { adhesion }: { readonly adhesion: Readonly<Record<RailState, Quantity>> },
  state: RailState,
): Quantity => adhesion[beneath(state)];

/**
 * The state whose adhesion a brake counts on, and a locked wheel measures: that of sand on a dry rail; elsewhere what lies beneath, for a
 * sander that is damp itself clogs, and sand thrown late lies behind the wheels that slide.
 */
export const brakedRail = (state: RailState): RailState => (state === 'sanded' ? state : beneath(state));

/** Adhesion that a brake may count on under sanded wheels. */
export const brakedOnSand = (
  { adhesion }: { readonly adhesion: Readonly<Record<RailState, Quantity>> },
  state: RailState,
): Quantity => adhesion[brakedRail(state)];

type Adhesions = Readonly<Record<RailState, Quantity>>;

/** Of two states the one that holds less: by what lies beneath, then by its sand. */
export const worseRail = (adhesion: Adhesions, a: RailState, b: RailState): RailState => {
  const less = (of: (state: RailState) => RailState): number => adhesion[of(b)].value - adhesion[of(a)].value;
  return (less(beneath) || less((state) => state)) < 0 ? b : a;
};

/**
 * The next worse state than the day's in the order dry, damp, wet, greasy that really holds less: rain washes a rail, so
 * that after damp comes greasy. A sanded day's rail is dry beneath. Where none holds less than the day, the day's own.
 */
export function oneStepWorse(adhesion: Adhesions, day: RailState): RailState {
  const less = (state: RailState): boolean => adhesion[state].value < adhesion[beneath(day)].value;
  const after = (badRail as readonly RailState[]).indexOf(beneath(day)) + 1;
  return badRail.slice(after).find(less) ?? day;
}

/** What the line says of a stretch, on a day. */
export const railOnDay = (adhesion: Adhesions, usual: UsualRail, day: RailState): RailState =>
  usual === ONE_STEP_WORSE ? oneStepWorse(adhesion, day) : usual;

const byWetness: readonly RailState[] = bareRails;

/** Of two states the one that wets the blocks more. */
export const wetter = (a: RailState, b: RailState): RailState =>
  byWetness.indexOf(beneath(b)) > byWetness.indexOf(beneath(a)) ? b : a;
