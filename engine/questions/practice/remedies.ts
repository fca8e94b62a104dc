/** Changes worth trying for what the trade asks: an adult beside the child, a seat of one's own, a car left behind. */
import type { Outing } from '../../outing/types.ts';
import { isCar } from '../../things/train/cars.ts';
import type { Rider } from '../../things/train/types.ts';
import type { Family, Remedies } from '../family.ts';
import { fewerOnBoard } from '../host/remedies.ts';
import { agesOf, childrenAlone, passengers, ridersOn, sharedSeats } from './people.ts';

interface Move {
  readonly rider: string;
  readonly vehicle: string;
  readonly seat: string;
}

/** Seatings worth trying, the nearest first. */
const MOST_SEATINGS = 3;

export const practiceRemedies: Remedies = {
  'child-alone': (outing, { where }) =>
    where.vehicle === undefined
      ? []
      : [
          ...besideAnAdult(outing, where.vehicle),
          leave(
            childrenAlone(ridersOn(outing.riders, where.vehicle), agesOf(outing), outing.host.childWithAdult)
              ?.children ?? [],
          ),
        ],
  'infant-aboard': (outing, { where }) =>
    where.vehicle === undefined
      ? []
      : [leave(passengers(ridersOn(outing.riders, where.vehicle)).filter(agesOf(outing).isInfant))],
  'more-people-than-seats': fewerOnBoard,
  'seat-shared': (outing, { where }) => (where.vehicle === undefined ? [] : apart(outing, where.vehicle)),
  'coupler-kinds-differ': (outing, { where }) =>
    where.gap === undefined ? [] : eitherCar(outing, where.gap),
  'coupler-heights-differ': (outing, { where }) =>
    where.gap === undefined ? [] : eitherCar(outing, where.gap),
  'no-chain-on-grade': () => [{ size: 1, changes: [{ kind: 'chains' }] }],
};

function apart(outing: Outing, vehicle: string): Family[] {
  const extra = passengers(
    sharedSeats(ridersOn(outing.riders, vehicle), agesOf(outing)).flatMap(({ riders, lap }) =>
      lap ? riders : riders.slice(1),
    ),
  );
  return [...seatsOfTheirOwn(outing, vehicle, extra), leave(extra)];
}

const seats = (moves: readonly Move[]): Family => ({
  size: 0.5 + moves.length / 2,
  changes: [{ kind: 'seat', moves }],
});

const leave = (riders: readonly Rider[]): Family => ({
  size: 3,
  changes: riders.length === 0 ? [] : [{ kind: 'fewer-riders', leave: riders.map((r) => r.id) }],
});

const eitherCar = ({ train }: Outing, gap: number): Family[] =>
  [train.vehicles[gap + 1], train.vehicles[gap]]
    .filter((v) => v !== undefined && isCar(v))
    .map((v) => ({ size: 4, changes: [{ kind: 'fewer-cars', leave: [v.id] }] }));

function freeSeats(outing: Outing, vehicle: string): string[] {
  const taken = new Set(ridersOn(outing.riders, vehicle).map((r) => r.seat));
  const of = outing.train.vehicles.find((v) => v.id === vehicle);
  return (of?.seats ?? []).filter((s) => !s.driver && !taken.has(s.id)).map((s) => s.id);
}

/** Those of the same party first. */
const nearTo = (children: readonly Rider[], riders: readonly Rider[]): Rider[] => {
  const parties = new Set(children.flatMap((c) => c.group ?? []));
  const rank = (r: Rider): number => (r.group !== undefined && parties.has(r.group) ? 0 : 1);
  return [...riders].sort((a, b) => rank(a) - rank(b));
};

/** An adult to a free seat here, the children to free seats beside one, or an adult and a child exchanged. */
function besideAnAdult(outing: Outing, vehicle: string): Family[] {
  const { isAdult, isChild } = agesOf(outing);
  const cars = outing.train.vehicles.filter((v) => isCar(v) && v.id !== vehicle);
  const children = passengers(ridersOn(outing.riders, vehicle)).filter(isChild);
  const withAdult = cars.filter((v) => ridersOn(outing.riders, v.id).some(isAdult));
  // Whoever leaves a car must leave no other child alone there.
  const adults = nearTo(children, passengers(outing.riders)).filter(
    (a) => isAdult(a) && withAdult.some((v) => v.id === a.vehicle) && a.seat !== undefined,
  );
  const spared = adults.filter(
    (a) => hasAnother(outing, a) || !ridersOn(outing.riders, a.vehicle as string).some(isChild),
  );
  const [here] = freeSeats(outing, vehicle);
  const comes = here === undefined ? [] : spared.map((a): Move[] => [{ rider: a.id, vehicle, seat: here }]);
  const go = withAdult.flatMap((v): Move[][] => {
    const free = freeSeats(outing, v.id);
    return free.length < children.length
      ? []
      : [children.map((c, i) => ({ rider: c.id, vehicle: v.id, seat: free[i] }))];
  });
  const exchanged = children.slice(0, 1).flatMap((child) =>
    child.seat === undefined
      ? []
      : adults
          .filter((a) => hasAnother(outing, a))
          .map((a): Move[] => [
            { rider: a.id, vehicle, seat: child.seat as string },
            { rider: child.id, vehicle: a.vehicle as string, seat: a.seat as string },
          ]),
  );
  return [comes, go, exchanged]
    .flatMap((ways) => ways.slice(0, 1))
    .slice(0, MOST_SEATINGS)
    .map(seats);
}

const hasAnother = (outing: Outing, adult: Rider): boolean =>
  ridersOn(outing.riders, adult.vehicle as string).some((r) => r !== adult && agesOf(outing).isAdult(r));

/** Each to a free seat of the same vehicle, else of another that carries an adult. */
function seatsOfTheirOwn(outing: Outing, vehicle: string, extra: readonly Rider[]): Family[] {
  const { isAdult } = agesOf(outing);
  const others = outing.train.vehicles.filter(
    (v) => isCar(v) && v.id !== vehicle && ridersOn(outing.riders, v.id).some(isAdult),
  );
  const free = [vehicle, ...others.map((v) => v.id)].flatMap((v) =>
    freeSeats(outing, v).map((seat) => ({ vehicle: v, seat })),
  );
  if (extra.length === 0 || free.length < extra.length) return [];
  return [seats(extra.map((r, i) => ({ rider: r.id, ...free[i] })))];
}
