/** Does a flag protect the rear, where the host's rule has it stand and in the time that there is? */

import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { type OutingContext, stopMargin } from '../../outing/open.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type FlagPlace, type FlagQuestion, flagPlaces } from './flag.ts';

/** m between the places at which the train might be stopped. */
const SPACING = 5;

export function askFlag(question: FlagQuestion): Findings<FlagPlace[]> {
  const { host, following } = question.context.outing;
  if (!host.flagDistance && !following) return { findings: [], data: [] };
  const data = flagPlaces(question, rearsAlong(question, SPACING));
  return { findings: [...byRule(question, data), ...byTime(question, data)], data };
}

/** Rears of a train that stands wholly on the line. */
export function rearsAlong({ context: { line, loaded } }: FlagQuestion, spacing: number): Float64Array {
  const last = line.loop ? line.length : line.length - loaded.length;
  return Float64Array.from({ length: Math.max(0, Math.floor(last / spacing) + 1) }, (_, i) => i * spacing);
}

/** The place where the flag must stand farthest behind the train. */
function byRule({ context }: FlagQuestion, places: readonly FlagPlace[]): Finding[] {
  const rule = context.outing.host.flagDistance;
  if (!rule) return [];
  const far = places.filter((p) => p.distance === null || p.distance > rule.value);
  if (far.length === 0) return [];
  const worst = far.reduce((a, b) => ((b.distance ?? Infinity) > (a.distance ?? Infinity) ? b : a));
  return [
    makeFinding('flag-farther-than-rule', 'notes', 'spacing', {
      where: { from: worst.rear, to: worst.rear },
      found: amount(rule.value, 'length'),
      required: amount(worst.distance ?? worst.rear - worst.seenAt, 'length'),
      margin: rule.value / (worst.distance ?? Infinity) - 1,
      facts: {
        speed: amount(worst.speed, 'speed'),
        stop: amount(worst.stop, 'length'),
        share: amount(far.length / places.length, 'ratio'),
        enough: worst.distance !== null,
      },
      ...distanceSum(context, worst),
      sure: 'assumed',
      source: rule.source,
    }),
  ];
}

/**
 * The flag's place from the stop of who must see it; nothing where no place is far enough, nor where the flag
 * must stand farther off to be seen in time at all.
 */
function distanceSum(context: OutingContext, { rear, seenAt, stop, distance }: FlagPlace): { sum?: SumRef } {
  const margin = stopMargin(context);
  if (distance === null || rear - distance - seenAt > stop + margin) return {};
  const inputs = {
    stop,
    sight: rear - distance - seenAt,
    margin,
    'walking-speed': context.outing.assumed.practice['walking-pace'].value,
  };
  return { sum: { id: 'flag-distance', inputs, differs: 'metres' } };
}

/** The place where the flagman has least time to get where the flag is needed. */
function byTime({ context }: FlagQuestion, places: readonly FlagPlace[]): Finding[] {
  const late = places.filter((p) => p.distance !== 0 && p.arrives !== null && p.walk > p.arrives);
  if (late.length === 0) return [];
  const lack = (p: FlagPlace): number => p.walk - (p.arrives ?? Infinity);
  const worst = late.reduce((a, b) => (lack(b) > lack(a) ? b : a));
  return [
    makeFinding('flag-too-late', 'notes', 'spacing', {
      where: { from: worst.rear, to: worst.rear },
      found: amount(worst.arrives ?? 0, 'time'),
      ...(worst.distance === null ? {} : { required: amount(worst.walk, 'time') }),
      facts: {
        way: amount(worst.distance ?? 0, 'length'),
        enough: worst.distance !== null,
        share: amount(late.length / places.length, 'ratio'),
      },
      ...distanceSum(context, worst),
      sure: 'assumed',
      source: context.outing.assumed.practice['walking-pace'].source,
    }),
  ];
}
