/** How far trains went on each line, and how much of it in curves of either hand, by the papers that they left by. */
import type { Line } from '../engine/things/line/types.ts';
import { checkFile } from '../papers/check.ts';
import { compileLine } from '../papers/compile/line.ts';
import { newNotes } from '../papers/compile/notes.ts';
import { canonical } from './canonical.ts';
import type { Trip } from './service.ts';

/** In the running direction. */
export const hands = ['left', 'right', 'straight'] as const;
export type Hand = (typeof hands)[number];
export type Way = 'forward' | 'reverse';

export interface LineRun {
  /** As it stood in the newest departure. */
  readonly line: Line;
  readonly hands: Readonly<Record<Hand, number>>;
}

const turned: Readonly<Record<Hand, Hand>> = { left: 'right', right: 'left', straight: 'straight' };

/** Positive curvature turns left in the forward direction. */
export function handAt({ curves }: Line, at: number, way: Way): Hand {
  const curve = curves.find(({ from, to }) => at >= from && at <= to);
  const bend = curve ? curve.startCurvature + curve.endCurvature : 0;
  const hand: Hand = bend > 0 ? 'left' : bend < 0 ? 'right' : 'straight';
  return way === 'forward' ? hand : turned[hand];
}

function lengthsOf(line: Line): Record<Hand, number> {
  const of = { left: 0, right: 0, straight: line.length };
  for (const { from, to } of line.curves) {
    const hand = handAt(line, (from + to) / 2, 'forward');
    of[hand] += to - from;
    of.straight -= to - from;
  }
  return of;
}

/** Each once, however many left by it. */
function reader(): (paper: unknown) => Line | undefined {
  const known = new Map<string, Line | undefined>();
  return (paper) => {
    const written = (paper as { readonly line?: unknown }).line;
    if (written === undefined) return undefined;
    const key = canonical(written);
    if (!known.has(key)) {
      const read = checkFile('line', written);
      const notes = newNotes();
      const line = read.ok ? compileLine(read.value, notes) : undefined;
      known.set(key, notes.troubles.length === 0 ? line : undefined);
    }
    return known.get(key);
  };
}

/** By the lines' names. @param weigh how much one run counts */
export function lineRuns(ran: readonly Trip[], weigh: (trip: Trip) => number): Map<string, LineRun> {
  const read = reader();
  const runs = new Map<string, LineRun>();
  for (const trip of ran) {
    const line = read(trip.left.paper);
    if (!line) continue;
    const lengths = lengthsOf(line);
    const reverse = (trip.left.paper as { readonly direction?: Way }).direction === 'reverse';
    const before = runs.get(line.name)?.hands ?? { left: 0, right: 0, straight: 0 };
    const of = (hand: Hand): number =>
      before[hand] + (weigh(trip) * lengths[reverse ? turned[hand] : hand]) / line.length;
    runs.set(line.name, { line, hands: { left: of('left'), right: of('right'), straight: of('straight') } });
  }
  return runs;
}
