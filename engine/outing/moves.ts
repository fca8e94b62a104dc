/** The moves of a route that sets back: each an outing of its own, the train end for end where its last vehicle leads. */
import { type Polygon, wholeFigure } from '../base/numerics/polygon.ts';
import type { Train } from '../things/train/types.ts';
import type { Vehicle } from '../things/vehicle/types.ts';
import type { OtherMove, Outing } from './types.ts';

/** Of its line, whatever route over its tracks is run: what records, certificates and limits call it by. */
export const nameOfLine = ({ whole, line }: Pick<Outing, 'whole' | 'line'>): string => (whole ?? line).name;

/** The others beside the one that is answered in full, as outings. Agreed limits are told along the first alone. */
export const otherMoves = (
  outing: Outing,
): readonly { readonly of: OtherMove; readonly outing: Outing }[] => {
  const { moves = [], ...rest } = outing;
  return moves.map((of) => ({
    of,
    outing: {
      ...rest,
      line: of.line,
      extraLimits: [],
      train: of.turned ? turnedTrain(outing.train) : outing.train,
      ...(of.restrictions ? { restrictions: of.restrictions } : {}),
    },
  }));
};

/** The same train on its way back; undefined where the line goes round, sets back by moves of its own, or it does not run so. */
export function wayBack(outing: Outing): Outing | undefined {
  const { line, moves, direction, wayBack: way = 'engine-leads', train, turned, ...rest } = outing;
  if (line.loop || moves || way === 'none') return undefined;
  const pushed = way === 'pushed';
  return {
    ...rest,
    line,
    direction: direction === 'forward' ? 'reverse' : 'forward',
    wayBack: 'none',
    train: pushed ? turnedTrain(train) : train,
    ...(pushed !== (turned === true) ? { turned: true } : {}),
  };
}

/** Trains run over it both ways: it has two ends, or the route sets back. */
export const runsBothWays = ({ line, moves }: Pick<Outing, 'line' | 'moves'>): boolean =>
  !line.loop || moves !== undefined;

/** As its paper has it. */
export const asInPaper = (outing: Outing): Outing =>
  outing.turned ? { ...outing, train: turnedTrain(outing.train) } : outing;

/** The same train run the other way: its last vehicle first, every one of them rear end first. Twice is the identity. */
export function turnedTrain({ vehicles, pipeBrokenAfter, ...train }: Train): Train {
  const last = vehicles.length - 1;
  return {
    ...train,
    vehicles: vehicles.map(turnedVehicle).reverse(),
    pipeBrokenAfter: pipeBrokenAfter.map((i) => last - 1 - i).reverse(),
  };
}

const facingOther = { forward: 'backward', backward: 'forward', sideways: 'sideways' } as const;

const mirrored = (of: Polygon): Polygon => of.map(({ x, y }) => ({ x: x === 0 ? 0 : -x, y })).reverse();

/** Turned again, a vehicle is the very one that it was. */
const known = new WeakMap<Vehicle, Vehicle>();

/** What was its front end is its rear one, what lay to its left lies to its right. */
function turnedVehicle(vehicle: Vehicle): Vehicle {
  const turned = known.get(vehicle) ?? endForEnd(vehicle);
  known.set(vehicle, turned);
  known.set(turned, vehicle);
  return turned;
}

function endForEnd(vehicle: Vehicle): Vehicle {
  const { length, front, rear, groups, seats, loads, centreAt, wheelsets, section, lowParts } = vehicle;
  const turn = <T extends { readonly at: number }>(list: readonly T[]): T[] =>
    list.map((one) => ({ ...one, at: length - one.at })).reverse();
  const across = <T extends { readonly at: number; readonly across: number }>(list: readonly T[]): T[] =>
    turn(list.map((one) => ({ ...one, across: one.across === 0 ? 0 : -one.across })));
  return {
    ...vehicle,
    front: rear,
    rear: front,
    groups: turn(groups),
    seats: across(seats).map((seat) => ({ ...seat, facing: facingOther[seat.facing] })),
    loads: across(loads),
    ...(centreAt === undefined ? {} : { centreAt: length - centreAt }),
    ...(wheelsets ? { wheelsets: [...wheelsets].reverse() } : {}),
    ...(section ? { section: mirrored(wholeFigure(section)) } : {}),
    ...(lowParts ? { lowParts: turn(lowParts) } : {}),
  };
}
