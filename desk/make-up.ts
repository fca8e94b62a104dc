/**
 * Changes of the make-up, each from one paper to the next, so that each is one step to undo. Pure. Vehicles
 * counted by number are first written out one by one; their ids stay what the reader of files gave them.
 */
import { slug } from '../papers/compile/line.ts';
import { ofThoseLeft } from '../papers/compile/named.ts';

type Json = Record<string, unknown>;

export interface Member {
  readonly vehicle: Json;
  readonly id?: string;
  readonly name?: string;
  readonly count?: number | string;
}

export interface RiderEntry {
  readonly name: string;
  readonly weight?: unknown;
  readonly typical?: string;
  readonly vehicle?: string;
  readonly seat?: string;
  readonly duty?: string;
  readonly heldBy?: string;
}

export interface Seating {
  readonly vehicle: string;
  readonly seat: string;
}

export const membersOf = (paper: Json): readonly Member[] =>
  ((paper['train'] as Json | undefined)?.['vehicles'] as Member[] | undefined) ?? [];
export const ridersOf = (paper: Json): readonly RiderEntry[] =>
  (paper['riders'] as RiderEntry[] | undefined) ?? [];

const withMembers = (paper: Json, vehicles: readonly Member[]): Json => ({
  ...paper,
  train: { ...(paper['train'] as Json), vehicles },
});

/** Every vehicle with an id and, where there are several alike, a name of its own. */
export function single(paper: Json): Member[] {
  return membersOf(paper).flatMap((member) => {
    const count = Number(member.count ?? 1);
    const { count: _count, ...rest } = member;
    const label = member.name ?? String(member.vehicle['name']);
    const base = member.id ?? slug(label);
    if (count <= 1) return [{ ...rest, id: base }];
    return Array.from({ length: count }, (_, i) => ({
      ...rest,
      id: `${base}-${i + 1}`,
      name: `${label} ${i + 1}`,
    }));
  });
}

/** Where the vehicle at a place of the train is written, and how many alike are written there. */
export function entryAt(paper: Json, place: number): { readonly entry: number; readonly alike: number } {
  let first = 0;
  for (const [entry, member] of membersOf(paper).entries()) {
    const alike = Math.max(1, Number(member.count ?? 1));
    if (place < first + alike) return { entry, alike };
    first += alike;
  }
  return { entry: -1, alike: 0 };
}

/** Each vehicle written by itself, so that one of several alike can be made different. */
export const eachApart = (paper: Json): Json => withMembers(paper, single(paper));

/** The vehicle at one place to another; `to` counts as the train stands without it. */
export function moved(paper: Json, from: number, to: number): Json {
  const list = single(paper);
  const [taken] = list.splice(from, 1);
  if (!taken) return paper;
  list.splice(to, 0, taken);
  return withMembers(paper, list);
}

/** A vehicle put into the train before the place `at`. */
export function joined(paper: Json, vehicle: Json, at: number): Json {
  const list = single(paper);
  const label = String(vehicle['name'] ?? 'vehicle');
  const fresh = (stem: string, taken: readonly (string | undefined)[], join: string): string => {
    if (!taken.includes(stem)) return stem;
    let n = 2;
    while (taken.includes(`${stem}${join}${n}`)) n++;
    return `${stem}${join}${n}`;
  };
  const names = list.map((m) => m.name ?? String(m.vehicle['name']));
  const id = fresh(
    slug(label),
    list.map((m) => m.id),
    '-',
  );
  const name = fresh(label, names, ' ');
  list.splice(at, 0, { vehicle, id, ...(name === label ? {} : { name }) });
  return withMembers(paper, list);
}

const namesOf = (list: readonly Member[]): string[] =>
  list.map(({ name, vehicle }) => name ?? String(vehicle['name']));

/** A vehicle left behind, and with it what is amiss with it; its riders wait on the platform. */
export function left(paper: Json, index: number): Json {
  const list = single(paper);
  const before = namesOf(list);
  const [gone] = list.splice(index, 1);
  if (!gone || list.length === 0) return paper;
  const riders = ridersOf(paper).map((r) => (r.vehicle === gone.id ? stoodUp(r) : r));
  const defects = paper['defects'] as readonly Json[] | undefined;
  const amiss = defects && { defects: ofThoseLeft(defects, before, namesOf(list)) };
  const next = withMembers({ ...paper, riders, ...amiss }, list);
  const train = next['train'] as Json;
  const broken = train['pipeBrokenAfter'] as readonly string[] | undefined;
  if (!broken?.includes(gone.id ?? '')) return next;
  return { ...next, train: { ...train, pipeBrokenAfter: broken.filter((id) => id !== gone.id) } };
}

function stoodUp(rider: RiderEntry): RiderEntry {
  const { vehicle: _vehicle, seat: _seat, ...rest } = rider;
  return rest;
}

const withRiders = (paper: Json, riders: readonly RiderEntry[]): Json => ({ ...paper, riders });

/** A rider, by place in the list, to a seat. Who sits there takes the seat that becomes free, or the platform. */
export function seated(paper: Json, rider: number, to: Seating): Json {
  const mover = ridersOf(paper)[rider];
  if (!mover || (mover.vehicle === to.vehicle && mover.seat === to.seat)) return paper;
  return withRiders(
    paper,
    ridersOf(paper).map((r) => {
      if (r === mover) return { ...r, ...to };
      if (r.vehicle !== to.vehicle || r.seat !== to.seat) return r;
      return mover.vehicle === undefined || mover.seat === undefined
        ? stoodUp(r)
        : { ...r, vehicle: mover.vehicle, seat: mover.seat };
    }),
  );
}

export const platformed = (paper: Json, rider: number): Json =>
  withRiders(
    paper,
    ridersOf(paper).map((r, i) => (i === rider ? stoodUp(r) : r)),
  );

/** A rider off the list; nobody is held by one who is not there. */
export function letOff(paper: Json, rider: number): Json {
  const gone = ridersOf(paper)[rider];
  return withRiders(
    paper,
    ridersOf(paper)
      .filter((r) => r !== gone)
      .map((r) => {
        if (r.heldBy === undefined || r.heldBy !== gone?.name) return r;
        const { heldBy: _held, ...rest } = r;
        return rest;
      }),
  );
}

/** Somebody new, on a seat or on the platform. */
export function boarded(paper: Json, body: Partial<RiderEntry>, to?: Seating): Json {
  const riders = ridersOf(paper);
  let n = Math.max(1, riders.length);
  while (riders.some((r) => r.name === `Rider ${n}`)) n++;
  return withRiders(paper, [...riders, { name: `Rider ${n}`, ...body, ...(to ?? {}) }]);
}

/** A rider's entry with parts replaced; `undefined` takes a part out. Held children follow a new name. */
export function changed(paper: Json, rider: number, part: Readonly<Record<string, unknown>>): Json {
  const before = ridersOf(paper)[rider];
  const clean = (r: RiderEntry): RiderEntry =>
    Object.fromEntries(
      Object.entries({ ...r, ...part }).filter(([, value]) => value !== undefined),
    ) as unknown as RiderEntry;
  const name = typeof part['name'] === 'string' ? part['name'] : before?.name;
  return withRiders(
    paper,
    ridersOf(paper).map((r) =>
      r === before
        ? clean(r)
        : r.heldBy !== undefined && r.heldBy === before?.name
          ? { ...r, heldBy: name as string }
          : r,
    ),
  );
}
