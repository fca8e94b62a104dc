/** Readings of tests in which a train moves. */
import * as z from 'zod/mini';
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { railStates } from '../../engine/things/rail.ts';
import { chainage, choice, group, may, must, rows } from '../describe.ts';
import { figure } from '../schema/quantity.ts';

const way = () => must(choice('forward', 'reverse'), 'way', 'Forward: as the distances of the line grow.');
const runSpeed = () => figure('speed', 0, 20);

const pass = group({
  at: must(chainage(), 'at', 'Mark that the front of the train passes: distance along the line.'),
  time: may(figure('time', 0, 3600), 'time', 'By stopwatch, since it was let go or passed the first mark.'),
  speed: may(runSpeed(), 'speed', 'As it passes, where something shows it.'),
});

const rest = group({
  at: must(chainage(), 'at', 'Where its front came to rest.'),
  time: may(figure('time', 0, 3600), 'time', 'When.'),
});

const coast = group({
  way: way(),
  from: must(chainage(), 'from', 'Where its front was let go, or the first mark.'),
  speed: may(
    runSpeed(),
    'speed',
    'There; nothing if it was let go from rest; left out where nobody read it.',
  ),
  passes: may(rows(pass, 0, 200), 'marks', 'Each mark in the order passed.'),
  rest: may(rest, 'rest', 'Where it came to rest, if it did.'),
});

const coasts = () =>
  must(
    rows(coast, 1, 60),
    'runs',
    'Each run; the same ground both ways tells the grade from the resistance.',
  );

const stop = group({
  way: way(),
  from: must(chainage(), 'from', 'Mark where the brake was put on, or where the signal was given.'),
  speed: must(figure('speed', 0.1, 20), 'speed', 'Speed at the mark.'),
  restAt: must(chainage(), 'rest at', 'Where its front came to rest.'),
  time: may(figure('time', 0.1, 600), 'time', 'From the mark to rest, by stopwatch.'),
});

export const runTests = [
  group({ kind: z.literal('coast-down'), runs: coasts() }),
  group({ kind: z.literal('curve-resistance'), runs: coasts() }),
  group({
    kind: z.literal('stop-test'),
    begins: may(
      choice('action', 'signal'),
      'begins',
      "At the mark the driver acts; or somebody gives a signal there, and the driver's reaction is part of the stop. Acts, if nothing is said.",
    ),
    rail: must(
      choice(...railStates),
      'rail',
      'The rail as it was: dry stops and wet ones are tests of their own.',
    ),
    brakes: may(
      rows(choice(...brakeKinds), 1, 8),
      'brakes',
      'Kinds of brake that were put on, one at a time where there are several; all, if nothing is said.',
    ),
    stops: must(rows(stop, 1, 200), 'stops', 'Each stop; over several speeds, both ways.'),
  }),
  group({
    kind: z.literal('speedometer'),
    runs: must(
      rows(
        group({
          length: must(figure('length', 1, 10_000), 'length', 'Known length, by tape.'),
          time: must(figure('time', 0.5, 36_000), 'time', 'Over it.'),
          shown: must(figure('speed', 0.1, 30), 'shown', 'What it showed all the way.'),
        }),
        1,
        60,
      ),
      'runs',
      'At an even speed each.',
    ),
  }),
] as const;
