/**
 * What a test told, written into the papers that it is of; the record is kept with them, with what stood there before,
 * so that it can be taken back. Pure: from one paper to the next.
 */
import { kinds } from '../../engine/base/quantity.ts';
import type { Belongs, Result } from '../../engine/calibrate/result.ts';
import { checkFile } from '../../papers/check.ts';
import { gearId } from '../../papers/compile/vehicle.ts';
import { type Member, membersOf, single } from '../make-up.ts';

export type Json = Readonly<Record<string, unknown>>;

/** Why a result is not written. */
export type NotWritten =
  /** The papers keep several figures there, of which one test tells one, or none. */
  | 'no-place'
  /** What it is of is not in this paper, or several are and nobody says which. */
  | 'not-here'
  /** How a rail holds, and nobody said which rail. */
  | 'no-rail';

export interface Applied {
  readonly paper: Json;
  /** Fields written, as paths. */
  readonly written: readonly string[];
  /** Results that are not, by key, and why. */
  readonly left: readonly { readonly key: string; readonly why: NotWritten }[];
}

/** One figure that a test put into a paper, as the kept record says it. */
export interface Instead {
  readonly vehicle?: string;
  readonly field: string;
  readonly gear?: string;
  readonly was?: unknown;
  readonly wrote: unknown;
}

type Path = readonly (string | number)[];

// ---- one figure

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

const noPlace: ReadonlySet<string> = new Set(['traction.curve.force']);

/** A brake by its id or its name. */
function pathIn(vehicle: Json, field: string, gear?: string): Path | undefined {
  const [first, ...rest] = field.split('.');
  if (first !== 'brakes') return [first, ...rest];
  const brakes = (vehicle['brakes'] ?? []) as readonly { readonly name?: string; readonly kind: string }[];
  const i = brakes.findIndex((b, k) => b.name === gear || gearId(b.name ?? b.kind, k) === gear);
  return i < 0 ? undefined : ['brakes', i, ...rest];
}

function valueAt(at: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (part, key) => (part as Record<string | number, unknown> | undefined)?.[key],
    at,
  );
}

/** `undefined` takes the field out, and a group that is left empty with it. */
function put(at: unknown, [key, ...rest]: Path, value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(at)) return at.map((item, i) => (i === key ? put(item, rest, value) : item));
  const { [key]: old, ...others } = (at ?? {}) as Record<string | number, unknown>;
  const next = put(old, rest, value);
  if (next !== undefined) return { ...(at as object | undefined), [key]: next };
  return Object.keys(others).length > 0 ? others : undefined;
}

// ---- a vehicle's paper

interface Writing extends Applied {
  readonly instead: readonly Instead[];
}

/** Into one vehicle: `belongs` are those of its figures. */
function intoVehicle(
  vehicle: Json,
  results: readonly Result[],
  own: (b: Belongs) => boolean,
  id?: string,
): Writing {
  let paper = vehicle;
  const written: string[] = [];
  const left: { key: string; why: NotWritten }[] = [];
  const instead: Instead[] = [];
  for (const result of results)
    for (const { field, gear } of result.belongs.filter((b) => b.paper === 'vehicle' && own(b))) {
      const path = pathIn(paper, field, gear);
      if (!path || noPlace.has(field)) {
        left.push({ key: result.key, why: path ? 'no-place' : 'not-here' });
        continue;
      }
      const was = valueAt(paper, path);
      const wrote = asWritten(result);
      paper = put(paper, path, wrote) as Json;
      written.push(path.join('.'));
      instead.push({
        ...(id === undefined ? {} : { vehicle: id }),
        field,
        ...(gear === undefined ? {} : { gear }),
        ...(was === undefined ? {} : { was }),
        wrote,
      });
    }
  return { paper, written, left, instead };
}

/** The record as it is kept: the papers that it was made with are those that keep it. */
export function kept(paper: Json, record: Json, instead: readonly Instead[]): Json {
  const { outing: _outing, vehicle: _vehicle, instead: _before, ...rest } = record;
  return { ...paper, tests: [...testsIn(paper), { ...rest, instead }] };
}

export const testsIn = (paper: Json): readonly Json[] =>
  (paper['tests'] as readonly Json[] | undefined) ?? [];

/**
 * @param paper a vehicle's, as plain JSON
 * @param id of this vehicle in the train that was tested; absent: tested by itself
 */
export function applyToVehicle(paper: Json, record: Json, results: readonly Result[], id?: string): Applied {
  const own = (b: Belongs): boolean => b.vehicle === undefined || b.vehicle === id;
  const made = intoVehicle(paper, results, own);
  const strange = results.filter((r) => !r.belongs.some((b) => b.paper === 'vehicle' && own(b)));
  return {
    paper: made.instead.length > 0 ? kept(made.paper, record, made.instead) : paper,
    written: made.written,
    left: [...made.left, ...strange.map(({ key, belongs }) => ({ key, why: whyNot(belongs) }))],
  };
}

function whyNot(belongs: readonly Belongs[]): NotWritten {
  if (belongs.some((b) => b.field === 'conditions.adhesion')) return 'no-rail';
  return belongs.some((b) => !noPlace.has(b.field)) ? 'not-here' : 'no-place';
}

// ---- an outing's paper

/**
 * @param paper an outing's with all parts in it
 * @param record with the papers that the test was made with
 * @param alone id of the vehicle of its train that was tested by itself
 * @param likes ids of those built alike, for which `results` has figures too
 */
export function applyToOuting(
  paper: Json,
  record: Json,
  results: readonly Result[],
  alone?: string,
  likes: readonly string[] = [],
): Applied {
  const written: string[] = [];
  const left: { key: string; why: NotWritten }[] = [];
  const instead: Instead[] = [];
  const here = new Set(
    single(paper)
      .filter((one) => likes.includes(`${one.id}`) || sameAsTested(one, record, alone))
      .map(({ id }) => id),
  );
  const ofVehicle =
    (id: string) =>
    (b: Belongs): boolean =>
      here.has(id) && (b.vehicle ?? alone) === id;
  const touched = (id: string): boolean =>
    results.some((r) => r.belongs.some((b) => b.paper === 'vehicle' && ofVehicle(id)(b)));
  const members = membersOf(paper).flatMap((member) => {
    const each = single({ train: { vehicles: [member] } });
    if (!each.some((one) => touched(`${one.id}`))) return [member];
    const made = each.map((one) => {
      const into = intoVehicle(one.vehicle, results, ofVehicle(`${one.id}`), `${one.id}`);
      written.push(...into.written.map((path) => `${one.id}: ${path}`));
      left.push(...into.left);
      instead.push(...into.instead);
      return { ...one, vehicle: into.paper as Member['vehicle'] };
    });
    return together(member, made);
  });
  let next: Json = { ...paper, train: { ...(paper['train'] as Json), vehicles: members } };
  for (const result of results) {
    const { key, belongs } = result;
    const places = belongs.flatMap((b) =>
      b.paper === 'outing'
        ? placesInOuting(next, b.field, record)
        : b.paper === 'line'
          ? placesOnLine(next['line'] as Json, b, result).map((path): Path => ['line', ...path])
          : [],
    );
    for (const path of places) {
      const was = valueAt(next, path);
      const wrote = asWritten(result);
      next = put(next, path, wrote) as Json;
      const field = path.join('.');
      written.push(field);
      instead.push({ field, ...(was === undefined ? {} : { was }), wrote });
    }
    const ofOne = belongs.some((b) => b.paper === 'vehicle' && here.has(b.vehicle ?? alone));
    if (places.length === 0 && !ofOne) left.push({ key, why: whyNot(belongs) });
  }
  return { paper: instead.length > 0 ? kept(next, record, instead) : paper, written, left };
}

/** One of that id in the record is of that name too: another train's engine is another engine. */
function sameAsTested({ id, vehicle }: Member, record: Json, alone: string | undefined): boolean {
  const tested = record['outing'] as Json | undefined;
  const alike = (other: Json | undefined): boolean =>
    other === undefined || other['name'] === vehicle['name'];
  if (id === alone) return alike(record['vehicle'] as Json | undefined);
  const there = tested && single(tested).find((one) => one.id === id);
  return there !== undefined && alike(there.vehicle);
}

/** Vehicles that were counted as one, and in which the same was written, stay so. */
function together(member: Member, made: readonly Member[]): Member[] {
  const [first] = made;
  const alike = made.every((one) => JSON.stringify(one.vehicle) === JSON.stringify(first.vehicle));
  return alike ? [{ ...member, vehicle: first.vehicle }] : [...made];
}

/** Of a sort that was weighed, all riders whom nobody has weighed. */
function placesInOuting(paper: Json, field: string, record: Json): Path[] {
  const test = record['test'] as Json;
  if (field === 'conditions.adhesion') return adhesionPlace(paper, record);
  if (field !== 'riders.weight') return [field.split('.')];
  return ((paper['riders'] ?? []) as readonly Json[]).flatMap((rider, i): Path[] =>
    rider['typical'] === test['who'] && rider['weight'] === undefined ? [['riders', i, 'weight']] : [],
  );
}

/** Today's rail, or that rail of another day or state. */
function adhesionPlace(paper: Json, { rail, date, test }: Json): Path[] {
  const { railState } = paper['conditions'] as Json;
  const state = rail ?? (test as Json)['rail'];
  const today = paper['date'] === undefined || paper['date'] === date;
  if (state === undefined) return [];
  return [state === railState && today ? ['conditions', 'adhesion'] : ['measuredAdhesion', `${state}`]];
}

/** So near what was looked at a place is the one, m. */
const NEAR = 3;

/**
 * Where a line keeps what was measured of it. A sight is that of the place which was looked at; and no stretch on which it
 * was first seen from has a longer one.
 */
function placesOnLine(line: Json, { field, seen }: Belongs, { quantity }: Result): Path[] {
  if (!seen) return [[field]];
  const read = checkFile('line', line);
  if (!read.ok) return [];
  const { places = [], sights = [] } = read.value;
  const standing = [...places.keys()].filter((i) =>
    seen.place === undefined ? Math.abs(places[i].at - seen.at) <= NEAR : places[i].name === seen.place,
  );
  const distance = quantity.low;
  const from = seen.at + (seen.way === 'forward' ? -distance : distance);
  return [
    // Of several that stand there nobody says which was meant.
    ...(standing.length === 1
      ? [['places', standing[0], seen.way === 'forward' ? 'sight' : 'sightReverse']]
      : []),
    ...sights.flatMap((s, i): Path[] =>
      s.from <= from &&
      from <= s.to &&
      distance < s.distance &&
      (s.direction ?? 'both') !== opposite[seen.way]
        ? [['sights', i, 'distance']]
        : [],
    ),
  ];
}

const opposite = { forward: 'reverse', reverse: 'forward' } as const;

/** @param paper a line's, as plain JSON */
export function applyToLine(paper: Json, record: Json, results: readonly Result[]): Applied {
  let next = paper;
  const instead: Instead[] = [];
  const left: { key: string; why: NotWritten }[] = [];
  for (const result of results) {
    const places = result.belongs.flatMap((b) => (b.paper === 'line' ? placesOnLine(next, b, result) : []));
    if (places.length === 0) left.push({ key: result.key, why: whyNot(result.belongs) });
    for (const path of places) {
      const was = valueAt(next, path);
      const wrote = asWritten(result);
      next = put(next, path, wrote) as Json;
      instead.push({ field: path.join('.'), ...(was === undefined ? {} : { was }), wrote });
    }
  }
  return {
    paper: instead.length > 0 ? kept(next, record, instead) : paper,
    written: instead.map(({ field }) => field),
    left,
  };
}

// ---- taken back

export interface TakenBack {
  readonly paper: Json;
  /** Figures that stay as they are: somebody has written them anew since, or their vehicle is gone. */
  readonly stays: readonly string[];
}

/** The test is no longer believed, or the part was worked on: what stood there before stands there again. */
export function takeBack(paper: Json, index: number): TakenBack {
  const tests = testsIn(paper);
  const record = tests[index];
  if (!record) return { paper, stays: [] };
  let later = tests.slice(index + 1);
  let next = paper;
  const stays: string[] = [];
  for (const one of insteadOf(record)) {
    const after = later.findIndex((t) => insteadOf(t).some((o) => sameField(o, one)));
    if (after >= 0) {
      // Another test has written over it: that one's "before" is now what stood before this one.
      later = later.map((t, i) => (i === after ? withBefore(t, one) : t));
      continue;
    }
    const at = placeOf(next, one);
    const now = at && JSON.stringify(valueAt(next, at));
    if (at && now === JSON.stringify(one.wrote)) next = put(next, at, one.was) as Json;
    else if (!at || now !== JSON.stringify(one.was))
      stays.push([...(one.vehicle ? [one.vehicle] : []), one.field].join(': '));
  }
  const left = [...tests.slice(0, index), ...later];
  const { tests: _tests, ...rest } = next;
  return { paper: left.length > 0 ? { ...rest, tests: left } : rest, stays };
}

const insteadOf = (record: Json): readonly Instead[] =>
  (record['instead'] as readonly Instead[] | undefined) ?? [];

const sameField = (a: Instead, b: Instead): boolean =>
  a.field === b.field && a.gear === b.gear && a.vehicle === b.vehicle;

const withBefore = (record: Json, before: Instead): Json => ({
  ...record,
  instead: insteadOf(record).map((one) => {
    if (!sameField(one, before)) return one;
    const { was: _was, ...rest } = one;
    return before.was === undefined ? rest : { ...rest, was: before.was };
  }),
});

/** Rows by their number. */
const pathOf = (field: string): Path =>
  field.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));

/** Of several that are counted as one, the figure is that of all. */
function placeOf(paper: Json, { vehicle, field, gear }: Instead): Path | undefined {
  if (vehicle === undefined)
    return paper['heedway'] === 'vehicle' ? pathIn(paper, field, gear) : pathOf(field);
  const at = membersOf(paper).findIndex((member) =>
    single({ train: { vehicles: [member] } }).some(({ id }) => id === vehicle),
  );
  if (at < 0) return undefined;
  const path = pathIn(membersOf(paper)[at].vehicle, field, gear);
  return path && ['train', 'vehicles', at, 'vehicle', ...path];
}
