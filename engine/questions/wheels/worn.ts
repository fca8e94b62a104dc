/**
 * Wear: each wheelset's flange and tread against the host's sheet, or what published practice condemns; how fast it wears by the days
 * that it was read on, and whether it will have worn to the limit by the day of the outing.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Practice } from '../../things/assumed.ts';
import type { Wheelset } from '../../things/wheel/types.ts';
import {
  daysLeft,
  type Wearing,
  wearing,
  wearingKeys,
  wearPoints,
  wearRate,
} from '../../things/wheel/wear.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

/** Of lengths, m. */
const ROUNDING = 1e-9;

interface Limit {
  readonly limit: number;
  readonly source: string;
  /** The host's own: its question judges it. */
  readonly host: boolean;
}

export interface Worn extends Limit {
  readonly vehicle: string;
  readonly name: string;
  readonly wheelset: string;
  readonly of: Wearing;
  /** As worn as it is known to be, m. */
  readonly value: number;
  /** What is left to the limit; below nothing, beyond it, m. */
  readonly left: number;
  /** First and last day that it was read on, days since 1970-01-01; null: no dated reading. */
  readonly read: { readonly first: number; readonly last: number; readonly days: number } | null;
  /** m a day; null: fewer than two days, or it has grown back. */
  readonly rate: number | null;
  /** Day on which it reaches the limit, at the rate; null: no rate. */
  readonly reaches: number | null;
}

/** Flanges are made of many heights: how high a worn one is, only a sheet says. */
const published = {
  flangeThickness: (practice: Practice) => practice['flange-thin'],
  flangeHeight: () => undefined,
  hollow: (practice: Practice) => practice['tread-hollow'],
} as const;
const fields = {
  flangeThickness: 'vehicle.wheelsets.flangeThickness',
  flangeHeight: 'vehicle.wheelsets.flangeHeight',
  hollow: 'vehicle.wheelsets.hollow',
} as const;
const keys = {
  flangeThickness: 'flangeThickness',
  flangeHeight: 'flangeHeight',
  hollow: 'treadHollow',
} as const;

function limitOf({ outing, line }: OutingContext, of: Wearing): Limit | undefined {
  const sheet = outing.host.standards?.[keys[of]];
  const own = wearing[of] < 0 ? sheet?.least : sheet?.most;
  if (sheet && own !== undefined) return { limit: own, source: sheet.source, host: true };
  const row = published[of](outing.assumed.practice);
  return row && { limit: row.value * line.gauge, source: row.source, host: false };
}

const wornTo = (w: Wheelset, of: Wearing): number | undefined =>
  of === 'flangeThickness' ? w.flangeThickness?.low : w[of];

export function lookAtWear(context: OutingContext): Worn[] {
  const limits = wearingKeys.flatMap((of) => {
    const limit = limitOf(context, of);
    return limit ? [{ of, way: wearing[of], ...limit }] : [];
  });
  return context.outing.train.vehicles.flatMap((v) =>
    (v.wheelsets ?? []).flatMap((w) =>
      limits.flatMap(({ of, way, ...limit }): Worn[] => {
        const value = wornTo(w, of);
        if (value === undefined) return [];
        const points = wearPoints(w, of);
        const [first, last] = [points[0], points[points.length - 1]];
        const rate = wearRate(points, way);
        return [
          {
            ...limit,
            vehicle: v.id,
            name: v.name,
            wheelset: w.name,
            of,
            value,
            left: way * (limit.limit - value),
            read: last ? { first: first.day, last: last.day, days: points.length } : null,
            rate: rate ?? null,
            reaches: last && rate !== undefined ? last.day + daysLeft(value, limit.limit, rate, way) : null,
          },
        ];
      }),
    ),
  );
}

export function wornWheels(context: OutingContext): Finding[] {
  const all = lookAtWear(context);
  const { day } = context.outing;
  const beyond = all.filter((w) => !w.host && w.left < -ROUNDING);
  const due = all.filter(
    (w) => w.left >= -ROUNDING && day !== undefined && w.reaches !== null && w.reaches <= day,
  );
  return [...worst(beyond, 'wheel-worn'), ...worst(due, 'wheel-wears-out')];
}

/** Of each figure the one with least left, with how many more. */
function worst(of: readonly Worn[], code: 'wheel-worn' | 'wheel-wears-out'): Finding[] {
  return wearingKeys.flatMap((key) => {
    const these = of.filter((w) => w.of === key).sort((a, b) => a.left / a.limit - b.left / b.limit);
    if (these.length === 0) return [];
    const [{ vehicle, wheelset, value, limit, left, source, rate }] = these;
    const told = {
      where: { vehicle },
      found: amount(value, 'length'),
      required: amount(limit, 'length'),
      margin: Math.max(-1, left / limit),
      source,
    };
    const facts = { wheelset, of: key, others: these.length - 1 };
    return [
      code === 'wheel-worn'
        ? makeFinding(code, 'limits', 'fit', { ...told, facts })
        : makeFinding(code, 'limits', 'fit', {
            ...told,
            facts: { ...facts, rate: amount(yearly(rate), 'length') },
            measure: fields[key],
          }),
    ];
  });
}

const DAYS_OF_YEAR = 365.25;

/** m a year; nothing where nothing is known of it. */
export const yearly = (rate: number | null): number => (rate === null ? 0 : rate * DAYS_OF_YEAR);
