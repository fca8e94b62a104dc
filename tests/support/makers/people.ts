/** Outings that make findings of who rides and works, and what the host asks of them. */
import { exact } from '../../../engine/base/quantity.ts';
import type { HostRules, Outing } from '../../../engine/outing/types.ts';
import type { CrewMember } from '../../../engine/things/duty.ts';
import type { Shown } from '../../../engine/things/in-date.ts';
import { party, plain, rider, rule, withHost } from '../rules.ts';
import type { Makers } from './index.ts';
import { braked, host, one } from './shared.ts';

/** The host asks for the boiler's test; what is shown of it. */
const asksForBoiler = (...states: readonly Shown['state'][]): Outing => {
  const inDate = [{ what: 'boiler-hydraulic-test', of: 'engine', source: 'rule book, p. 4' }] as const;
  const outing = host({ inDate });
  const of = outing.train.vehicles[0].name;
  return { ...outing, shown: states.map((state) => ({ what: 'boiler-hydraulic-test', of, state })) };
};
/** A driver and a guard at work by rules of every kind, and what is said of the driver and of the day. */
const atWork = (
  said: Partial<CrewMember>,
  sky: Partial<Outing['conditions']>,
  more: Partial<Outing>,
): Outing => {
  const book = { source: 'rule book, p. 4' };
  const rules: Partial<HostRules> = {
    inDate: [{ what: 'driver-competence', of: 'driver', ...book }],
    mostOnDuty: rule(43_200),
    fitDeclared: rule(true),
    youngestDriver: rule(16),
    drivesAlone: rule(18),
    lookouts: [{ at: 'the crossing', ...book }],
    guardSignals: rule(true),
    lightningStops: rule(true),
    mostWind: rule(10),
    mostHeat: rule(308),
    runsAtNight: rule(false),
  };
  const [d, g] = [rider('d', '1', { duty: 'driver' }), rider('g', '2', { duty: 'guard', vehicle: 'car2' })];
  const crew = [{ id: 'd', name: d.name, mass: exact(70), ...said }];
  const of = withHost(2, rules, { riders: [d, g], crew, ...more });
  return { ...of, conditions: { ...of.conditions, ...sky } };
};

export const people: Makers = {
  'out-of-date': () => asksForBoiler('out'),
  'not-shown': () => asksForBoiler(),
  'in-grace': () => asksForBoiler('grace'),
  'defect-open': () => {
    const of = plain(2).train.vehicles[0].name;
    return plain(2, { defects: [{ of, what: 'cracked tire', rejects: true, since: '2026-05-30' }] });
  },
  'ground-amiss': () => {
    const of = 'first aid and fire';
    const box = {
      of,
      ground: 'first-aid-and-fire',
      what: 'box empty',
      rejects: true,
      since: '2026-05-30',
    } as const;
    return plain(2, { defects: [box] });
  },
  // And with it all else of the people and of the day that nobody said.
  'hours-not-said': () => atWork({}, {}, {}),
  // And with it all else that is amiss with them.
  'out-of-hours': () => {
    const signedFor = { line: 'Elsewhere' };
    const shown = [{ what: 'driver-competence', of: 'rider d', state: 'stands', signedFor }] as const;
    const sky = { lightning: true, wind: 11, temperature: 309, night: true };
    return atWork({ hours: { onDuty: 43_260 }, fit: false, age: 15 }, sky, { shown });
  },
  'too-many-riders': () => host({ mostRiders: rule(1) }),
  'too-many-riders-on-car': () => host({ mostRidersPerCar: rule(1) }),
  'too-many-riders-per-axle': () => host({ ridersPerAxle: rule(0.25) }),
  'guard-missing': () => host({ guardFromCars: rule(2) }),
  'lights-missing': () => {
    const outing = host({ lightsAtNight: rule(true), guardAtNight: rule(true) });
    return { ...outing, conditions: { ...outing.conditions, night: true } };
  },
  'seat-too-high': () => host({ seatHeight: rule(0.2) }),
  'rider-too-young': () => withHost(2, { youngestRider: rule(5) }, { riders: [rider('a', '1', { age: 4 })] }),
  'child-alone': () => plain(2, { riders: [rider('a', '1', { age: 5 })] }),
  'infant-aboard': () => plain(2, { riders: [rider('a', '1', { age: 0.5 }), rider('b', '2')] }),
  'more-people-than-seats': () => plain(2, { riders: [...party(4), ...one] }),
  'seat-shared': () => plain(2, { riders: [...party(2), ...one] }),
  'night-sight-unknown': () => {
    const outing = plain(2);
    return { ...outing, conditions: { ...outing.conditions, night: true } };
  },
  'dark-at-night': () => {
    const outing = plain(2);
    return { ...outing, conditions: { ...outing.conditions, night: true } };
  },
  'rider-not-seated': () => {
    const { seat: _, ...waiting } = rider('a', '1');
    return plain(2, { riders: [waiting] });
  },
  'driver-missing': () => plain(2),
  'propelled-without-lookout': () => {
    const outing = plain(2);
    return { ...outing, train: { ...outing.train, vehicles: [...outing.train.vehicles].reverse() } };
  },
  // A pilot engine without a supply: the brake is the second driver's.
  'drivers-signals-not-said': () => {
    const outing = braked('straight-air', 2);
    const [engine, ...cars] = outing.train.vehicles;
    const pilot = { ...engine, id: 'pilot', name: 'Pilot', supplies: [] };
    const drives = (vehicle: string) => rider(vehicle, 'driver', { vehicle, duty: 'driver' });
    return {
      ...outing,
      train: { ...outing.train, vehicles: [pilot, engine, ...cars] },
      riders: [drives(pilot.id), drives(engine.id)],
    };
  },
  'head-unmanned': () => plain(2, { riders: [rider('d', '1', { duty: 'driver' })] }),
};
