/**
 * What the trade always asks, whether or not a host's file says so. A host's own rule on the same thing stands in
 * its place; where it is a rule that counts, `host/` asks it.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { isLinked, sameKind, tellsKind } from '../../things/coupler/linked.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import { agesOf, childrenAlone, passengers, ridersOn, sharedSeats } from './people.ts';

const PRACTICE = 'common practice, no source';

export function askPractice(context: OutingContext): Finding[] {
  return [
    ...context.outing.train.vehicles.flatMap((v) => people(context, v)),
    ...couplerKinds(context),
    ...couplerHeights(context),
    ...chainsOnGrade(context),
    ...lights(context),
    ...triedStop(context),
  ];
}

function people(context: OutingContext, vehicle: Vehicle): Finding[] {
  return [
    ...alone(context, vehicle),
    ...infants(context, vehicle),
    ...crowded(context, vehicle),
    ...shared(context, vehicle),
  ];
}

const names = (of: readonly { readonly name: string }[]): string => of.map(({ name }) => name).join(', ');

function alone({ outing }: OutingContext, { id }: Vehicle): Finding[] {
  const rule = outing.host.childWithAdult;
  const found = childrenAlone(ridersOn(outing.riders, id), agesOf(outing), rule);
  if (!found) return [];
  const ages = found.children.flatMap(({ age }) => age ?? []);
  return [
    makeFinding('child-alone', found.severity, 'practice', {
      where: { vehicle: id },
      facts: {
        riders: names(found.children),
        company: found.company,
        ...(ages.length > 0 ? { age: Math.min(...ages) } : {}),
      },
      source: rule?.source ?? PRACTICE,
    }),
  ];
}

/** A host that says how young a rider may be has settled it. */
function infants({ outing }: OutingContext, { id }: Vehicle): Finding[] {
  const found = passengers(ridersOn(outing.riders, id)).filter(agesOf(outing).isInfant);
  if (found.length === 0 || outing.host.youngestRider) return [];
  return [
    makeFinding('infant-aboard', 'limits', 'practice', {
      where: { vehicle: id },
      facts: { riders: names(found), age: Math.min(...found.flatMap(({ age }) => age ?? [])) },
      source: PRACTICE,
    }),
  ];
}

/** A vehicle whose file names no seat has an unknown number, not none. */
function crowded({ outing }: OutingContext, { id, seats }: Vehicle): Finding[] {
  const people = ridersOn(outing.riders, id).length;
  if (seats.length === 0 || people <= seats.length) return [];
  return [
    makeFinding('more-people-than-seats', 'forbids', 'practice', {
      where: { vehicle: id },
      found: amount(people, 'count'),
      required: amount(seats.length, 'count'),
      margin: marginOf(people, seats.length),
      source: PRACTICE,
    }),
  ];
}

function shared({ outing }: OutingContext, { id, seats }: Vehicle): Finding[] {
  return sharedSeats(ridersOn(outing.riders, id), agesOf(outing)).map(({ seat, riders, lap }) =>
    makeFinding('seat-shared', lap ? 'limits' : 'forbids', 'practice', {
      where: { vehicle: id },
      facts: {
        riders: names(riders),
        seat: seats.find((s) => s.id === seat)?.name ?? seat,
        ...(lap ? { lap: lap.name } : {}),
      },
      source: PRACTICE,
    }),
  );
}

/** Two kinds that meet couple by an adapter, or not at all; kinds that nobody wrote down are not held against each other. */
function couplerKinds({ outing }: OutingContext): Finding[] {
  const { vehicles } = outing.train;
  const differ = vehicles.slice(1).flatMap(({ front, name: other }, gap) => {
    const { rear } = vehicles[gap];
    const same = !tellsKind(rear) || !tellsKind(front) || sameKind(rear.type, front.type);
    return same ? [] : [{ gap, other, front: rear.type, rear: front.type }];
  });
  return differ.slice(0, 1).map(({ gap, ...facts }) =>
    makeFinding('coupler-kinds-differ', 'limits', 'practice', {
      where: { gap, vehicle: vehicles[gap].id },
      facts: { ...facts, others: differ.length - 1 },
      source: PRACTICE,
    }),
  );
}

/** Farther out of line than half a knuckle they hold by less than half their face, and one may ride over the other. */
function couplerHeights({ outing }: OutingContext): Finding[] {
  const { vehicles } = outing.train;
  const rule = outing.host.couplerTolerance;
  const tolerance = outing.assumed.coupler.heightDifference;
  const most = rule?.value ?? tolerance.value;
  const knuckle = outing.assumed.practice['half-knuckle'];
  const gaps = vehicles
    .slice(1)
    .map((behind, gap) => ({ gap, front: vehicles[gap].rear, rear: behind.front }));
  const differ = gaps.flatMap(({ gap, front, rear }) => {
    if (front.height === undefined || rear.height === undefined) return [];
    const found = Math.abs(front.height - rear.height);
    if (found <= most + 1e-6) return [];
    const overrides = !isLinked(front, rear) && found >= knuckle.value * vehicles[gap].gauge;
    return [{ gap, found, front: front.height, rear: rear.height, overrides }];
  });
  // One line for all that weigh alike: the worst, and how many more.
  const told = [true, false].flatMap((rides) => {
    const of = differ.filter(({ overrides }) => overrides === rides);
    if (of.length === 0) return [];
    const { gap, found, front, rear, overrides } = of.reduce((a, b) => (b.found > a.found + 1e-9 ? b : a));
    return [
      makeFinding('coupler-heights-differ', rule || overrides ? 'forbids' : 'limits', 'practice', {
        where: { gap, vehicle: vehicles[gap].id },
        found: amount(found, 'length'),
        required: amount(most, 'length'),
        margin: marginOf(found, most),
        facts: {
          other: vehicles[gap + 1].name,
          front: amount(front, 'length'),
          rear: amount(rear, 'length'),
          overrides,
          others: of.length - 1,
        },
        sure: rule ? 'stated' : 'assumed',
        source: rule?.source ?? tolerance.source ?? PRACTICE,
      }),
    ];
  });
  return [...told, ...heightsUnknown(outing, gaps)];
}

interface Gap {
  readonly gap: number;
  readonly front: Vehicle['rear'];
  readonly rear: Vehicle['front'];
}

/**
 * Gaps of which a height is not stated, one line for the train. Whoever couples the two sees how they stand, so that it is a note; a
 * host who says how far they may differ has made a rule of it, and nobody has said that it is kept. Links and bars ride over nothing:
 * of those without any height it is asked how far they turn (`pitch/`).
 */
function heightsUnknown(
  { host, train: { vehicles } }: OutingContext['outing'],
  gaps: readonly Gap[],
): Finding[] {
  const rule = host.couplerTolerance;
  // A sheet that says how high they stand cannot be told either, and asks for every one of them.
  if (host.standards?.couplerHeight) return [];
  const lacking = gaps.flatMap(({ gap, front, rear }) => {
    const without = [
      ...(front.height === undefined ? [vehicles[gap]] : []),
      ...(rear.height === undefined ? [vehicles[gap + 1]] : []),
    ];
    return without.length === 2 && !rule && isLinked(front, rear) ? [] : without;
  });
  if (lacking.length === 0) return [];
  return [
    makeFinding('coupler-height-unknown', rule ? 'unknown' : 'notes', 'practice', {
      where: { vehicle: lacking[0].id },
      ...(rule ? { required: amount(rule.value, 'length') } : {}),
      facts: { vehicles: names([...new Set(lacking)]) },
      measure: 'coupling.height',
      source: rule?.source ?? PRACTICE,
    }),
  ];
}

/** Gaps without a chain where the line is steep. A host that asks for chains, or says that it does not, has its way. */
function chainsOnGrade({ outing, line }: OutingContext): Finding[] {
  const { host, train } = outing;
  if (host.chainsRequired) return [];
  const { value: from, source } = outing.assumed.practice['chains-from'];
  const chains = train.vehicles.slice(0, -1).map((v, i) => v.rear.chain ?? train.vehicles[i + 1].front.chain);
  const without = chains.flatMap((chain, gap) => (train.chainsFastened && chain ? [] : [gap]));
  const pieces = line.heights.slice(1).map((to, i) => {
    const { at, height } = line.heights[i];
    return { at, grade: Math.abs(to.height - height) / (to.at - at) };
  });
  const steepest = pieces.reduce((most, p) => (p.grade > most.grade ? p : most), { at: 0, grade: 0 });
  if (without.length === 0 || steepest.grade <= from + 1e-9) return [];
  return [
    makeFinding('no-chain-on-grade', 'limits', 'practice', {
      where: { gap: without[0], vehicle: train.vehicles[without[0]].id },
      found: amount(steepest.grade, 'grade'),
      required: amount(from, 'grade'),
      margin: marginOf(steepest.grade, from),
      facts: { gaps: without.length, at: amount(steepest.at, 'length') },
      source,
    }),
  ];
}

/**
 * By night the driver must see the line, and the train behind must see this one. Without a headlight it does not
 * run; whether it has one must be known. Without a rear marker it runs only where nothing follows.
 */
function lights({ outing }: OutingContext): Finding[] {
  const { host, train, conditions } = outing;
  if (!conditions.night || host.lightsAtNight) return [];
  const [front, rear] = [train.vehicles[0], train.vehicles[train.vehicles.length - 1]];
  const dark = (vehicle: Vehicle, light: 'headlight' | 'taillight'): Finding => {
    const [known, head] = [vehicle[light] !== undefined, light === 'headlight'];
    return makeFinding('dark-at-night', !head ? 'limits' : known ? 'forbids' : 'unknown', 'practice', {
      where: { vehicle: vehicle.id },
      facts: { light, known },
      ...(known ? {} : { measure: light === 'headlight' ? 'vehicle.headlight' : 'vehicle.taillight' }),
      source: PRACTICE,
    });
  };
  return [
    ...(front.headlight ? [] : [dark(front, 'headlight')]),
    ...(rear.taillight ? [] : [dark(rear, 'taillight')]),
  ];
}

/**
 * A driver tries the brake of an engine before people are on the train; one who has not is held to it. Where the
 * host asks for the tried stop, or an engine is borrowed, it does not leave without one.
 */
function triedStop({ outing: { conditions, host, train } }: OutingContext): Finding[] {
  const tried = conditions.brakeTried;
  if (tried) return [];
  const borrowed = train.vehicles.some((v) => v.role === 'engine' && v.borrowed);
  const rule = host.stopTried?.value ? host.stopTried : borrowed ? { source: PRACTICE } : undefined;
  const facts = { said: tried === false };
  if (!rule)
    return [
      makeFinding('brake-not-tried', tried === false ? 'limits' : 'notes', 'practice', {
        facts,
        source: PRACTICE,
      }),
    ];
  return [
    makeFinding('brake-not-tried', tried === false ? 'forbids' : 'unknown', 'practice', {
      facts,
      source: rule.source,
      ...(tried === false ? {} : { measure: 'outing.conditions.brakeTried' }),
    }),
  ];
}
