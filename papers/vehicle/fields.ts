/**
 * The vehicle: each field once. Positions run from its front end over the {coupler}s, across from its middle
 * with left positive, heights from the top of the rail.
 */
import * as z from 'zod/mini';
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { powers } from '../../engine/things/duty.ts';
import { postures, workedParts } from '../../engine/things/vehicle/types.ts';
import {
  choice,
  day,
  gauge,
  group,
  head,
  keptTests,
  may,
  must,
  outline,
  rows,
  speed,
  text,
  yes,
} from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';
import { brake, brakeSupply } from './brake-fields.ts';
import { coupling } from './coupling-fields.ts';
import { along, axleGroup, lowPart, wheelset } from './gear-fields.ts';

const bore = () => figure('length', 0.003, 0.6);
const across = () =>
  may(
    figure('length', -2, 2),
    'across, left is positive',
    'From the middle of the vehicle; in the middle, if nothing is said.',
  );

const steam = group({
  kind: z.literal('steam'),
  cylinders: must(figure('count', 1, 8), 'cylinders', 'How many cylinders drive the wheels.'),
  bore: must(bore(), 'bore', 'Inside diameter of a cylinder.'),
  stroke: must(figure('length', 0.005, 1), 'stroke', 'Twice the throw of the crank.'),
  wheelDiameter: must(figure('length', 0.02, 2), 'wheel diameter', 'Driving wheels, on the tread.'),
  boilerPressure: must(
    figure('gaugePressure', 10_000, 5e6),
    'boiler pressure',
    'At which the safety valves lift, by gauge.',
  ),
  meanPressureFactor: may(
    quantity('ratio', 0.05, 1),
    'mean pressure factor',
    'Mean pressure in the cylinders ÷ boiler pressure when starting.',
    { assumed: 'mean-pressure-factor' },
  ),
  power: may(quantity('power', 10, 500_000), 'power', 'What the boiler can keep up.'),
});

const drawbar = group({
  kind: z.literal('drawbar'),
  curve: must(
    rows(
      group({
        speed: must(figure('speed', 0, 30), 'speed', 'At this speed …'),
        force: must(
          figure('force', 0, 500_000),
          'force',
          '… it pulls so much, by a spring balance in the {coupler}.',
        ),
      }),
      1,
      1000,
    ),
    'curve',
    'Pull at the rail by speed; beyond the last nobody knows it, unless it is nothing there.',
  ),
  how: may(
    choice('measured', 'stated', 'assumed'),
    'how it is known',
    'Measured on the line, from a maker, or guessed.',
  ),
  source: may(text(), 'source', 'Where it is from.'),
});

const seat = group({
  name: must(text(), 'name', 'A number or letter of its own on this vehicle.'),
  at: must(along(), 'at', "Middle of the rider's seat from the front end."),
  across: across(),
  height: must(
    figure('length', 0.01, 3),
    'height',
    'Top of the cushion above the rail, with somebody on it.',
  ),
  posture: may(
    choice(...postures, 'sit-in'),
    'posture',
    'How one sits on it: on a chair, with legs forward, with knees up, astride. Not said, any of them counts.',
  ),
  facing: may(choice('forward', 'backward', 'sideways'), 'facing', 'Forward, if nothing is said.'),
  most: may(figure('mass', 5, 500), 'most weight', 'Heaviest rider that the seat is made for.'),
  driver: may(yes(), 'driver', 'The train is driven from here.'),
});

const load = group({
  name: must(text(), 'name', 'Ballast, water, coal, tools …'),
  mass: must(quantity('mass', 0, 20_000), 'mass', 'By scales.'),
  at: must(along(), 'at', 'Its middle from the front end.'),
  across: across(),
  height: must(figure('length', 0, 3), 'height', 'Its middle above the rail.'),
});

export const vehicleSchema = group({
  ...head('vehicle'),
  role: must(
    choice('engine', 'tender', 'car', 'guard'),
    'role',
    'What it does in a train; guard: a car that a guard rides on with a brake at hand.',
  ),
  gauge: must(gauge(), 'gauge', 'Of the track that it runs on.'),
  length: must(figure('length', 0.2, 30), 'length', 'Over the {coupler}s.'),
  tare: must(
    quantity('mass', 2, 100_000),
    'tare',
    'Weight in working order, without driver and riders: scales under each end, added.',
    { asked: 'what the vehicle weighs in working order: scales under each end, added' },
  ),
  centreHeight: may(
    quantity('length', 0.01, 3),
    'centre of gravity above rail',
    'Tilt it until it balances on one rail: half the track width ÷ the tangent of that angle.',
    {
      assumed: 'engine-height/centre',
      asked: 'the height of the centre of gravity: tilt the empty vehicle until it balances on one rail',
    },
  ),
  centreAt: may(
    along(),
    'centre of gravity from the front',
    'From the weights under its ends; in the middle, if nothing is said.',
  ),
  axleGroups: must(
    rows(axleGroup, 1, 12),
    'axle groups',
    '{truck}s, or axles in a rigid frame, from the front.',
  ),
  rotatingShare: may(
    quantity('ratio', 0, 2),
    'rotating share',
    'Inertia of the turning wheels as a share of the tare.',
    { assumed: 'rotating-share' },
  ),
  bearing: may(
    choice('ball', 'roller', 'plain'),
    'bearing',
    'What the axles run in; plain, if nothing is said.',
  ),
  resistance: may(
    group({
      rolling: may(
        quantity('specificForce', 1e-4, 0.2),
        'rolling',
        'Pull that keeps it moving slowly on level straight track ÷ its weight, with a spring balance; better from a coast-down.',
        { assumed: 'rolling' },
      ),
      starting: may(
        quantity('specificForce', 1e-4, 0.5),
        'starting',
        'Pull that just starts it ÷ its weight.',
        { assumed: 'starting-factor' },
      ),
      perSpeed: may(
        quantity('ratio', 0, 0.1),
        'per speed',
        'What it grows by, per weight, for each metre per second.',
      ),
      perSpeedSquared: may(
        figure('ratio', 0, 100),
        'per speed squared',
        'Air: newtons for each (metre per second)².',
      ),
    }),
    'resistance',
    'What it takes to keep it rolling.',
  ),
  brakes: may(rows(brake, 0, 20), 'brakes', 'Every brake that it has.'),
  supplies: may(
    rows(choice(...brakeKinds), 0, 8),
    'train brakes it works',
    'Engine: kinds of train brake that it can work; those of its own brakes, if nothing is said.',
  ),
  throughPipe: may(
    rows(choice(...brakeKinds), 0, 8),
    'pipes that pass through',
    'Kinds whose pipe passes through although it has no such brake.',
  ),
  brakeSupply: may(brakeSupply, 'brake supply', 'What an engine works the train brake with.'),
  traction: may(
    z.discriminatedUnion('kind', [steam, drawbar]),
    'traction',
    'What it pulls: from cylinders and boiler, or a measured pull by speed.',
    { asked: 'what the engine pulls: a spring balance in the {coupler}, at a few speeds' },
  ),
  power: may(
    choice(...powers),
    'what drives it',
    'Of an engine: steam; battery or wire; petrol or diesel. One with cylinders and a boiler is steam.',
    { asked: 'steam, electric or petrol' },
  ),
  worked: may(
    rows(
      group({
        date: must(day(), 'date', 'The day of the work.'),
        part: must(
          choice(...workedParts),
          'part',
          'Brakes; wheels with their bearings; body and what it weighs; {coupler}s; the engine.',
        ),
      }),
      0,
      500,
    ),
    'worked on',
    'Whatever may have changed it: what was measured of that part before that day counts as assumed again.',
  ),
  sander: may(
    yes(),
    'sander',
    'It throws sand under its driven wheels; an engine does, if nothing is said, on a sanded rail.',
    { assumed: 'adhesion/sanded' },
  ),
  front: may(coupling(), 'front', '{coupler} and chain at its front end.'),
  rear: may(coupling(), 'rear', '{coupler} and chain at its rear end.'),
  seats: may(rows(seat, 0, 200), 'seats', 'Every place for a person, the driver included.'),
  loads: may(rows(load, 0, 200), 'loads', 'Things carried at a fixed place that the tare does not hold.'),
  ratings: may(
    group({
      riders: may(figure('count', 0, 200), 'riders', 'Most riders that it is built for.'),
      load: may(figure('mass', 1, 50_000), 'load', 'Most weight of riders and goods.'),
      axleLoad: may(
        figure('mass', 1, 20_000),
        'most on one axle',
        'All told, by its maker or the axle itself.',
      ),
      speed: may(speed(), 'speed', 'Greatest speed that it is built for.'),
      leastRadius: may(
        figure('length', 0.5, 10_000),
        'sharpest curve it takes',
        'Least radius, from its maker or tried by hand.',
      ),
    }),
    'ratings',
    'What it is built for.',
  ),
  suspension: may(
    group({
      rollStiffness: may(
        quantity('moment', 1, 1e8),
        'roll stiffness',
        'Moment ÷ angle of lean: a known weight on one side, and a plumb line.',
      ),
      wheelStiffness: may(
        quantity('stiffness', 10, 1e9),
        'wheel stiffness',
        'Of the spring over one wheel: a known weight, and how far it sinks.',
        {
          asked:
            'how far it sinks at each end: the height of both {coupler}s empty and with every seat taken, and what those people weigh',
        },
      ),
      equalised: may(
        yes(),
        'equalised',
        'Its {truck}s have levers, or a frame that gives, so that each wheel follows a twisted track.',
        { assumed: 'equalised' },
      ),
      twistFreedom: may(
        figure('length', 0, 0.5),
        'twist freedom',
        'Lift one corner with a jack: how far, before the opposite wheel lifts.',
        { asked: 'how far one corner can be lifted before the opposite wheel lifts' },
      ),
      frameTwist: may(
        figure('length', 0, 0.5),
        'frame twist',
        'On a flat floor: how far one corner stands off it.',
      ),
    }),
    'suspension',
    'How its wheels follow the track.',
  ),
  flange: may(
    group({
      angle: may(
        figure('angle', 0.1, Math.PI / 2),
        'angle',
        'Steepest part of the flange against the level, by profile gauge and protractor.',
        { asked: 'the steepest part of the flange against the level, by profile gauge and protractor' },
      ),
      frictionHigh: may(
        figure('ratio', 0, 1),
        'highest friction of flange on rail',
        'Dry and rough; less where it is greased.',
      ),
    }),
    'flange',
    'The flanges of its wheels.',
  ),
  wheelsets: may(
    rows(wheelset, 0, 40),
    'wheelsets',
    'Its wheels by calliper, axle by axle from the front; what is not measured is left out.',
  ),
  envelope: may(
    group({
      width: must(figure('length', 0.05, 4), 'width', 'At its widest, riders included.'),
      height: must(figure('length', 0.05, 5), 'height', 'Above the rail at its highest.'),
      underside: may(
        figure('length', 0, 3),
        'underside',
        'Lowest part, above the rail, of whatever is wider than the track, feet and steps included: what is lower than that passes under it.',
      ),
    }),
    'envelope',
    'The space that it takes.',
    { asked: 'its width at the widest with people seated, and its height, with a rule held level and plumb' },
  ),
  step: may(
    group({
      height: must(figure('length', 0, 3), 'height', 'Above the rail, empty.'),
      width: must(figure('length', 0.05, 4), 'width', 'Over both sides, where the feet stand.'),
    }),
    'step',
    'What riders step on as they get on: foot board or floor. Held against platforms.',
    {
      asked:
        'the foot board or floor that riders step on: its height above the rail, and its width over both sides',
    },
  ),
  section: may(
    outline(),
    'outline',
    'Seen from the front, knees, elbows and feet of seated people included, heads not: the farthest that it reaches at each height, in order from the middle below up one side to the middle above, or all round.',
    {
      asked:
        'its outline from the front, knees, elbows and feet of seated people included: from a plumb line beside it, level to its side at each height where it changes',
    },
  ),
  lowParts: may(
    rows(lowPart, 0, 100),
    'low parts',
    'What hangs low between the rails or over them, the lowest under the middle and under each end: what a crest or a sag comes up to.',
    {
      asked:
        'how high the lowest parts hang above the rail, in the middle between the wheels and under both ends, by rule from a straight edge laid across both rails',
    },
  ),
  headlight: may(yes(), 'headlight', 'It has one that shows ahead.', {
    asked: 'whether it has a light that shows ahead',
  }),
  taillight: may(yes(), 'taillight', 'It has one that shows behind.', {
    asked: 'whether it has a light that shows behind',
  }),
  tests: keptTests(),
});

export type VehicleFile = z.output<typeof vehicleSchema>;
