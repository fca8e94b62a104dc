/** Each rule of the host on both sides of its bound: what it finds, where, how badly, and whose rule it is. */
import { describe, expect, it } from 'vitest';
import type { HostRules } from '../../../engine/outing/types.ts';
import { altered, hostSays, party, plain, rider, rule, withHost } from '../../support/rules.ts';

const count = (si: number) => ({ si, kind: 'count' });
const length = (si: number) => ({ si, kind: 'length' });
const source = 'rule book, p. 3';
/** What every finding of a broken rule says. */
const broken = (code: string, more: object) => ({
  code,
  severity: 'forbids',
  question: 'host',
  source,
  ...more,
});

describe('a host without rules', () => {
  it('forbids nothing to a train of the line’s gauge', () => expect(hostSays(plain(4))).toEqual([]));
});

describe('gauge', () => {
  const odd = (by: number) => altered(plain(2), 1, { gauge: 0.184 + by });

  it.each([0.0009, -0.0009])('a vehicle %d m off runs', (by) => expect(hostSays(odd(by))).toEqual([]));

  it.each([0.00105, -0.00105, 0.006])('a vehicle %d m off does not', (by) => {
    const found = hostSays(odd(by));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      ...broken('gauge-differs', { found: length(0.184 + by), required: length(0.184) }),
      where: { vehicle: 'car1' },
      source: 'random',
    });
    expect(found[0].margin).toBeCloseTo(-Math.abs(by) / 0.184, 9);
  });

  it('the host’s own gauge counts too, and is named', () => {
    const found = hostSays(withHost(1, { gauge: rule(0.19) }));
    expect(found).toHaveLength(2);
    expect(found[1]).toMatchObject(
      broken('gauge-differs', { where: { vehicle: 'car1' }, found: length(0.184), required: length(0.19) }),
    );
  });

  it('the host’s gauge binds as closely', () => {
    expect(hostSays(withHost(0, { gauge: rule(0.18495) }))).toEqual([]);
    expect(hostSays(withHost(0, { gauge: rule(0.18505) }))).toHaveLength(1);
  });

  it('a vehicle of the host’s gauge on a line of another does not run', () => {
    const o = withHost(1, { gauge: rule(0.19) });
    const found = hostSays(altered(o, 1, { gauge: 0.19 }));
    expect(found.map((f) => f.where.vehicle)).toEqual(['engine', 'car1']);
    const near = altered(withHost(0, { gauge: rule(0.18505) }), 0, { gauge: 0.18505 });
    expect(hostSays(near)).toHaveLength(1);
  });
});

describe('numbers', () => {
  it.each([
    ['too-many-cars', 'mostCars', 3, plain(3)],
    ['too-many-riders', 'mostRiders', 4, plain(2, { riders: party(4) })],
  ] as const)('%s: as many as the rule allows run, one more does not', (code, name, n, outing) => {
    const at = (most: number) => hostSays({ ...outing, host: { name: 'made up', [name]: rule(most) } });
    expect(at(n)).toEqual([]);
    expect(at(n + 1)).toEqual([]);
    const [only, ...none] = at(n - 1);
    expect(none).toEqual([]);
    expect(only).toMatchObject(broken(code, { where: {}, found: count(n), required: count(n - 1) }));
    expect(only.where).toStrictEqual({});
    expect(only.margin).toBeCloseTo(-1 / (n - 1), 12);
  });

  it('a rule of none at all is as broken as can be', () => {
    expect(hostSays(withHost(2, { mostCars: rule(0) }))[0].margin).toBe(-1);
    expect(hostSays(withHost(4, { mostCars: rule(1) }))[0].margin).toBe(-3);
  });

  it('the engine is no car, a guard’s car is one', () => {
    expect(hostSays(withHost(2, { mostCars: rule(2) }))).toEqual([]);
    const o = altered(withHost(2, { mostCars: rule(1) }), 2, { role: 'guard' });
    expect(hostSays(o)[0].found).toEqual(count(2));
  });

  it('driver and guard are no riders', () => {
    const crew = [
      rider('d', 'driver', { vehicle: 'engine', duty: 'driver' }),
      rider('g', '4', { duty: 'guard' }),
    ];
    expect(hostSays(withHost(1, { mostRiders: rule(2) }, { riders: [...party(2), ...crew] }))).toEqual([]);
  });
});

describe('a guard', () => {
  const guard = rider('g', '4', { duty: 'guard' });
  const cases = [
    ['guardFromCars', 'cars', 3, plain(3)],
    ['guardFromRiders', 'riders', 3, plain(1, { riders: party(3) })],
  ] as const;

  it.each(cases)('%s: is asked for from that many on', (name, of, n, outing) => {
    const at = (from: number, more = outing.riders) =>
      hostSays({ ...outing, riders: more, host: { name: 'made up', [name]: rule(from) } });
    expect(at(n + 1)).toEqual([]);
    const found = at(n);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      broken('guard-missing', { where: {}, found: count(n), required: count(n), facts: { of } }),
    );
    expect(at(n - 1)).toHaveLength(1);
    expect(at(n, [...outing.riders, guard])).toEqual([]);
  });
});

describe('age', () => {
  const aged = (age: number | undefined, more = {}) =>
    hostSays(
      withHost(
        1,
        { youngestRider: rule(5) },
        { riders: [rider('a', '1', { ...(age === undefined ? {} : { age }), ...more })] },
      ),
    );

  it('a rider of the youngest age rides', () => expect(aged(5)).toEqual([]));
  it('a younger one does not', () => {
    expect(aged(4)).toHaveLength(1);
    expect(aged(4)[0]).toMatchObject(
      broken('rider-too-young', {
        where: { vehicle: 'car1' },
        found: count(4),
        required: count(5),
        facts: { rider: 'rider a' },
      }),
    );
  });
  it('waiting for a seat does not help', () => {
    const [found] = aged(3, { vehicle: undefined });
    expect(found.code).toBe('rider-too-young');
    expect(found.where).toStrictEqual({});
  });
  it('is the riders’ rule, not the crew’s', () => expect(aged(4, { duty: 'guard' })).toEqual([]));
  it('without the rule nobody is too young', () =>
    expect(hostSays(plain(1, { riders: [rider('a', '1', { age: 1 })] }))).toEqual([]));
});

describe('share of cars braked by the driver', () => {
  const train = (cars: number, unbraked: number, share: number) => {
    let o = withHost(cars, { brakedShare: rule(share) });
    for (let i = 0; i < unbraked; i++) o = altered(o, cars - i, { brakes: [] });
    return hostSays(o);
  };

  it('just enough is enough', () => {
    expect(train(4, 2, 0.5)).toEqual([]);
    expect(train(3, 1, 2 / 3 + 5e-10)).toEqual([]);
  });

  it('one too few is not', () => {
    const found = train(4, 3, 0.5);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(
      broken('too-few-cars-braked', {
        where: {},
        found: { si: 0.25, kind: 'ratio' },
        required: { si: 0.5, kind: 'ratio' },
        facts: { braked: 1, cars: 4 },
        margin: -0.5,
      }),
    );
  });

  it('a brake that the driver does not work counts for nothing', () => {
    const o = withHost(2, { brakedShare: rule(1) });
    const [gear] = o.train.vehicles[1].brakes;
    const found = hostSays(altered(o, 1, { brakes: [{ ...gear, workedBy: 'guard' }] }));
    expect(found[0].facts).toEqual({ braked: 1, cars: 2 });
  });

  it('an engine alone has no cars to brake', () => expect(train(0, 0, 1)).toEqual([]));
});

describe('chains', () => {
  const needed = { chainsRequired: rule(true) };

  it('at every gap, fastened, are enough', () => expect(hostSays(withHost(3, needed))).toEqual([]));

  it('left unfastened they are missing everywhere', () => {
    const o = withHost(3, needed);
    const found = hostSays({ ...o, train: { ...o.train, chainsFastened: false } });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(broken('chains-missing', {}));
    expect(found[0].where).toEqual({});
  });

  it('hung at every gap and nobody said whether they are fastened: go and look', () => {
    const o = withHost(3, needed);
    const { chainsFastened: _, ...train } = o.train;
    const [found, ...others] = hostSays({ ...o, train });
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      code: 'chains-missing',
      severity: 'unknown',
      measure: 'train.chainsFastened',
    });
    expect(found.where).toEqual({});
    const bare = altered(altered({ ...o, train }, 1, { rear: { type: 'link' } }), 2, {
      front: { type: 'link' },
    });
    expect(hostSays(bare)).toMatchObject([{ severity: 'forbids', where: { gap: 1 } }]);
    expect(hostSays(bare)[0].measure).toBeUndefined();
  });

  const none = { type: 'link' };
  it('the first gap without one is named; one of its two sides is enough', () => {
    const bare = altered(altered(withHost(3, needed), 1, { rear: none }), 2, { front: none });
    expect(hostSays(bare).map((f) => f.where)).toEqual([{ gap: 1, vehicle: 'car1' }]);
    expect(hostSays(altered(withHost(3, needed), 1, { rear: none }))).toEqual([]);
    expect(hostSays(altered(withHost(3, needed), 2, { front: none }))).toEqual([]);
  });

  it('at the very first gap too', () => {
    const bare = altered(altered(withHost(1, needed), 0, { rear: none }), 1, { front: none });
    expect(hostSays(bare).map((f) => f.where)).toEqual([{ gap: 0, vehicle: 'engine' }]);
  });

  it.each([{ chainsRequired: rule(false) }, {}])('are not asked for by %j', (host: Partial<HostRules>) => {
    const o = withHost(2, host);
    expect(hostSays({ ...o, train: { ...o.train, chainsFastened: false } })).toEqual([]);
  });

  it('an engine alone needs none', () => {
    const o = withHost(0, needed);
    expect(hostSays({ ...o, train: { ...o.train, chainsFastened: false } })).toEqual([]);
  });
});

describe('lights', () => {
  const at = (night: boolean, front: boolean, rear: boolean, wanted = true) => {
    const base = withHost(2, { lightsAtNight: rule(wanted) });
    const o = { ...base, conditions: { ...base.conditions, night } };
    return hostSays(altered(altered(o, 0, { headlight: front }), 2, { taillight: rear }));
  };
  const missing = (vehicle: string, light: string) =>
    broken('lights-missing', { where: { vehicle }, facts: { light } });

  it('head and tail by night', () => expect(at(true, true, true)).toEqual([]));
  it('no headlight', () => {
    expect(at(true, false, true)).toHaveLength(1);
    expect(at(true, false, true)[0]).toMatchObject(missing('engine', 'headlight'));
  });
  it('no taillight', () => {
    expect(at(true, true, false)).toHaveLength(1);
    expect(at(true, true, false)[0]).toMatchObject(missing('car2', 'taillight'));
  });
  it('neither', () => expect(at(true, false, false)).toHaveLength(2));
  it('by day none', () => expect(at(false, false, false)).toEqual([]));
  it('where not asked for none', () => expect(at(true, false, false, false)).toEqual([]));
  it('without the rule none', () => {
    const base = plain(1);
    expect(hostSays({ ...base, conditions: { ...base.conditions, night: true } })).toEqual([]);
  });
});

describe('riders on one car', () => {
  const on = (n: number, host: Partial<HostRules>, more = {}) =>
    hostSays(withHost(2, host, { riders: party(n, more) }));

  it('as many as the rule allows ride, one more does not', () => {
    expect(on(3, { mostRidersPerCar: rule(3) })).toEqual([]);
    const [found, ...none] = on(4, { mostRidersPerCar: rule(3) });
    expect(none).toEqual([]);
    expect(found).toMatchObject(
      broken('too-many-riders-on-car', { where: { vehicle: 'car1' }, found: count(4), required: count(3) }),
    );
    expect(found.margin).toBeCloseTo(-1 / 3, 12);
  });

  // Two trucks of two axles: four axles.
  it('adults by axle: as many as its axles carry ride, one more does not', () => {
    expect(on(2, { ridersPerAxle: rule(0.5) })).toEqual([]);
    const [found, ...none] = on(3, { ridersPerAxle: rule(0.5) });
    expect(none).toEqual([]);
    expect(found).toMatchObject(
      broken('too-many-riders-per-axle', { where: { vehicle: 'car1' }, found: count(3), required: count(2) }),
    );
    expect(found.margin).toBeCloseTo(-0.5, 12);
  });

  it('children and crew do not count by axle, crew not by car', () => {
    expect(on(3, { ridersPerAxle: rule(0.5) }, { ageGroup: 'child' })).toEqual([]);
    expect(on(3, { ridersPerAxle: rule(0.5) }, { duty: 'guard' })).toEqual([]);
    expect(on(4, { mostRidersPerCar: rule(3) }, { duty: 'guard' })).toEqual([]);
  });
});

describe('height of seats', () => {
  const high = (height: number) => {
    const o = withHost(1, { seatHeight: rule(0.45) });
    const [first, second, ...rest] = o.train.vehicles[1].seats;
    return hostSays(altered(o, 1, { seats: [first, { ...second, height }, ...rest] }));
  };

  it('a seat as high as allowed may be sat on', () => expect(high(0.45 + 5e-7)).toEqual([]));
  it('a higher one may not', () => {
    expect(high(0.46)).toHaveLength(1);
    expect(high(0.46)[0]).toMatchObject(
      broken('seat-too-high', { where: { vehicle: 'car1' }, found: length(0.46), required: length(0.45) }),
    );
    expect(high(0.46)[0].margin).toBeCloseTo(-0.01 / 0.45, 9);
    expect(high(0.45001)).toHaveLength(1);
  });
});
