/** Readings of tests by spring balance, gauge and stopwatch. */
import * as z from 'zod/mini';
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { choice, group, may, must, rows, text } from '../describe.ts';
import { figure } from '../schema/quantity.ts';

const pull = group({
  force: must(figure('force', 0.5, 500_000), 'force', 'On the spring balance.'),
  way: must(
    choice('forward', 'reverse'),
    'way',
    'Drawn forward or back: both ways take out the fall of the floor.',
  ),
});
const pulls = (help: string) => must(rows(pull, 1, 100), 'pulls', help);
const mass = () =>
  may(
    figure('mass', 1, 200_000),
    'mass',
    'As it was pulled, by scales; its weight empty, if nothing is said.',
  );
const brake = () => must(choice(...brakeKinds), 'brake', 'Kind of brake.');
const gear = () => may(text(), 'gear', 'Name of the brake in the paper of the vehicle.');
const atmosphere = () =>
  may(figure('pressure', 30_000, 115_000), 'air pressure', 'By a barometer at the line.');

const gaugeReading = group({
  time: must(figure('time', 0, 86_400), 'time', 'Since it was shut off.'),
  pressure: may(figure('gaugePressure', 0, 5e6), 'pressure', 'By the gauge.'),
  vacuum: may(figure('vacuum', 0, 101_000), 'vacuum', 'By the gauge.'),
});

const tried = group({
  first: may(figure('time', 0.05, 120), 'first touch', 'From the hand on the valve until the blocks touch.'),
  full: may(figure('time', 0.05, 300), 'full', 'From the hand on the valve to full force.'),
});

export const brakeTests = [
  group({
    kind: z.literal('brake-pull'),
    gear: must(text(), 'gear', 'Name of the brake in the paper of the vehicle.'),
    mass: mass(),
    pulls: pulls('Brake full on: what draws the vehicle along slowly.'),
  }),
  group({
    kind: z.literal('starting-pull'),
    mass: mass(),
    pulls: pulls('What just starts it from rest.'),
    keeping: may(rows(pull, 1, 100), 'keeping', 'What keeps it rolling at a walk.'),
  }),
  group({
    kind: z.literal('hauling-pull'),
    mass: mass(),
    ended: must(choice('slip', 'stall'), 'ended', 'Wheels slipped, or the machine stalled.'),
    drivenMass: may(
      figure('mass', 1, 200_000),
      'driven weight',
      'What stands on its driven wheels, by scales; all of it, where all are driven.',
    ),
    boilerPressure: may(
      figure('gaugePressure', 10_000, 5e6),
      'boiler pressure',
      'By the gauge, as it pulled.',
    ),
    pulls: pulls('The engine made fast by the balance, and opened up.'),
  }),
  group({
    kind: z.literal('locked-wheels'),
    mass: mass(),
    pulls: pulls('All its wheels locked: what drags it along the rail.'),
  }),
  group({
    kind: z.literal('leak-down'),
    brake: brake(),
    gear: gear(),
    airPressure: atmosphere(),
    readings: must(rows(gaugeReading, 1, 200), 'readings', 'The gauge from time to time.'),
  }),
  group({
    kind: z.literal('apply-time'),
    brake: brake(),
    gear: gear(),
    tries: must(rows(tried, 1, 60), 'tries', 'Each at the last car.'),
  }),
  group({
    kind: z.literal('recharge'),
    brake: brake(),
    airPressure: atmosphere(),
    from: must(gaugeOf(), 'from', 'Where timing began.'),
    to: must(gaugeOf(), 'to', 'Where it ended.'),
    volume: may(figure('volume', 1e-5, 10), 'volume', 'Of pipe, reservoirs and cylinders together.'),
    times: must(rows(figure('time', 0.1, 3600), 1, 60), 'times', 'Each by stopwatch.'),
  }),
] as const;

function gaugeOf() {
  return group({
    pressure: may(figure('gaugePressure', 0, 5e6), 'pressure', 'By the gauge.'),
    vacuum: may(figure('vacuum', 0, 101_000), 'vacuum', 'By the gauge.'),
  });
}
