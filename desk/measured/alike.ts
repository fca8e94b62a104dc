/**
 * What one vehicle was found to be, offered to those built alike: never as measured, and as much wider as such vehicles differ. Only
 * what wear and adjustment vary by a share; where the centre lies and what it weighs is measured of each.
 */
import { assumed } from '../../data/index.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Result } from '../../engine/calibrate/result.ts';
import { single } from '../make-up.ts';
import type { Json } from './apply.ts';

const shared: ReadonlySet<string> = new Set(['rolling', 'starting', 'force', 'deadTime', 'buildUp']);

/** Fields that differ from car to car as soon as somebody measures one. */
const OWN: ReadonlySet<string> = new Set([
  'name',
  'note',
  'tests',
  'invented',
  'worked',
  'tare',
  'centreHeight',
  'centreAt',
  'rolling',
  'starting',
  'force',
  'deadTime',
  'buildUp',
]);

/** What is left of a paper without them: groups that held nothing else are none. */
function built(of: unknown): unknown {
  if (Array.isArray(of)) return of.map(built);
  if (typeof of !== 'object' || of === null) return of;
  const kept = Object.entries(of)
    .filter(([key]) => !OWN.has(key))
    .map(([key, value]) => [key, built(value)] as const)
    .filter(([, value]) => JSON.stringify(value) !== '{}')
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(kept);
}

const build = (vehicle: Json): string => JSON.stringify(built(vehicle));

/** Ids and names of the others of the train that are built as this one is. */
export function builtAlike(
  paper: Json,
  id: string | undefined,
): readonly { readonly id: string; readonly name: string }[] {
  const all = single(paper as Record<string, unknown>);
  const one = all.find((v) => `${v.id}` === id);
  if (!one) return [];
  return all
    .filter((v) => v !== one && build(v.vehicle) === build(one.vehicle))
    .map((v) => ({ id: `${v.id}`, name: v.name ?? `${v.vehicle['name']}` }));
}

/** The results with what they tell of those built alike; as they are, where they tell nothing of them. */
export function withAlike(results: readonly Result[], likes: readonly string[]): readonly Result[] {
  if (likes.length === 0) return results;
  return [
    ...results,
    ...results.flatMap((result): Result[] => {
      const own = result.belongs.filter((b) => b.paper === 'vehicle' && b.vehicle === undefined);
      if (!shared.has(result.key.split('/')[0]) || own.length === 0) return [];
      return [
        {
          ...result,
          quantity: widened(result.quantity),
          belongs: own.flatMap((b) => likes.map((vehicle) => ({ ...b, vehicle }))),
        },
      ];
    }),
  ];
}

function widened({ fit: _fit, value, low, high, source, ...rest }: Quantity): Quantity {
  const alike = assumed('measuring/alike');
  return {
    ...rest,
    value,
    low: low * alike.low,
    high: high * alike.high,
    how: 'stated',
    source: `of one built alike: ${source ?? 'measured'}`,
  };
}
