/** Stops as they were measured beside what the papers had said of them. */
import { distance, say, type Voice } from '../voice.ts';

interface Predicted {
  readonly speed: number;
  readonly measured: number;
  readonly likely: number;
  readonly careful: number;
  readonly inside: boolean;
}

type Shown = Pick<Voice, 'system'>;

/** "10 of 12 stops were no longer than the careful figure." */
export function predictedWords(stops: readonly Predicted[]): string {
  const inside = stops.filter((s) => s.inside).length;
  const told = `${inside} of ${stops.length} ${stops.length === 1 ? 'stop was' : 'stops were'} no longer than the careful figure of the papers`;
  return inside === stops.length
    ? `${told}.`
    : `${told}; of a hundred no more than one should be longer: look at the papers, and at how well speed and place were read.`;
}

/** One stop in a line. */
export const stopWords = ({ speed, measured, likely, careful, inside }: Predicted, shown: Shown): string =>
  `From ${say(shown, { si: speed, kind: 'speed' })}: ${distance(shown, measured, 'nearest')} measured; likely ${length(likely, shown)}, careful ${length(careful, shown)}${inside ? '' : ': LONGER than careful'}.`;

const length = (si: number, shown: Shown): string =>
  Number.isFinite(si) ? distance(shown, si, 'up') : 'never';

/** Undefined where every brake was put on. */
export const withWords = (brakes: readonly string[] | undefined): string | undefined =>
  brakes === undefined
    ? undefined
    : `Stops and figures are with ${brakes.map((b) => b.replace(/-/g, ' ')).join(' and ')} alone.`;

/** All stops that were ever held against what had been said of them. */
export interface RunningRecord {
  readonly tests: number;
  readonly stops: number;
  /** No longer than the careful figure. */
  readonly inside: number;
  readonly beyondLikely: number;
  /** Of the share inside, 95 times in a hundred: exact, each stop taken by itself. */
  readonly bounds: readonly [low: number, high: number];
  /** What the careful figure promises lies within the bounds or below them. */
  readonly kept: boolean;
  /** So many stops show it: the bounds lie above what is promised. */
  readonly shown: boolean;
}

/** "24 stops of 2 tests: all were no longer than …" */
export function recordWords({
  tests,
  stops,
  inside,
  beyondLikely,
  bounds,
  kept,
  shown,
}: RunningRecord): string[] {
  const many = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;
  const longer = stops - inside;
  return [
    `${many(stops, 'stop')} of ${many(tests, 'test')}: ${longer === 0 ? 'none was' : longer === 1 ? 'one was' : `${longer} were`} longer than the careful figure that the papers had told before. Going by these alone, between ${percent(bounds[0], Math.floor)} and ${percent(bounds[1], Math.ceil)} of stops keep within it, 95 times in a hundred.`,
    kept
      ? shown
        ? 'That shows what the figure promises: 99 in a hundred.'
        : 'It promises 99 in a hundred: that takes about 370 stops to show, none of them longer.'
      : 'It promises 99 in a hundred, and these stops say that it does not keep that: do not rely on it until you know why. Look at the papers, and at how well speed and place were read.',
    `${beyondLikely} of ${stops} were longer than the likely figure; about half should be. Stops of one day share train and rail, so they tell less than so many by themselves. Tests that were taken back are not among them.`,
  ];
}

/** Rounded away from what is claimed, to a tenth where it is near all. */
function percent(share: number, round: (x: number) => number): string {
  const steps = share > 0.98 && share < 1 ? 10 : 1;
  return `${round(share * 100 * steps) / steps} %`;
}
