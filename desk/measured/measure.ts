/** A test's record, measured; and its results written into the papers that they belong to. */
import { assumedValues } from '../../data/index.ts';
import { kinds } from '../../engine/base/quantity.ts';
import type { Outcome, Result } from '../../engine/calibrate/result.ts';
import { measure } from '../../engine/calibrate/tests/index.ts';
import { openOuting } from '../../engine/outing/open.ts';
import { gearId } from '../../papers/compile/vehicle.ts';
import type { ReadTest } from '../../papers/index.ts';

export function measured({ test, instruments, outing, vehicle }: ReadTest): Outcome {
  return measure(test, {
    instruments,
    assumed: outing?.assumed ?? assumedValues,
    ...(outing ? { outing: openOuting(outing) } : {}),
    ...(vehicle ? { vehicle } : {}),
  });
}

type Json = Readonly<Record<string, unknown>>;

export interface Applied {
  readonly paper: Json;
  /** Fields written, as paths. */
  readonly written: readonly string[];
  /** Results that this paper has no place for. */
  readonly left: readonly string[];
}

/** Figures of a measured value. */
const DIGITS = 4;

/** Rounded outward: the bounds are never narrower than was measured. */
function rounded(si: number, toward: 'down' | 'up'): number {
  if (si === 0) return 0;
  const size = 10 ** (Math.floor(Math.log10(Math.abs(si))) - DIGITS + 1);
  return Number(((toward === 'down' ? Math.floor : Math.ceil)(si / size) * size).toPrecision(DIGITS));
}

/** Only how they stand to each other counts. */
const factorWritten = (f: number): number => Number(f.toFixed(DIGITS));

/** As a paper holds it: SI, with bounds, how, source and date; where it keeps no bounds, the careful end is its value. */
function asWritten({ key, quantity, kind, careful }: Result): unknown {
  const { low, high, how, source, date, fit } = quantity;
  const [least, most] = [rounded(low, 'down'), rounded(high, 'up')];
  const value =
    careful === undefined ? Number(quantity.value.toPrecision(DIGITS)) : careful === 'low' ? least : most;
  if (key === 'leak') return { fall: `${value} Pa`, in: '60 s' };
  const unit = kinds[kind] === '1' ? {} : { unit: kinds[kind] };
  return {
    value,
    ...unit,
    low: least,
    high: most,
    how,
    source,
    ...(date === undefined ? {} : { date }),
    ...(fit ? { fit: { id: fit.id, factors: fit.factors.map(factorWritten) } } : {}),
  };
}

/**
 * @param paper a vehicle's, as plain JSON
 * @param id of this vehicle in the train that was tested; absent: tested by itself
 */
export function applyToVehicle(paper: Json, results: readonly Result[], id?: string): Applied {
  let now = paper;
  const written: string[] = [];
  const left: string[] = [];
  for (const result of results) {
    const own = result.belongs.filter(
      (b) => b.paper === 'vehicle' && (b.vehicle === undefined || b.vehicle === id),
    );
    if (own.length === 0) left.push(result.key);
    for (const { field, gear } of own) {
      const path = pathOf(now, field, gear);
      if (!path || noPlace.has(field)) {
        left.push(result.key);
        continue;
      }
      now = put(now, path, asWritten(result)) as Json;
      written.push(path.join('.'));
    }
  }
  return { paper: now, written, left };
}

/** Several figures, of which one test tells one. */
const noPlace: ReadonlySet<string> = new Set(['traction.curve.force']);

/** A brake by its id or its name. */
function pathOf(paper: Json, field: string, gear?: string): (string | number)[] | undefined {
  const [first, ...rest] = field.split('.');
  if (first !== 'brakes') return [first, ...rest];
  const brakes = (paper['brakes'] ?? []) as readonly { readonly name?: string; readonly kind: string }[];
  const i = brakes.findIndex((b, k) => b.name === gear || gearId(b.name ?? b.kind, k) === gear);
  return i < 0 ? undefined : ['brakes', i, ...rest];
}

function put(at: unknown, [key, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(at)) return at.map((item, i) => (i === key ? put(item, rest, value) : item));
  const group = (at ?? {}) as Record<string, unknown>;
  return { ...group, [key]: put(group[key], rest, value) };
}
