/** How old a test is, and whether it still counts. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';

export type KeptState = 'counts' | 'too-old' | 'worked' | 'partly-worked' | 'replaced' | 'check';

export interface KeptTest {
  /** From 1, the oldest first. */
  readonly number: number;
  readonly name: string;
  readonly date: string;
  readonly kind?: TestKind;
  /** Until the day of the outing. */
  readonly days?: number;
  readonly state: KeptState;
}

const states: Readonly<Record<KeptState, string>> = {
  counts: '',
  'too-old': 'EXPIRED by the host’s rule: taken as if assumed',
  worked: 'EXPIRED by work on the part since: taken as if assumed',
  'partly-worked': 'EXPIRED in part, by work on the part since',
  replaced: 'a later test stands in its place',
  check: 'a check alone: it changed no figure',
};

export const expired = (state: KeptState): boolean => /^EXPIRED/.test(states[state]);

/** "5 weeks old"; "of a day to come". */
function ageWords(days: number | undefined): string {
  if (days === undefined) return '';
  if (days < 0) return 'of a day after the outing';
  if (days === 0) return 'of the day itself';
  const [n, unit] =
    days < 21
      ? [days, 'day']
      : days < 90
        ? [days / 7, 'week']
        : days < 730
          ? [days / 30.44, 'month']
          : [days / 365.25, 'year'];
  return `${Math.floor(n)} ${unit}${Math.floor(n) === 1 ? '' : 's'} old`;
}

/** "5 weeks old; EXPIRED …" */
export const keptWords = ({ days, state }: KeptTest): string =>
  [ageWords(days), states[state]].filter((part) => part !== '').join('; ');
