/** Readings of tests of a vehicle at a stand, of small lengths, of sight and of riders. */
import * as z from 'zod/mini';
import { chainage, choice, group, may, must, rows, text, yes } from '../describe.ts';
import { figure } from '../schema/quantity.ts';

const small = () => figure('length', 0.0001, 2);
const loads = () => rows(figure('mass', 0.5, 100_000), 1, 12);

export const standTests = [
  group({
    kind: z.literal('tilt'),
    contactWidth: must(
      figure('length', 0.05, 1.2),
      'contact width',
      'Across the track between the points where its wheels bear.',
    ),
    stopHeight: must(figure('length', 0, 1), 'stop', 'Height of the stop that its low side rests against.'),
    rimHeight: must(
      figure('length', 0.005, 1),
      'rim',
      'Height of its wheel rims there: a stop above two thirds of it would hold the vehicle up.',
    ),
    tilts: must(
      rows(
        group({
          side: must(choice('left', 'right'), 'side', 'Towards which it would fall.'),
          angle: must(figure('angle', -Math.PI, Math.PI), 'angle', 'At which the upper wheels lift.'),
        }),
        1,
        60,
      ),
      'tilts',
      'Each; to both sides. Never with anybody on it.',
    ),
  }),
  group({
    kind: z.literal('wheel-block'),
    blocks: must(
      rows(
        group({
          height: must(figure('length', 0.0001, 0.2), 'height', 'Of the block under one wheel.'),
          lifts: must(yes(), 'lifts', 'Another wheel lifts from the rail.'),
        }),
        1,
        60,
      ),
      'blocks',
      'Thicker and thicker, until one lifts.',
    ),
  }),
  group({
    kind: z.literal('weighing'),
    level: must(
      rows(group({ loads: must(loads(), 'loads', 'Under each group of axles, the front first.') }), 1, 20),
      'level',
      'Each weighing with all wheels level.',
    ),
    raised: may(
      rows(
        group({
          by: must(
            figure('length', 0.005, 1),
            'raised by',
            'How much higher the front group of axles stands.',
          ),
          loads: must(loads(), 'loads', 'Under each group, the front first; free to roll.'),
        }),
        1,
        20,
      ),
      'raised',
      'Each weighing with the front raised: gives the height of the centre.',
    ),
  }),
  group({
    kind: z.literal('slack'),
    of: must(
      choice('front', 'rear', 'front.chain', 'rear.chain'),
      'of',
      'Which end; its {coupler} or its chain.',
    ),
    lengths: must(rows(small(), 1, 60), 'lengths', 'Free movement, each time anew.'),
  }),
  group({
    kind: z.literal('spring'),
    of: must(choice('wheel', 'front', 'rear'), 'of', 'Spring over a wheel, or of the {coupler} at one end.'),
    springs: must(figure('count', 1, 32), 'springs', 'How many share the load.'),
    loads: must(
      rows(
        group({
          load: must(figure('force', 0, 200_000), 'load', 'On them together.'),
          height: must(figure('length', -1, 3), 'height', 'Where its end stands then.'),
        }),
        1,
        60,
      ),
      'loads',
      'From light to heavy and back.',
    ),
  }),
  group({
    kind: z.literal('wheel-diameter'),
    rolls: must(
      rows(
        group({
          turns: must(figure('count', 1, 1000), 'turns', 'Whole turns.'),
          distance: must(figure('length', 0.05, 5000), 'distance', 'Along the rail.'),
        }),
        1,
        60,
      ),
      'rolls',
      'Each roll.',
    ),
  }),
  group({
    kind: z.literal('sight'),
    at: must(chainage(), 'at', 'What was looked at: distance along the line.'),
    place: may(text(), 'place', 'Name of what was looked at, where several stand there.'),
    way: may(choice('forward', 'reverse'), 'way', 'Riding which way; forward, if nothing is said.'),
    distances: must(
      rows(figure('length', 0.5, 10_000), 1, 60),
      'distances',
      'How far before it one first sees it, sitting as one drives; each by another person or day.',
    ),
    paced: may(
      group({
        steps: must(figure('count', 1, 10_000), 'steps', 'Over the length.'),
        length: must(figure('length', 0.5, 10_000), 'length', 'Taped.'),
      }),
      'paced',
      'Where the distances are steps: how long one is.',
    ),
  }),
  group({
    kind: z.literal('riders'),
    who: must(choice('man', 'woman', 'adult', 'youth', 'child'), 'who', 'Whom: one sort in one test.'),
    masses: must(
      rows(figure('mass', 2, 300), 1, 2000),
      'weights',
      'As dressed for the ride, bags included, without names.',
    ),
  }),
] as const;
