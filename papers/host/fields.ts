/** The host's rules: each field once. Every rule has its value and the place where it is written. */
import type * as z from 'zod/mini';
import { keptApartWays } from '../../engine/outing/types.ts';
import { groundKinds, groundWords, inDateHolders, inDateKinds } from '../../engine/things/in-date.ts';
import { choice, gauge, group, head, may, must, outline, rows, speed, text, yes } from '../describe.ts';
import { figure } from '../schema/quantity.ts';
import { crewRules, people, weatherRules } from './people-fields.ts';
import { rule } from './rule.ts';

/** A limit of the host's sheet, with the band in between where it has one: slower there, refused beyond. */
const limit = (kind: 'length' | 'mass' | 'angle', low: number, high: number, label: string, help: string) =>
  may(
    group({
      least: may(figure(kind, low, high), 'least', 'Refused with less.'),
      most: may(figure(kind, low, high), 'most', 'Refused with more.'),
      slowBelow: may(figure(kind, low, high), 'slow below', 'With less it runs at the slow speed.'),
      slowAbove: may(figure(kind, low, high), 'slow above', 'With more it runs at the slow speed.'),
      slowSpeed: may(speed(), 'slow speed', 'Greatest speed of what lies between.'),
      source: must(text(), 'source', 'Where it is written: book and number.'),
    }),
    label,
    help,
  );

const standards = group({
  backToBack: limit('length', 0.03, 1, 'back to back', 'Between the backs of the wheels of one axle.'),
  backVariation: limit(
    'length',
    0,
    0.05,
    'back to back, variation',
    'Most less least of the readings round one axle.',
  ),
  wheelCheck: limit('length', 0.03, 1, 'wheel check', 'Back to back and the thicker flange.'),
  flangeThickness: limit(
    'length',
    0.0005,
    0.05,
    'flange thickness',
    'A little below the tread, new and worn.',
  ),
  flangeHeight: limit('length', 0.0005, 0.05, 'flange height', 'Below the tread, new and worn.'),
  treadHollow: limit('length', 0, 0.05, 'hollow of the tread', 'How deep it is worn, across the tread.'),
  wheelWidth: limit('length', 0.002, 0.2, 'wheel width', 'From back to outer face.'),
  flangeAngle: limit('angle', 0.5, 1.6, 'flange angle', 'Steepest part against the level.'),
  treadTaper: limit('angle', 0, 0.35, 'taper of the tread', 'Of the tread toward its outer edge.'),
  couplerHeight: limit('length', 0.01, 2, '{coupler} height', 'Above the rail, at either end, empty.'),
  couplerHeightLoaded: limit(
    'length',
    0.01,
    2,
    '{coupler} height, loaded',
    'Above the rail, at either end, as people sit today.',
  ),
  couplerSwing: limit('angle', 0, 1.5, 'swing of {coupler}s', 'How far each swings to one side.'),
  couplerHold: limit(
    'length',
    0,
    0.5,
    'hold of {coupler}s',
    'How much of their faces still holds, over every crest and sag of the line.',
  ),
  bodyWidth: limit('length', 0.05, 4, 'width', 'At its widest, people seated.'),
  bodyHeight: limit('length', 0.05, 5, 'height', 'Above the rail.'),
  vehicleLength: limit('length', 0.1, 30, 'length of a vehicle', 'Over its {coupler}s.'),
  trainLength: limit('length', 0.1, 1000, 'length of the train', 'Over its {coupler}s.'),
  axleLoad: limit('mass', 1, 20_000, 'axle load', 'Of one axle, as loaded.'),
  leastRadius: limit('length', 1, 1000, 'least radius', 'That each vehicle must run round: at most.'),
});

const count = (most: number) => figure('count', 0, most);

const inDate = group({
  what: must(choice(...inDateKinds), 'what', 'What must be in date.'),
  of: must(
    choice(...inDateHolders),
    'of',
    'Of every engine, every vehicle, whoever drives, guards or looks out, or the club once.',
  ),
  by: may(
    rows(text(), 1, 50),
    'accepted from',
    'Whose certificate counts here; anybody’s, if nothing is said.',
  ),
  source: must(text(), 'source', 'Where it is written: book and number.'),
});

const ground = group({
  what: must(choice(...groundKinds), 'what', 'First aid and fire, or storage and steaming bay.'),
  rejected: must(
    choice(...groundWords),
    'while something of it is rejected',
    'Trains hold, run within limits, or it is told and nothing else.',
  ),
  source: must(text(), 'source', 'Where it is written: book and number.'),
});

export const hostSchema = group({
  ...head('host'),
  speed: rule(speed(), 'speed', 'Greatest speed anywhere on the line.'),
  keptApart: rule(
    choice(...keptApartWays),
    'kept apart by',
    'How trains that could meet on one track are kept apart: one train on the line at a time; a staff or token for each stretch, without which no train enters; signals; the word of somebody in charge, for each train; or sight alone, which is not enough.',
    { asked: 'how trains that could meet on one track are kept apart: ask the host' },
  ),
  leastGap: rule(figure('length', 0, 10_000), 'least gap', 'Least distance to the train ahead.'),
  mostCars: rule(count(200), 'most cars', 'Most cars in a train.'),
  mostRiders: rule(count(1000), 'most riders', 'Most riders in a train.'),
  mostRidersPerCar: rule(count(200), 'most riders on a car', 'Most riders on any one car.'),
  ridersPerAxle: rule(count(50), 'riders per axle', 'Most riders for each axle of a car.'),
  chainsRequired: rule(yes(), 'chains required', 'Safety chains at every gap.'),
  chainLoad: rule(
    figure('force', 0, 500_000),
    'least working load of chains',
    'What each chain must be good for.',
  ),
  brakedShare: rule(
    figure('ratio', 0, 1),
    'least share of the weight braked',
    'Share of the cars that the driver must be able to brake.',
  ),
  guardFromCars: rule(
    count(200),
    'guard rides from this many cars',
    'With so many cars or more a guard must ride.',
  ),
  guardFromRiders: rule(
    count(1000),
    'guard rides from this many riders',
    'With so many riders or more a guard must ride.',
  ),
  lightsAtNight: rule(yes(), 'lights at night', 'Headlight and taillight after dark.'),
  gauge: rule(gauge(), 'gauge', 'Only vehicles of this gauge.'),
  seatHeight: rule(figure('length', 0.01, 3), 'seat height', 'Highest seat above the rail.'),
  leastWheelShare: rule(
    figure('ratio', 0, 1),
    'least share left on a wheel',
    'Least share of its standing load that a wheel may keep in a curve.',
  ),
  youngestRider: rule(count(99), 'youngest rider, years', 'Children younger than this do not ride.'),
  childWithAdult: rule(yes(), 'children with an adult', 'Each child on the same car as an adult.'),
  couplerTolerance: rule(
    figure('length', 0, 0.5),
    'tolerance of {coupler} heights',
    'How far two {coupler}s that meet may differ in height.',
  ),
  couplerKinds: rule(
    rows(text(), 1, 20),
    'kinds of {coupler}',
    'Which may run here, such as knuckle or link and pin.',
  ),
  flagDistance: rule(
    figure('length', 0, 10_000),
    'flag distance',
    'How far behind a stopped train the flag must stand.',
  ),
  parkingBrakeRequired: rule(
    yes(),
    'parking brake required',
    'Something that holds the standing train without air or vacuum.',
  ),
  measuredLasts: rule(
    count(36_500),
    'measured values last, days',
    'Older ones count as assumed again. No rule: they last.',
  ),
  stopMargin: rule(
    figure('length', 0, 1000),
    'stop margin',
    'Distance to spare that is added to every stop.',
  ),
  ...crewRules,
  ...weatherRules,
  ...people,
  roomBetweenTrains: rule(
    figure('length', 0, 2),
    'room between trains',
    'Least between two trains that stand or pass beside each other, play and throw taken off.',
  ),
  platformGap: rule(
    figure('length', 0, 1),
    'gap at platforms',
    'Most from the edge of a platform to what riders step on, level, wherever the train stands along it.',
  ),
  platformStep: rule(
    figure('length', 0, 1),
    'step at platforms',
    'Most up or down from a platform to what riders step on.',
  ),
  standards: may(
    standards,
    'standards',
    'What the host’s sheet asks of every visiting vehicle: wheels, {coupler}s, sizes, loads.',
  ),
  profiles: may(
    rows(
      group({
        gauge: must(gauge(), 'gauge', 'Of the vehicles that it is for.'),
        points: must(
          outline(),
          'points',
          'In order from the middle below up one side to the middle above, or all round.',
        ),
        source: must(text(), 'source', 'Where it is written: drawing and number.'),
      }),
      0,
      20,
    ),
    'profiles',
    'The outline that a vehicle must lie within on straight level track, for each gauge.',
    { asked: 'the host’s profile for vehicles of this gauge' },
  ),
  inDate: may(
    rows(inDate, 0, 100),
    'what must be in date',
    'Certificates that an outing must show; without them it cannot tell, and with one that is out it holds.',
  ),
  ground: may(
    rows(ground, 0, 20),
    'what is on the ground',
    'What trains do while first aid, fire gear or the bay is rejected. If nothing is said: with first aid or fire gear rejected riders are carried within limits, and the bay is told.',
  ),
});

export type HostFile = z.output<typeof hostSchema>;
