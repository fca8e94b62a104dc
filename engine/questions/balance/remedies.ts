/**
 * Changes worth trying for a finding of balance: other seats, ballast under the floor, heavy cars first. They
 * are proposals only; whoever asks runs the whole check again on each.
 */
import { type OutingContext, openOuting } from '../../outing/open.ts';
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import { loadTrain } from '../../things/train/loaded.ts';
import type { Rider } from '../../things/train/types.ts';
import { fewerRidersOn, slowerHere } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';
import { bodyOf } from './body.ts';

/** Side demand under which seatings are compared, as a share of g: a usual curve. */
const DEMAND = 0.05;
const MOST_SEATINGS = 3;
/** kg */
const BALLAST = [5, 10, 15, 20, 30, 40, 60, 80];

const seatedElsewhere = (outing: Outing, finding: Finding): Family[] => [
  ...balanceFamilies(outing, finding),
  fewerRidersOn(outing, finding.where.vehicle, 4),
];

export const balanceRemedies: Remedies = {
  'curve-speed-limited-by-balance': (outing, finding) => [
    slowerHere(outing, finding),
    ...balanceFamilies(outing, finding),
  ],
  'tips-at-rest': seatedElsewhere,
  'stands-light-on-one-side': seatedElsewhere,
  'lean-small': seatedElsewhere,
  'truck-lifts': seatedElsewhere,
  'flange-may-climb': seatedElsewhere,
  'all-lean-goes-over': balanceFamilies,
};

export function balanceFamilies(outing: Outing, finding: Finding): Family[] {
  const { vehicle } = finding.where;
  if (vehicle === undefined) return [];
  const context = openOuting(outing);
  switch (finding.code) {
    case 'tips-at-rest':
    case 'stands-light-on-one-side':
    case 'lean-small':
    case 'curve-speed-limited-by-balance':
      return [...seatings(context, vehicle), ballast(context, vehicle)];
    case 'all-lean-goes-over':
    case 'truck-lifts':
      return seatings(context, vehicle);
    case 'flange-may-climb':
    case 'coupler-jerk-tips':
      return [...seatings(context, vehicle), heavyFirst(outing), ballast(context, vehicle)];
    default:
      return [];
  }
}

interface Move {
  readonly rider: string;
  readonly vehicle: string;
  readonly seat: string;
}

/** The best few of: one rider to a free seat, or two riders exchanged, this vehicle being one of the two. */
function seatings(context: OutingContext, vehicle: string): Family[] {
  const now = worth(context, [], [vehicle]);
  return candidates(context, vehicle)
    .map((moves) => ({ moves, worth: worth(context, moves, touched(moves, vehicle)) }))
    .filter((c) => c.worth > now + 1e-6)
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST_SEATINGS)
    .map(({ moves }) => ({ size: 0.5 + moves.length / 2, changes: [{ kind: 'seat', moves }] }));
}

function candidates({ outing }: OutingContext, vehicle: string): Move[][] {
  const movable = outing.riders.filter(
    (r) => r.duty === 'rider' && r.heldBy === undefined && !holds(outing, r),
  );
  const here = movable.filter((r) => r.vehicle === vehicle);
  const free = outing.train.vehicles
    .filter(isCar)
    .flatMap((v) =>
      v.seats
        .filter((s) => !s.driver && !outing.riders.some((r) => r.vehicle === v.id && r.seat === s.id))
        .map((s) => ({ vehicle: v.id, seat: s.id })),
    );
  const toFree = here.flatMap((r) =>
    free.filter((f) => f.vehicle === vehicle || r.group === undefined).map((f) => [{ rider: r.id, ...f }]),
  );
  const exchanges = here.flatMap((a) =>
    movable
      .filter((b) => b.vehicle !== undefined && b.seat !== undefined)
      // Two on the same vehicle are one exchange, whichever is named first.
      .filter((b) => (b.vehicle === vehicle ? a.id < b.id : true))
      .filter((b) => b.vehicle === vehicle || (a.group === undefined && b.group === undefined))
      .filter((b) => Math.abs(b.mass.value - a.mass.value) > 1)
      .map((b) => [
        { rider: a.id, vehicle: b.vehicle as string, seat: b.seat as string },
        { rider: b.id, vehicle, seat: a.seat as string },
      ]),
  );
  return [...toFree, ...exchanges];
}

const holds = ({ riders }: Outing, rider: Rider): boolean => riders.some((r) => r.heldBy === rider.id);

const touched = (moves: readonly Move[], vehicle: string): string[] => [
  ...new Set([vehicle, ...moves.map((m) => m.vehicle)]),
];

/** Lightest wheel at a usual side demand, of the named vehicles, after the moves; worst of them. */
function worth({ outing, line }: OutingContext, moves: readonly Move[], vehicles: readonly string[]): number {
  const riders = outing.riders.map((r) => {
    const move = moves.find((m) => m.rider === r.id);
    return move ? { ...r, vehicle: move.vehicle, seat: move.seat } : r;
  });
  const kept = outing.train.vehicles.filter((v) => vehicles.includes(v.id));
  const loaded = loadTrain({ ...outing.train, vehicles: kept }, riders);
  return Math.min(
    ...loaded.vehicles.map((v) => {
      const body = bodyOf(v, line.contactWidth, outing.assumed.riderCentre, 1);
      if (!body) return -Infinity;
      const roll = (body.amplification * (Math.abs(body.Y) + body.Z * DEMAND)) / body.base;
      return Math.min(
        ...body.groupMass.map((m, i) => (m - 2 * body.rollShare[i] * roll) / body.rollShare[i] / body.mass),
      );
    }),
  );
}

/** Ballast under the floor, as low as the couplings. */
function ballast({ outing }: OutingContext, id: string): Family {
  const vehicle = outing.train.vehicles.find((v) => v.id === id);
  if (!vehicle) return { size: 3, changes: [] };
  const height = vehicle.front.height ?? vehicle.gauge / 2;
  return { size: 3, changes: BALLAST.map((mass) => ({ kind: 'ballast', vehicle: id, mass, height })) };
}

/** Engines stay; cars follow by weight, the heaviest first: light cars are the first to be pushed out. */
function heavyFirst(outing: Outing): Family {
  const { loaded } = openOuting(outing);
  const cars = loaded.vehicles.filter((v) => isCar(v.vehicle));
  const sorted = [...cars].sort((a, b) => b.mass - a.mass || a.index - b.index);
  if (sorted.every((v, i) => v === cars[i])) return { size: 2, changes: [] };
  let next = 0;
  const order = loaded.vehicles.map((v) => (isCar(v.vehicle) ? sorted[next++] : v).vehicle.id);
  return { size: 2, changes: [{ kind: 'order', order }] };
}
