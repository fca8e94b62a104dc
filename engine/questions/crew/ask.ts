/**
 * Is whoever works the train rested, fit, old enough, and where the host wants somebody? What each may do is asked
 * with what must be in date. Of hours nothing is reckoned: they stand in the outing as they will be when it is over.
 */
import { amount } from '../../base/quantity.ts';
import type { Outing } from '../../outing/types.ts';
import { gearStates } from '../../things/brake/system.ts';
import type { Duty } from '../../things/duty.ts';
import { driverReach } from '../../things/train/crew.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { agesOf } from '../practice/people.ts';
import { type AtWork, atWork, measureOf, whereOf } from './at-work.ts';
import { askHours } from './hours.ts';

export const askCrew = (outing: Outing): Finding[] => [
  ...oncePerPerson(atWork(outing)).flatMap((worker) => [
    ...askHours(outing, worker),
    ...declared(outing, worker),
  ]),
  ...atWork(outing).flatMap((worker) => [...oldEnough(outing, worker), ...beside(outing, worker)]),
  ...lookouts(outing),
  ...signals(outing),
  ...betweenDrivers(outing),
];

/** Whoever has two duties is as tired in both. */
const oncePerPerson = (all: readonly AtWork[]): AtWork[] =>
  all.filter(({ id }, i) => all.findIndex((other) => other.id === id) === i);

function declared({ host }: Outing, worker: AtWork): Finding[] {
  const { name: who, said } = worker;
  const asked = [
    { says: 'sober', rule: host.soberDeclared },
    { says: 'fit', rule: host.fitDeclared },
  ] as const;
  return asked.flatMap(({ says, rule }): Finding[] => {
    if (!rule?.value || said?.[says] === true) return [];
    const details = { where: whereOf(worker), facts: { who, says }, source: rule.source };
    return said?.[says] === false
      ? [makeFinding('not-fit-to-work', 'forbids', 'host', details)]
      : [
          makeFinding('not-declared', 'unknown', 'host', {
            ...details,
            measure: measureOf(worker, says),
          }),
        ];
  });
}

const youngest = { driver: 'youngestDriver', guard: 'youngestGuard', lookout: 'youngestLookout' } as const;

function oldEnough({ host }: Outing, worker: AtWork): Finding[] {
  const { name: who, duty, age } = worker;
  const rule = host[youngest[duty]];
  if (!rule || (age !== undefined && age >= rule.value)) return [];
  if (age === undefined) return [ageNotSaid(worker, duty, rule.source)];
  return [
    makeFinding('crew-too-young', 'forbids', 'host', {
      where: whereOf(worker),
      facts: { who, duty, age },
      source: rule.source,
      required: { si: rule.value, kind: 'count' },
    }),
  ];
}

const ageNotSaid = (worker: AtWork, duty: Duty, source: string): Finding =>
  makeFinding('crew-age-not-said', 'unknown', 'host', {
    where: whereOf(worker),
    facts: { who: worker.name, duty },
    measure: worker.rider ? 'riders.age' : measureOf(worker, 'age'),
    source,
  });

/** Whoever is too young to drive alone has a grown person within an arm's reach: on the engine or its tender. */
function beside(outing: Outing, worker: AtWork): Finding[] {
  const { drivesAlone: rule } = outing.host;
  const { name: who, duty, age, rider } = worker;
  if (!rule || duty !== 'driver' || !rider || (age !== undefined && age >= rule.value)) return [];
  const { vehicles } = outing.train;
  const reach = driverReach({ train: outing.train, riders: [rider] });
  const { isAdult } = agesOf(outing);
  const grown = outing.riders.some(
    (other) =>
      other.id !== rider.id &&
      isAdult(other) &&
      (other.age === undefined || other.age >= rule.value) &&
      reach.has(vehicles.findIndex(({ id }) => id === other.vehicle)),
  );
  if (grown) return [];
  return age === undefined
    ? [ageNotSaid(worker, duty, rule.source)]
    : [
        makeFinding('nobody-beside', 'forbids', 'host', {
          where: whereOf(worker),
          facts: { who, age },
          required: { si: rule.value, kind: 'count' },
          source: rule.source,
        }),
      ];
}

function lookouts({ host, crew = [] }: Outing): Finding[] {
  const without = (host.lookouts ?? []).filter(({ at }) => !crew.some(({ looksOutAt }) => looksOutAt === at));
  if (without.length === 0) return [];
  return [
    makeFinding('no-lookout', 'unknown', 'host', {
      facts: { posts: without.map(({ at }) => at).join(', ') },
      measure: 'outing.crew',
      source: without[0].source,
    }),
  ];
}

/** Where a guard rides: what a bell or a whistle means must be one thing to both. */
function signals({ host, riders, signals: said }: Outing): Finding[] {
  const rule = host.guardSignals;
  const guarded = riders.some(({ duty }) => duty === 'guard');
  if (!rule?.value || !guarded || said !== undefined || (host.signals ?? []).length > 0) return [];
  return [
    makeFinding('signals-not-said', 'unknown', 'host', { measure: 'outing.signals', source: rule.source }),
  ];
}

/** Where one driver's brakes wait for another's signal: noted, as the wait is reckoned with whatever the signal is. */
function betweenDrivers(outing: Outing): Finding[] {
  const { host, signals: said } = outing;
  const waiting = gearStates(outing).filter(({ signalled }) => signalled);
  if (waiting.length === 0 || said !== undefined || (host.signals ?? []).length > 0) return [];
  const { anotherDriver } = outing.assumed;
  return [
    makeFinding('drivers-signals-not-said', 'notes', 'practice', {
      where: { vehicle: outing.train.vehicles[waiting[0].vehicle].id },
      facts: {
        least: amount(anotherDriver.low, 'time'),
        most: amount(anotherDriver.high, 'time'),
      },
      measure: 'outing.signals',
      source: anotherDriver.source ?? 'common practice, no source',
      sure: 'assumed',
    }),
  ];
}
