/**
 * An outing's paper with changes made: what differs between the outing as it was read and as it was changed is written
 * where the paper says it. It reads as the changed outing; all that is not touched stays as it was written.
 */
import { asInPaper } from '../engine/outing/moves.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { Flangeway, Line, Structure } from '../engine/things/line/types.ts';
import type { Rider } from '../engine/things/train/types.ts';
import type { BrakeGear, Coupling, SafetyChain, Vehicle } from '../engine/things/vehicle/types.ts';
import { slug, structureId } from './compile/line.ts';
import { ofThoseLeft } from './compile/named.ts';

type Json = Record<string, unknown>;

interface Member extends Json {
  readonly vehicle: Json;
  readonly id?: string;
  readonly name?: string;
  readonly count?: unknown;
}

/** One vehicle of the train as it was read, with the member of the paper that it stands in. */
interface Written {
  readonly vehicle: Vehicle;
  readonly member: Member;
}

/** Figures are written in SI to the last digit: what is read again is what was tried. */
const figure = (si: number, unit: string): string => `${si} ${unit}`;

const listOf = (json: unknown): Json[] => (Array.isArray(json) ? (json as Json[]) : []);

/**
 * @param paper an outing's paper with all parts in it, as `bundleOuting` gives it
 * @param before the outing that it reads as
 * @param after the same, changed
 */
export function changedPaper(paper: Json, before: Outing, after: Outing): Json {
  const changed: Json = { ...paper };
  if (after.train !== before.train) {
    changed['train'] = trainOf(paper['train'] as Json, asInPaper(before), asInPaper(after));
    const names = ({ train }: Outing): string[] => train.vehicles.map(({ name }) => name);
    if (paper['defects'] !== undefined)
      changed['defects'] = ofThoseLeft(listOf(paper['defects']), names(before), names(after));
  }
  const { line } = before;
  if (after.line.flangeways !== line.flangeways || after.line.structures !== line.structures)
    changed['line'] = lineOf(paper['line'] as Json, after);
  if (after.riders !== before.riders) changed['riders'] = ridersOf(listOf(paper['riders']), before, after);
  if (after.conditions.railState !== before.conditions.railState) {
    // What was measured on the rail as it was says nothing of another.
    const { adhesion: _measured, ...conditions } = paper['conditions'] as Json;
    changed['conditions'] = { ...conditions, railState: after.conditions.railState };
  }
  if (after.conditions.brakeTried === undefined && before.conditions.brakeTried !== undefined) {
    const { brakeTried: _tried, ...conditions } = changed['conditions'] as Json;
    changed['conditions'] = conditions;
  }
  if (after.otherTrains !== before.otherTrains) changed['otherTrains'] = after.otherTrains;
  if (before.following && !after.following) delete changed['following'];
  if (after.crew !== before.crew) changed['crew'] = crewOf(listOf(paper['crew']), after);
  if (after.plannedSpeed !== undefined && after.plannedSpeed !== before.plannedSpeed)
    changed['plannedSpeed'] = figure(after.plannedSpeed, 'm/s');
  const agreed = after.extraLimits.slice(before.extraLimits.length);
  if (agreed.length > 0)
    changed['agreedLimits'] = [
      ...listOf(paper['agreedLimits']),
      ...agreed.map(({ from, to, speed }) => ({
        from: figure(from, 'm'),
        to: figure(to, 'm'),
        speed: figure(speed, 'm/s'),
      })),
    ];
  return changed;
}

/** What was moved beside the line and, along a route, beside its tracks. */
function lineOf(paper: Json, { line }: Outing): Json {
  const tracks = listOf(paper['tracks']).map((track) => ({
    ...track,
    ...besideOf(track, line, `${slug(String(track['name']))}-`),
  }));
  return { ...paper, ...besideOf(paper, line, ''), ...(tracks.length > 0 ? { tracks } : {}) };
}

/** By name and place in the file: the outing's are in order of chainage, and a route has not all of them. */
function besideOf(paper: Json, { flangeways, structures }: Line, of: string): Json {
  const has = (key: string): boolean => paper[key] !== undefined;
  return {
    ...(flangeways && has('flangeways')
      ? { flangeways: flangewaysOf(paper['flangeways'], flangeways, of) }
      : {}),
    ...(structures && has('structures')
      ? { structures: structuresOf(paper['structures'], structures, of) }
      : {}),
  };
}

const atPlace = <T extends { readonly id: string }>(
  all: readonly T[],
  of: string,
  written: Json,
  i: number,
): T | undefined => all.find(({ id }) => id === `${of}${structureId(String(written['name']), i)}`);

/** Only the guard rail is moved. */
const flangewaysOf = (paper: unknown, flangeways: readonly Flangeway[], of: string): Json[] =>
  listOf(paper).map((written, i) => {
    const now = atPlace(flangeways, of, written, i);
    return {
      ...written,
      ...(now?.guard === undefined ? {} : { guardFlangeway: figure(now.guard, 'm') }),
      ...(now?.guardCheck === undefined ? {} : { guardCheck: figure(now.guardCheck, 'm') }),
      ...(now?.guardFace === undefined ? {} : { guardFace: figure(now.guardFace, 'm') }),
    };
  });

/** Only how near and how low they stand is moved. */
const structuresOf = (paper: unknown, structures: readonly Structure[], of: string): Json[] =>
  listOf(paper).map((written, i) => {
    const now = atPlace(structures, of, written, i);
    return {
      ...written,
      ...(now?.distance === undefined ? {} : { distance: figure(now.distance, 'm') }),
      ...(now?.headroom === undefined ? {} : { headroom: figure(now.headroom, 'm') }),
    };
  });

/** In the same order; only their backs are moved. */
const wheelsetsOf = (paper: unknown, { wheelsets = [] }: Vehicle): Json[] =>
  listOf(paper).map((written, i) => {
    const back = wheelsets[i]?.backToBack;
    return back ? { ...written, backToBack: back.map((b) => figure(b, 'm')) } : written;
  });

/** In the same order; only how low they hang is moved. */
const lowPartsOf = (paper: unknown, { lowParts = [] }: Vehicle): Json[] =>
  listOf(paper).map((written, i) =>
    lowParts[i] ? { ...written, height: figure(lowParts[i].height, 'm') } : written,
  );

function trainOf(paper: Json, before: Outing, after: Outing): Json {
  const members = listOf(paper['vehicles']) as Member[];
  const standing = members.flatMap((member) =>
    Array.from({ length: Number(member.count ?? 1) }, () => member),
  );
  const written = before.train.vehicles.map((vehicle, i): Written => ({ vehicle, member: standing[i] }));
  const { vehicles, pipeBrokenAfter, chainsFastened } = after.train;
  const { pipeBrokenAfter: _broken, ...rest } = paper;
  return {
    ...rest,
    vehicles: counted(vehicles.map((now) => memberOf(now, written))),
    ...(chainsFastened === undefined ? {} : { chainsFastened }),
    ...(pipeBrokenAfter.length === 0 ? {} : { pipeBrokenAfter: pipeBrokenAfter.map((i) => vehicles[i].id) }),
  };
}

/** A vehicle as a member of its own. */
function memberOf(now: Vehicle, written: readonly Written[]): Member {
  const own = written.find(({ vehicle }) => vehicle.id === now.id) as Written;
  const vehicle = own.vehicle === now ? own.member.vehicle : vehicleOf(now, own, written);
  const { count: _count, ...member } = own.member;
  return { ...member, vehicle, id: now.id, ...(now.name === vehicle['name'] ? {} : { name: now.name }) };
}

/** Neighbours that a count stands for are written as one, as they were. */
function counted(members: readonly Member[]): Member[] {
  const out: Member[] = [];
  for (const member of members) {
    const last = out[out.length - 1];
    const n = Number(last?.count ?? 1);
    const base = last && (n > 1 ? last.id : last.id?.replace(/-1$/, ''));
    const label = last?.name && (n > 1 ? last.name : last.name.replace(/ 1$/, ''));
    const follows =
      last !== undefined &&
      last.vehicle === member.vehicle &&
      (n > 1 || last.id === `${base}-1`) &&
      member.id === `${base}-${n + 1}` &&
      member.name === `${label ?? member.vehicle['name']} ${n + 1}` &&
      n < MOST_ALIKE;
    if (!follows) out.push(member);
    else {
      const name = label === member.vehicle['name'] ? {} : { name: label };
      const { name: _own, ...rest } = last;
      out[out.length - 1] = { ...rest, ...name, id: base, count: n + 1 } as Member;
    }
  }
  return out;
}

/** Of a count. */
const MOST_ALIKE = 40;

function vehicleOf(now: Vehicle, { vehicle: was, member }: Written, written: readonly Written[]): Json {
  const paper = member.vehicle;
  return {
    ...paper,
    ...(now.length === was.length ? {} : { length: figure(now.length, 'm') }),
    ...(now.front === was.front ? {} : { front: couplingOf(paper['front'], now.front, was.front) }),
    ...(now.rear === was.rear ? {} : { rear: couplingOf(paper['rear'], now.rear, was.rear) }),
    ...(now.wheelsets === was.wheelsets ? {} : { wheelsets: wheelsetsOf(paper['wheelsets'], now) }),
    ...(now.lowParts === was.lowParts ? {} : { lowParts: lowPartsOf(paper['lowParts'], now) }),
    ...(now.loads === was.loads ? {} : { loads: loadsOf(paper['loads'], now, was) }),
    ...(now.brakes === was.brakes ? {} : { brakes: brakesOf(listOf(paper['brakes']), now, was, written) }),
    ...(now.supplies === undefined || now.supplies === was.supplies ? {} : { supplies: now.supplies }),
    ...(now.throughPipe === undefined || now.throughPipe === was.throughPipe
      ? {}
      : { throughPipe: now.throughPipe }),
  };
}

function couplingOf(paper: unknown, now: Coupling, was: Coupling): Json {
  const { chain, ...rest } = (paper as Json | undefined) ?? {};
  const kept = now.chain === was.chain ? chain : now.chain && chainOf(now.chain);
  return {
    ...rest,
    ...(now.shank === was.shank || now.shank === undefined ? {} : { shank: figure(now.shank, 'm') }),
    ...(now.height === was.height || now.height === undefined ? {} : { height: figure(now.height, 'm') }),
    ...(kept === undefined ? {} : { chain: kept }),
  };
}

const chainOf = ({ count, grade, size, slack, length }: SafetyChain): Json => ({
  count,
  ...(grade === undefined ? {} : { grade }),
  ...(size === undefined ? {} : { size: figure(size, 'm') }),
  slack: figure(slack, 'm'),
  ...(length === undefined ? {} : { length: figure(length, 'm') }),
});

const loadsOf = (paper: unknown, now: Vehicle, was: Vehicle): Json[] => [
  ...listOf(paper),
  ...now.loads.slice(was.loads.length).map(({ name, mass, at, across, height }) => ({
    name,
    mass: figure(mass.value, 'kg'),
    at: figure(at, 'm'),
    across: figure(across, 'm'),
    height: figure(height, 'm'),
  })),
];

const brakesOf = (paper: readonly Json[], now: Vehicle, was: Vehicle, written: readonly Written[]): Json[] =>
  now.brakes.map((gear, i) => {
    if (i >= was.brakes.length) return newBrake(gear, written);
    return gear.kind === was.brakes[i].kind ? paper[i] : { ...paper[i], kind: gear.kind };
  });

/** A brake like one of the train, on all wheels of its new vehicle; or one that only parks. */
function newBrake(gear: BrakeGear, written: readonly Written[]): Json {
  const { workedBy, parking, kind, name } = gear;
  for (const { vehicle, member } of written) {
    const i = vehicle.brakes.findIndex(
      (b) => b.force === gear.force && b.rigging === gear.rigging && b.id === gear.id,
    );
    if (i < 0) continue;
    const { on: _on, ...like } = listOf(member.vehicle['brakes'])[i];
    return { ...like, kind, workedBy };
  }
  const force = gear.force && {
    value: gear.force.value,
    unit: 'N',
    how: 'measured',
    source: 'as tried: to be measured once it is fitted',
  };
  return { name, kind, ...(force ? { force } : {}), workedBy, parking };
}

/** Riders who are left stay out; a new one is written as the adult that he or she was weighed as. */
function ridersOf(papers: readonly Json[], { riders: before }: Outing, { riders: after }: Outing): Json[] {
  const there = new Set(after.map(({ id }) => id));
  /** Nobody is held by one who is not there. */
  const held = ({ heldBy, ...rest }: Json): Json =>
    heldBy !== undefined && there.has(slug(String(heldBy))) ? { ...rest, heldBy } : rest;
  return after.map((now) => {
    const i = before.findIndex((r) => r.id === now.id);
    if (i < 0) return newRider(now, papers[before.findIndex((r) => r.mass === now.mass)]);
    const was = before[i];
    if (was === now) return papers[i]['heldBy'] === undefined ? papers[i] : held(papers[i]);
    const { vehicle: _vehicle, seat: _seat, duty: _duty, ...rest } = papers[i];
    return { ...held(rest), ...placeOf(now), ...(now.duty === 'rider' ? {} : { duty: now.duty }) };
  });
}

/** In the same order; only where somebody looks out is moved. */
const crewOf = (papers: readonly Json[], { crew = [] }: Outing): Json[] =>
  papers.map(({ looksOutAt: _was, ...rest }, i) => {
    const at = crew[i].looksOutAt;
    return at === undefined ? rest : { ...rest, looksOutAt: at };
  });

const placeOf = ({ vehicle, seat }: Rider): Json => ({
  ...(vehicle === undefined ? {} : { vehicle }),
  ...(seat === undefined ? {} : { seat }),
});

function newRider(now: Rider, like: Json | undefined): Json {
  const { value, low, high, how, source } = now.mass;
  const adult = like?.['typical'] !== 'child' && like?.['typical'] !== 'youth';
  const typical = adult ? like?.['typical'] : undefined;
  return {
    name: now.name,
    ...(now.age === undefined ? {} : { age: now.age }),
    ...(typical === undefined
      ? { weight: { value, low, high, unit: 'kg', how, ...(source === undefined ? {} : { source }) } }
      : { typical }),
    ...placeOf(now),
    duty: now.duty,
  };
}
