/** Making a change to an outing: what a remedy proposes, what a person tries by a tap. */

import { INCH } from '../base/constants.ts';
import { exact } from '../base/quantity.ts';
import { type BrakeKind, isAirKind } from '../things/brake/kinds/index.ts';
import type { Flangeway, Structure } from '../things/line/types.ts';
import type { SandedRail } from '../things/rail.ts';
import { driverReach } from '../things/train/crew.ts';
import type { Rider } from '../things/train/types.ts';
import type { BrakeGear, Coupling, Vehicle } from '../things/vehicle/types.ts';
import { usualWorker } from '../things/vehicle/worked-by.ts';
import type { Wheelset } from '../things/wheel/types.ts';
import { lookOut, relieve } from './relieve.ts';
import type { Outing } from './types.ts';

/** A change to the outing. Each remedy is one, re-checked by asking again. */
export type Change =
  | { readonly kind: 'fewer-cars'; readonly leave: readonly string[] }
  | { readonly kind: 'fewer-riders'; readonly leave: readonly string[] }
  | { readonly kind: 'slower'; readonly from: number; readonly to: number; readonly speed: number }
  | { readonly kind: 'slower-everywhere'; readonly speed: number }
  | { readonly kind: 'brake-car'; readonly vehicle: string; readonly like: string }
  | { readonly kind: 'rail-state'; readonly state: SandedRail | 'dry' }
  | { readonly kind: 'order'; readonly order: readonly string[] }
  | { readonly kind: 'seat'; readonly moves: readonly { rider: string; vehicle: string; seat: string }[] }
  | { readonly kind: 'ballast'; readonly vehicle: string; readonly mass: number; readonly height: number }
  | { readonly kind: 'chains' }
  | {
      readonly kind: 'chain-size';
      /** Absent: every gap. */
      readonly gap?: number;
      readonly grade: 30 | 43 | 70 | 80;
      readonly size: number;
    }
  /** A bar between the pivots of a gap that is longer by so much, m; the vehicles stand so much farther apart. */
  | { readonly kind: 'longer-coupling'; readonly gap: number; readonly by: number }
  /** A coupler shimmed higher, or lower where negative, m. */
  | {
      readonly kind: 'coupler-raised';
      readonly vehicle: string;
      readonly end: 'front' | 'rear';
      readonly by: number;
    }
  /** What hangs low on a vehicle lifted or cut away by so much, m. */
  | { readonly kind: 'part-lifted'; readonly vehicle: string; readonly part: string; readonly by: number }
  /** Wheels of one axle pressed farther apart, or nearer together where negative, m. */
  | {
      readonly kind: 'wheel-gauge';
      readonly vehicle: string;
      readonly wheelset: string;
      readonly by: number;
    }
  /** The guard rail of a frog moved toward its rail, or away from it where negative, m. */
  | { readonly kind: 'guard-rail'; readonly flangeway: string; readonly by: number }
  /** What stands beside the track set back from it, or what hangs over it raised, m. */
  | { readonly kind: 'set-back' | 'raised'; readonly structure: string; readonly by: number }
  /** No other train is on the line while this one is. */
  | { readonly kind: 'alone' }
  | { readonly kind: 'guard' }
  /** Somebody who is listed takes over the place and duty of a driver or guard. */
  | { readonly kind: 'relieve'; readonly rider: string; readonly by: string }
  /** Somebody who is listed looks out there, and whoever did no more. */
  | { readonly kind: 'look-out'; readonly at: string; readonly by: string }
  | { readonly kind: 'parking-brake'; readonly vehicle: string; readonly force: number }
  /** A lever in reach of the driver, who brakes with it on the run. */
  | { readonly kind: 'driver-brake'; readonly vehicle: string; readonly force: number }
  | { readonly kind: 'brake-kind'; readonly brake: BrakeKind }
  | { readonly kind: 'together'; readonly changes: readonly Change[] };

export function applyChange(outing: Outing, change: Change): Outing {
  switch (change.kind) {
    case 'fewer-cars':
      return leaveVehicles(outing, new Set(change.leave));
    case 'fewer-riders':
      return { ...outing, riders: outing.riders.filter((r) => !change.leave.includes(r.id)) };
    case 'slower':
      return {
        ...outing,
        extraLimits: [...outing.extraLimits, { from: change.from, to: change.to, speed: change.speed }],
      };
    case 'slower-everywhere':
      return { ...outing, plannedSpeed: Math.min(outing.plannedSpeed ?? Infinity, change.speed) };
    case 'brake-car':
      return brakeCar(outing, change.vehicle, change.like);
    case 'rail-state':
      return { ...outing, conditions: { ...outing.conditions, railState: change.state } };
    case 'order':
      return withVehicles(outing, inOrder(outing.train.vehicles, change.order));
    case 'seat':
      return { ...outing, riders: reseat(outing.riders, change.moves) };
    case 'ballast':
      return changeVehicle(outing, change.vehicle, (v) => addBallast(v, change.mass, change.height));
    case 'chains':
      return fastenChains(outing);
    case 'chain-size':
      return gapsOf(outing, change.gap).reduce(
        (changed, gap) => replaceChain(changed, gap, change.grade, change.size),
        outing,
      );
    case 'longer-coupling':
      return withVehicles(
        outing,
        outing.train.vehicles.map((v, i) => (i === change.gap ? longerBehind(v, change.by, outing) : v)),
      );
    case 'coupler-raised':
      return changeVehicle(outing, change.vehicle, (v) => ({
        ...v,
        [change.end]: raised(v[change.end], change.by),
      }));
    case 'part-lifted':
      return changeVehicle(outing, change.vehicle, (v) => ({
        ...v,
        lowParts: (v.lowParts ?? []).map((p) =>
          p.name === change.part ? { ...p, height: p.height + change.by } : p,
        ),
      }));
    case 'wheel-gauge':
      return changeVehicle(outing, change.vehicle, (v) => ({
        ...v,
        wheelsets: (v.wheelsets ?? []).map((w) => (w.id === change.wheelset ? pressed(w, change.by) : w)),
      }));
    case 'guard-rail':
      return {
        ...outing,
        line: {
          ...outing.line,
          flangeways: (outing.line.flangeways ?? []).map((f) =>
            f.id === change.flangeway ? guardMoved(f, change.by) : f,
          ),
        },
      };
    case 'set-back':
    case 'raised':
      return {
        ...outing,
        line: {
          ...outing.line,
          structures: (outing.line.structures ?? []).map((s) =>
            s.id === change.structure ? moved(s, change) : s,
          ),
        },
      };
    case 'alone':
      return alone(outing);
    case 'guard':
      return addGuard(outing);
    case 'relieve':
      return relieve(outing, change.rider, change.by);
    case 'look-out':
      return lookOut(outing, change.at, change.by);
    case 'parking-brake':
      return changeVehicle(outing, change.vehicle, (v) => ({
        ...v,
        brakes: [...v.brakes, parkingBrake(v, change.force, outing)],
      }));
    case 'driver-brake':
      return changeVehicle(outing, change.vehicle, (v) => ({
        ...v,
        brakes: [...v.brakes, driverBrake(v, change.force)],
      }));
    case 'together':
      return change.changes.reduce(applyChange, outing);
    case 'brake-kind':
      return changeBrakeKind(outing, change.brake);
  }
}

/** Nor does one follow. */
function alone({ following: _waits, ...outing }: Outing): Outing {
  return { ...outing, otherTrains: 'none' };
}

const raised = (coupling: Coupling, by: number): Coupling =>
  coupling.height === undefined ? coupling : { ...coupling, height: coupling.height + by };

const pressed = (w: Wheelset, by: number): Wheelset => ({
  ...w,
  ...(w.backToBack ? { backToBack: w.backToBack.map((b) => b + by) } : {}),
});

/** Its gap narrows; what was measured across the track from it grows. */
const guardMoved = ({ guard, guardCheck, guardFace, ...way }: Flangeway, by: number): Flangeway => ({
  ...way,
  ...(guard === undefined ? {} : { guard: guard - by }),
  ...(guardCheck === undefined ? {} : { guardCheck: guardCheck + by }),
  ...(guardFace === undefined ? {} : { guardFace: guardFace + by }),
});

const moved = (
  s: Structure,
  { kind, by }: { readonly kind: 'set-back' | 'raised'; readonly by: number },
): Structure => ({
  ...s,
  ...(kind === 'set-back' && s.distance !== undefined ? { distance: s.distance + by } : {}),
  ...(kind === 'raised' && s.headroom !== undefined ? { headroom: s.headroom + by } : {}),
});

const withVehicles = (outing: Outing, vehicles: readonly Vehicle[]): Outing => ({
  ...outing,
  train: { ...outing.train, vehicles },
});

const changeVehicle = (outing: Outing, id: string, change: (v: Vehicle) => Vehicle): Outing =>
  withVehicles(
    outing,
    outing.train.vehicles.map((v) => (v.id === id ? change(v) : v)),
  );

/** Leave vehicles behind, and their riders with them. A broken pipe keeps its place between its vehicles. */
function leaveVehicles(outing: Outing, leave: ReadonlySet<string>): Outing {
  const { vehicles, pipeBrokenAfter } = outing.train;
  const kept = vehicles.filter((v) => !leave.has(v.id));
  const broken = new Set(
    pipeBrokenAfter.flatMap((i) => {
      const before = vehicles.slice(0, i + 1).filter((v) => !leave.has(v.id)).length - 1;
      return before >= 0 && before < kept.length - 1 ? [before] : [];
    }),
  );
  return {
    ...outing,
    train: { ...outing.train, vehicles: kept, pipeBrokenAfter: [...broken] },
    riders: outing.riders.filter((r) => r.vehicle === undefined || !leave.has(r.vehicle)),
  };
}

/** Give a car the brake gear of another, on all its groups. */
function brakeCar(outing: Outing, id: string, like: string): Outing {
  const pattern = outing.train.vehicles.find((v) => v.id === like);
  if (!pattern) return outing;
  return changeVehicle(outing, id, (v) => ({
    ...v,
    brakes: [...v.brakes, ...pattern.brakes.map((b): BrakeGear => ({ ...b, on: v.groups.map((g) => g.id) }))],
  }));
}

function inOrder(vehicles: readonly Vehicle[], order: readonly string[]): Vehicle[] {
  const rank = (v: Vehicle): number => {
    const i = order.indexOf(v.id);
    return i < 0 ? order.length : i;
  };
  return [...vehicles].sort((a, b) => rank(a) - rank(b));
}

function reseat(
  riders: readonly Rider[],
  moves: readonly { rider: string; vehicle: string; seat: string }[],
): Rider[] {
  return riders.map((r) => {
    const move = moves.find((m) => m.rider === r.id);
    return move ? { ...r, vehicle: move.vehicle, seat: move.seat } : r;
  });
}

const addBallast = (v: Vehicle, mass: number, height: number): Vehicle => ({
  ...v,
  loads: [...v.loads, { name: 'ballast', mass: exact(mass), at: v.length / 2, across: 0, height }],
});

type Hung = NonNullable<Coupling['chain']>;
const hungAs = ({ slack, count, length }: Hung): Hung => ({
  slack,
  count,
  ...(length === undefined ? {} : { length }),
});

/** A new chain with hooks and links to match, hung as the old one; one alone with the usual slack where none hung. */
const withChain = (
  coupling: Coupling,
  grade: 30 | 43 | 70 | 80,
  size: number,
  { assumed }: Outing,
): Coupling => ({
  ...coupling,
  chain: {
    ...(coupling.chain ? hungAs(coupling.chain) : { slack: assumed.chainSlack.value, count: 1 }),
    grade,
    size,
  },
});

const gapsOf = ({ train }: Outing, gap: number | undefined): number[] =>
  gap === undefined ? train.vehicles.slice(1).map((_, i) => i) : [gap];

/** In place of whatever either vehicle has at the gap. */
function replaceChain(outing: Outing, gap: number, grade: 30 | 43 | 70 | 80, size: number): Outing {
  const { vehicles } = outing.train;
  const old = vehicles[gap].rear.chain ?? vehicles[gap + 1].front.chain;
  return withVehicles(
    outing,
    vehicles.map((v, i) => {
      if (i === gap)
        return { ...v, rear: withChain(old ? { ...v.rear, chain: old } : v.rear, grade, size, outing) };
      if (i !== gap + 1) return v;
      const { chain: _old, ...front } = v.front;
      return { ...v, front };
    }),
  );
}

/** Chains of the smallest common size on every gap that has none. Whether they are strong enough is asked elsewhere. */
function fastenChains(outing: Outing): Outing {
  const { vehicles } = outing.train;
  const chained = vehicles.map((v, i) =>
    i === vehicles.length - 1 || v.rear.chain || vehicles[i + 1].front.chain
      ? v
      : { ...v, rear: withChain(v.rear, 30, 0.25 * INCH, outing) },
  );
  return { ...outing, train: { ...outing.train, vehicles: chained, chainsFastened: true } };
}

/** Where the shank is not stated, what stands in for it grows: what is asked about it is still asked. */
const longerBehind = (v: Vehicle, by: number, { assumed }: Outing): Vehicle => ({
  ...v,
  length: v.length + by,
  rear: { ...v.rear, shank: (v.rear.shank ?? v.gauge * assumed.coupler.shank.low) + by },
});

/** A guard in place of the last seated rider: the seat is needed, and its rider stays behind. */
function addGuard(outing: Outing): Outing {
  const last = [...outing.train.vehicles].reverse().find((v) => v.role !== 'engine' && v.seats.length > 0);
  if (!last) return outing;
  const on = outing.riders.filter((r) => r.vehicle === last.id);
  const free = [...last.seats].reverse().find((s) => !on.some((r) => r.seat === s.id));
  const gives = free ? undefined : on[on.length - 1];
  const seat = free?.id ?? gives?.seat;
  if (seat === undefined) return outing;
  const mass = outing.riders.find((r) => r.ageGroup === 'adult')?.mass ?? gives?.mass;
  if (!mass) return outing;
  let id = 'guard';
  for (let n = 2; outing.riders.some((r) => r.id === id); n++) id = `guard-${n}`;
  const guard: Rider = {
    id,
    name: 'guard',
    mass,
    ageGroup: 'adult',
    vehicle: last.id,
    seat,
    duty: 'guard',
  };
  return { ...outing, riders: [...outing.riders.filter((r) => r !== gives), guard] };
}

/** A brake worked by hand on all its wheels, as strong as that. @param force at the blocks, N */
const handBrake = (
  v: Vehicle,
  force: number,
  own: Pick<BrakeGear, 'id' | 'name' | 'workedBy' | 'parking'>,
): BrakeGear => ({ kind: 'mechanical', on: v.groups.map((g) => g.id), force: exact(force), ...own });

/** A screw for whoever rides there: it holds a standing train and stops none. */
const parkingBrake = (v: Vehicle, force: number, outing: Outing): BrakeGear =>
  handBrake(v, force, {
    id: 'parking',
    name: 'parking brake',
    workedBy: driverReach(outing).has(outing.train.vehicles.indexOf(v))
      ? 'driver'
      : usualWorker('mechanical', v.role, false),
    parking: true,
  });

/** A lever that the driver pulls on the run; that it stays on by itself nobody has said. */
const driverBrake = (v: Vehicle, force: number): BrakeGear =>
  handBrake(v, force, { id: 'lever', name: 'brake lever', workedBy: 'driver', parking: false });

/** The same gear worked as another kind: through brakes of the cars and the engine's supply. */
function changeBrakeKind(outing: Outing, kind: BrakeGear['kind']): Outing {
  const turn = (k: BrakeGear['kind']): BrakeGear['kind'] => (isAirKind(k) ? kind : k);
  return withVehicles(
    outing,
    outing.train.vehicles.map((v) => ({
      ...v,
      brakes: v.brakes.map((b) => ({ ...b, kind: turn(b.kind) })),
      ...(v.supplies ? { supplies: [...new Set(v.supplies.map(turn))] } : {}),
      ...(v.throughPipe ? { throughPipe: [...new Set(v.throughPipe.map(turn))] } : {}),
    })),
  );
}
