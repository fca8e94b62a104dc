/** A result in a sentence: value, bounds, how sure, what would make it surer. */
import type { Belongs, Measured, Result } from '../../engine/calibrate/result.ts';
import { inWording, say, type Voice, vehicleName } from '../voice.ts';
import { tellBad } from './refusals.ts';
import { resultName, whatUnsure } from './tests.ts';

/** With the outing where the test was made with a train. */
type Shown = Pick<Voice, 'system' | 'wording'> & Partial<Pick<Voice, 'outing'>>;

/** Whose it is, where a train has several. */
function whose(belongs: readonly Belongs[], { outing }: Shown): string {
  const ids = [...new Set(belongs.flatMap((b) => b.vehicle ?? []))];
  return outing && ids.length > 0 ? ` of ${ids.map((id) => vehicleName({ outing }, id)).join(', ')}` : '';
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export function tellResult(
  { key, kind, quantity, interval, narrowed, surer, belongs }: Result,
  shown: Shown,
): string {
  const at = (si: number, toward?: 'up' | 'down'): string => say(shown, { si, kind }, toward);
  const now = `${resultName(key)}${whose(belongs, shown)}: ${at(quantity.value)}, 95 times in a hundred between ${at(interval[0], 'down')} and ${at(interval[1], 'up')}`;
  const sure = narrowed === undefined ? '' : `; its doubt is ${percent(narrowed)} of what it was`;
  const more =
    surer.by === 'readings'
      ? 'More readings would make it surer.'
      : `More readings would not make it much surer; what does most is ${whatUnsure(surer.key)}.`;
  return inWording(`${now}${sure}. ${more}`, shown.wording);
}

/** All that a test tells, a line each. */
export const tellMeasured = (made: Measured, shown: Shown): string[] => [
  ...(made.bad ? [tellBad(made.bad, shown)] : []),
  ...made.results.map((r) => tellResult(r, shown)),
  ...made.untold.map(({ key, belongs }) =>
    inWording(
      `${resultName(key)}${whose(belongs, shown)}: not told better than it is assumed; it stays as it was.`,
      shown.wording,
    ),
  ),
  ...(made.scatter > 1
    ? [
        `The readings scatter ${made.scatter.toFixed(1)} times as much as such instruments do, and the bounds are so much wider.`,
      ]
    : []),
];
