/**
 * The rail by place, in the running direction: what a line's stretches usually are, and what somebody saw today.
 *
 * A stretch of the line counts where it is worse than the day. One that was looked at today counts as seen, and stands
 * before the line's; when another state than today's is asked about, it too counts only where it is worse.
 */
import { turnedStretch } from '../things/line/geometry.ts';
import type { Line, RailStretch } from '../things/line/types.ts';
import { type RailState, railOnDay, worseRail } from '../things/rail.ts';
import type { Outing } from './types.ts';

/** A piece of rail that is not in the state asked about; they do not overlap. */
export interface RailPiece {
  readonly from: number;
  readonly to: number;
  readonly state: RailState;
}

interface Placed {
  readonly outing: Outing;
  /** In the running direction. */
  readonly line: Line;
}

/** @param state that of the rest of the line */
export function railsAlong({ outing, line }: Placed, state: RailState): RailPiece[] {
  const { conditions, assumed } = outing;
  const usual = unwound(
    (line.railStretches ?? []).map((s) => ({ ...s, state: railOnDay(assumed.adhesion, s.state, state) })),
    line,
  );
  const seen = unwound(turned(conditions.railStretches ?? [], outing), line);
  const cuts = [...new Set([...usual, ...seen].flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const worst = (from: RailState, on: readonly RailPiece[]): RailState =>
    on.reduce((w, p) => worseRail(assumed.adhesion, w, p.state), from);
  const pieces: RailPiece[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i], cuts[i + 1]];
    const over = (p: RailPiece): boolean => p.from <= from && p.to >= to;
    const [today, always] = [seen.filter(over), usual.filter(over)];
    const on = today.length > 0 ? today : always;
    if (on.length === 0) continue;
    const asSeen = today.length > 0 && state === conditions.railState;
    const of = worst(asSeen ? today[0].state : state, on);
    const last = pieces.at(-1);
    if (of === state) continue;
    if (last?.to === from && last.state === of) pieces[pieces.length - 1] = { ...last, to };
    else pieces.push({ from, to, state: of });
  }
  return pieces;
}

/** A stretch over a loop's origin is two. */
const unwound = (stretches: readonly RailStretch[], { length }: Line): RailPiece[] =>
  stretches.flatMap(({ from, to, state }) =>
    from <= to
      ? [{ from, to, state }]
      : [
          { from: 0, to, state },
          { from, to: length, state },
        ],
  );

const turned = (stretches: readonly RailStretch[], { direction, line }: Outing): readonly RailStretch[] =>
  direction === 'reverse' ? stretches.map((s) => turnedStretch(line, s)) : stretches;

/** The pieces of today by the line's own chainage, whichever way it is run. */
export const railsToday = (outing: Outing): RailPiece[] =>
  railsAlong({ outing: { ...outing, direction: 'forward' }, line: outing.line }, outing.conditions.railState);

/** States that the rail has somewhere on the line, that of the rest first. */
export const railsMet = (placed: Placed, state: RailState): RailState[] => [
  ...new Set([state, ...railsAlong(placed, state).map((p) => p.state)]),
];

/** The state that holds least of all on the line. */
export const worstRail = (placed: Placed, state: RailState): RailState =>
  railsMet(placed, state).reduce((a, b) => worseRail(placed.outing.assumed.adhesion, a, b));

/** The state that holds most. */
export const bestRail = (placed: Placed, state: RailState): RailState =>
  railsMet(placed, state).reduce((a, b) => (adhesionOf(placed, b) >= adhesionOf(placed, a) ? b : a));

const adhesionOf = ({ outing }: Placed, state: RailState): number => outing.assumed.adhesion[state].value;

/**
 * The pieces as a train of some length meets them with its head from 0 to some place: lap by lap on a loop, and going on
 * where a line with ends goes on.
 */
export function railsMetBy(placed: Placed, state: RailState, length: number, to: number): RailPiece[] {
  const { line } = placed;
  const pieces = railsAlong(placed, state);
  if (!line.loop) {
    return pieces.map((p) => ({
      ...p,
      from: p.from <= 0 ? -length : p.from,
      to: p.to >= line.length ? Math.max(to, line.length) : p.to,
    }));
  }
  const met: RailPiece[] = [];
  for (let lap = -Math.ceil(length / line.length); lap * line.length < to; lap++) {
    const on = lap * line.length;
    for (const p of pieces) met.push({ ...p, from: p.from + on, to: p.to + on });
  }
  return met.filter((p) => p.to > -length && p.from < to);
}

/** Wheels, or whatever else lies on the rail: so far behind the train's head, m. */
export interface Span {
  readonly front: number;
  readonly rear: number;
}

/** The state that holds least under any of the spans, by the chainage of the head from 0 to some place. */
export function worstUnder(
  placed: Placed,
  state: RailState,
  spans: readonly Span[],
  to: number,
): (head: number) => RailState {
  const longest = spans.reduce((most, { rear }) => Math.max(most, rear), 0);
  const pieces = railsMetBy(placed, state, longest, to);
  const { adhesion } = placed.outing.assumed;
  if (pieces.length === 0) return () => state;
  return (head) => {
    const met = spans.flatMap(({ front, rear }) => {
      const [from, end] = [head - rear, head - front];
      const on = pieces.filter((p) => p.from < end && p.to > from);
      const covered = on.reduce((sum, p) => sum + Math.min(p.to, end) - Math.max(p.from, from), 0);
      return [...on.map((p) => p.state), ...(covered < end - from - 1e-9 ? [state] : [])];
    });
    return met.length === 0 ? state : met.reduce((a, b) => worseRail(adhesion, a, b));
  };
}
