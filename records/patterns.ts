/**
 * Whether incidents gather more than chance has it: at a place, with a vehicle, in curves of one hand, in a driver's first days.
 *
 * Given how many there were, chance deals them out by exposure: with share p of it, k or more of N fall there with
 *
 *   P(X ≥ k), X binomial (N, p)                                        a vehicle, a hand, first days
 *   P(X ≥ k − 1), X binomial (N − 1, w/L)                              from an incident on, within w of a line of length L
 *
 * both exact. So many were looked at (each stretch that begins with an incident, each vehicle, each hand, first days), so the chance that any
 * of them looks like that is at most the sum: each is told times the number looked at (Bonferroni). Each incident is taken to come
 * by itself and every run to pass the whole line alike.
 */
import { atLeast } from '../engine/base/numerics/binomial.ts';
import { countBounds } from '../engine/base/numerics/poisson.ts';
import type { IncidentKind } from '../papers/record/incident-fields.ts';
import { type Hand, handAt, hands, type LineRun, lineRuns, type Way } from './exposure.ts';
import { type Incident, incidents } from './incidents.ts';
import type { Entry } from './record.ts';
import { type Trip, trips } from './service.ts';

/** What was looked at. */
export type Looked =
  | {
      readonly of: 'place';
      readonly line: string;
      readonly from: number;
      readonly to: number;
      /** What those who recorded it called the place. */
      readonly near: readonly string[];
      /** Length of a loop, on which `to` may lie beyond it. */
      readonly lap?: number;
    }
  | { readonly of: 'vehicle'; readonly vehicle: string }
  | { readonly of: 'curve'; readonly hand: Hand }
  | { readonly of: 'first-days'; readonly days: number };

export interface Look {
  readonly at: Looked;
  readonly found: number;
  /** Of how many that could be placed so. */
  readonly all: number;
  /** By exposure alone. */
  readonly expected: number;
  /** Between which the mean may lie, of which so few were found. */
  readonly bounds: readonly [low: number, high: number];
  /** That chance puts as many there or more. */
  readonly chance: number;
  /** That it does so anywhere among all that was looked at: no greater than that. */
  readonly anywhere: number;
}

export interface Patterns {
  readonly kind: IncidentKind;
  readonly found: number;
  /** By these departures. */
  readonly runs: number;
  readonly bounds: readonly [low: number, high: number];
  readonly looked: number;
  /** Those with anything in them, the least likely first. */
  readonly looks: readonly Look[];
  /** By distance where it was said of every run, else by runs. */
  readonly by: 'distance' | 'runs';
  /** How many incidents could not be placed so. */
  readonly unplaced: Readonly<Record<Looked['of'], number>>;
}

export interface Asked {
  /** Stretch that is looked at, m. */
  readonly within: number;
  /** Days that a driver counts as new. */
  readonly firstDays: number;
}

/** Rarer than this by chance, among all that was looked at, it is told as more than chance. */
export const MORE_THAN_CHANCE = 0.05;

/** Rare by itself, and not among so many: it may be chance, and whoever knows the place may know better. */
export const isWorthALook = ({ chance }: Look): boolean => chance <= MORE_THAN_CHANCE;

export const isPattern = ({ anywhere }: Look): boolean => anywhere <= MORE_THAN_CHANCE;

type Bare = Omit<Look, 'bounds' | 'anywhere'>;

export function patterns(entries: readonly Entry[], kind: IncidentKind, asked: Asked): Patterns {
  const all = incidents(entries).filter(({ said }) => said.what === kind);
  const ran = trips(entries);
  const known = ran.every(({ arrived }) => arrived?.distance !== undefined);
  const weigh = ({ arrived }: Trip): number => (known ? (arrived?.distance ?? 0) : 1);
  const lines = lineRuns(ran, weigh);
  const parts = [
    places(all, lines, asked.within),
    vehicles(all, ran, weigh),
    curves(all, lines, ran),
    firstDays(all, ran, weigh, asked.firstDays),
  ];
  const looked = parts.reduce((sum, part) => sum + part.looked, 0);
  const looks = parts
    .flatMap((part) => part.looks)
    // One alone at a place says nothing of the place; it was looked at all the same.
    .filter(({ found, at }) => found > (at.of === 'place' ? 1 : 0))
    .map((one) => ({ ...one, bounds: countBounds(one.found), anywhere: Math.min(1, one.chance * looked) }))
    .sort((a, b) => a.chance - b.chance);
  const [place, vehicle, curve, first] = parts.map(({ unplaced }) => unplaced);
  return {
    kind,
    found: all.length,
    runs: ran.length,
    bounds: countBounds(all.length),
    looked,
    looks: apart(looks),
    by: known && ran.length > 0 ? 'distance' : 'runs',
    unplaced: { place, vehicle, curve, 'first-days': first },
  };
}

interface Part {
  readonly looks: readonly Bare[];
  readonly looked: number;
  readonly unplaced: number;
}

/** Of stretches that overlap the least likely one is told; it has been counted with all of them. */
function apart(looks: readonly Look[]): Look[] {
  const kept: Look[] = [];
  const overlaps = (a: Looked, b: Looked): boolean =>
    a.of === 'place' &&
    b.of === 'place' &&
    a.line === b.line &&
    [0, a.lap ?? 0, -(a.lap ?? 0)].some((lap) => a.from <= b.to + lap && b.from + lap <= a.to);
  for (const look of looks) if (!kept.some(({ at }) => overlaps(at, look.at))) kept.push(look);
  return kept;
}

function places(all: readonly Incident[], lines: ReadonlyMap<string, LineRun>, within: number): Part {
  const placed = all.flatMap(({ said: { line, at, place } }) => {
    const run = line === undefined ? undefined : lines.get(line);
    return run && at !== undefined && at <= run.line.length ? [{ run, at, place }] : [];
  });
  const looks = placed.flatMap(({ run: { line }, at }): Bare[] => {
    const here = placed.filter(({ run }) => run.line.name === line.name);
    const share = within / line.length;
    // A stretch as long as the half of it is no place.
    if (share >= 0.5) return [];
    const ahead = (s: number): number => (line.loop && s < at ? s + line.length : s) - at;
    const inside = here.filter((one) => ahead(one.at) >= 0 && ahead(one.at) <= within);
    const found = inside.length;
    const to = at + Math.max(...inside.map((one) => ahead(one.at)));
    const near = [...new Set(inside.flatMap(({ place }) => place ?? []))];
    return [
      {
        at: { of: 'place', line: line.name, from: at, to, near, ...(line.loop ? { lap: line.length } : {}) },
        found,
        all: here.length,
        expected: here.length * share,
        chance: atLeast(found - 1, here.length - 1, share),
      },
    ];
  });
  return { looks, looked: looks.length, unplaced: all.length - placed.length };
}

/** Chance deals them out by exposure; what has none cannot be held against it. */
function dealt<K extends string>(
  found: readonly (K | undefined)[],
  exposure: ReadonlyMap<K, number>,
  as: (key: K) => Looked,
): Part {
  const total = [...exposure.values()].reduce((sum, one) => sum + one, 0);
  const known = found.filter((key): key is K => key !== undefined && (exposure.get(key) ?? 0) > 0);
  const keys = [...exposure.keys()].filter((key) => (exposure.get(key) ?? 0) > 0);
  // All of it one kind: there is nothing to tell it from.
  const tells = keys.length > 1 && known.length > 0;
  const looks = (tells ? keys : []).map((key): Bare => {
    const share = (exposure.get(key) ?? 0) / total;
    const count = known.filter((one) => one === key).length;
    return {
      at: as(key),
      found: count,
      all: known.length,
      expected: known.length * share,
      chance: atLeast(count, known.length, share),
    };
  });
  return { looks, looked: looks.length, unplaced: found.length - known.length };
}

function vehicles(all: readonly Incident[], ran: readonly Trip[], weigh: (trip: Trip) => number): Part {
  const exposure = new Map<string, number>();
  for (const trip of ran)
    for (const vehicle of trip.left.vehicles)
      exposure.set(vehicle, (exposure.get(vehicle) ?? 0) + weigh(trip));
  return dealt(
    all.map(({ said }) => said.vehicle),
    exposure,
    (vehicle) => ({ of: 'vehicle', vehicle }),
  );
}

const tripOf = (ran: readonly Trip[], { said }: Incident): Trip | undefined =>
  ran.find(({ departure }) => departure.first.row.hash === said.departure);

function curves(all: readonly Incident[], lines: ReadonlyMap<string, LineRun>, ran: readonly Trip[]): Part {
  const exposure = new Map<Hand, number>(hands.map((hand) => [hand, 0]));
  for (const run of lines.values())
    for (const hand of hands) exposure.set(hand, (exposure.get(hand) ?? 0) + run.hands[hand]);
  const found = all.map((one) => {
    const { line, at, direction } = one.said;
    const run = line === undefined ? undefined : lines.get(line);
    const way = direction ?? wayOf(tripOf(ran, one));
    return run && at !== undefined && way !== undefined ? handAt(run.line, at, way) : undefined;
  });
  return dealt(found, exposure, (hand) => ({ of: 'curve', hand }));
}

/** As the paper of a departure says it; forward, where it says nothing. */
const wayOf = (trip: Trip | undefined): Way | undefined =>
  trip && ((trip.left.paper as { readonly direction?: Way }).direction ?? 'forward');

/**
 * Whether a driver's first days. Whoever drove when the records began may have driven for years: those first days are no matter
 * of either side.
 */
function firstDays(
  all: readonly Incident[],
  ran: readonly Trip[],
  weigh: (trip: Trip) => number,
  days: number,
): Part {
  const began = [...new Set(ran.map(({ day }) => day))].sort().slice(0, days);
  const driven = new Map<string, Set<string>>();
  for (const { left, day } of ran)
    for (const { person } of driversOf(left)) driven.set(person, (driven.get(person) ?? new Set()).add(day));
  const ageOf = ({ left, day }: Trip): 'new' | 'settled' | undefined => {
    const ages = driversOf(left).map(({ person }) => {
      const own = [...(driven.get(person) ?? [])].sort();
      if (own.indexOf(day) >= days) return 'settled';
      return began.includes(own[0]) ? undefined : 'new';
    });
    return ages.includes('new')
      ? 'new'
      : ages.includes(undefined) || ages.length === 0
        ? undefined
        : 'settled';
  };
  const exposure = new Map<'new' | 'settled', number>([
    ['new', 0],
    ['settled', 0],
  ]);
  for (const trip of ran) {
    const age = ageOf(trip);
    if (age) exposure.set(age, (exposure.get(age) ?? 0) + weigh(trip));
  }
  const found = all.map((one) => {
    const trip = tripOf(ran, one);
    return trip && ageOf(trip);
  });
  const part = dealt(found, exposure, () => ({ of: 'first-days', days }));
  // That settled drivers have more is no question of anybody's.
  const looks = part.looks.slice(0, 1);
  return { ...part, looks, looked: looks.length };
}

const driversOf = ({ crew }: Trip['left']) => crew.filter(({ duty }) => duty === 'driver');
