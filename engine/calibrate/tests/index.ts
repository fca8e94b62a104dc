/** The tests that a club can make: which there are, what each is made with, what it gives. */
import type { Around } from '../instruments.ts';
import type { Outcome } from '../result.ts';
import { type ApplyTime, applyTime, type LeakDown, leakDown, type Recharge, recharge } from './brake-air.ts';
import { type CoastDown, coastDown } from './coast-down.ts';
import {
  type Riders,
  riders,
  type SightDistance,
  type Slack,
  type Speedometer,
  type Spring,
  sightDistance,
  slack,
  speedometer,
  spring,
  type WheelDiameter,
  wheelDiameter,
} from './lengths.ts';
import {
  type BrakePull,
  brakePull,
  type HaulingPull,
  haulingPull,
  type LockedWheels,
  lockedWheels,
  type StartingPull,
  startingPull,
} from './pulls.ts';
import { type Tilt, tilt, type Weighing, type WheelBlock, weighing, wheelBlock } from './standing.ts';
import { type StopTest, stopTest } from './stop-test.ts';

export type Test =
  | CoastDown
  | StopTest
  | BrakePull
  | StartingPull
  | HaulingPull
  | LockedWheels
  | LeakDown
  | ApplyTime
  | Recharge
  | Tilt
  | WheelBlock
  | Weighing
  | Slack
  | Spring
  | WheelDiameter
  | Speedometer
  | SightDistance
  | Riders;
export type TestKind = Test['kind'];

/** Of what it tells something, by the keys of its results. */
export interface About {
  /** With a whole train on its line, with one vehicle by itself, or with neither. */
  readonly with: 'outing' | 'vehicle' | 'nothing';
  readonly gives: readonly string[];
  /** About so long, set up and cleared away, min: common practice, no source. */
  readonly minutes: number;
  /** Only when the brakes are proved, and never with riders before. */
  readonly moves: boolean;
}

export const tests: Readonly<Record<TestKind, About>> = {
  'coast-down': { with: 'outing', gives: ['rolling', 'perSpeed'], minutes: 20, moves: true },
  'curve-resistance': { with: 'outing', gives: ['curveConstant'], minutes: 30, moves: true },
  'stop-test': {
    with: 'outing',
    gives: ['force', 'deadTime', 'buildUp', 'reaction'],
    minutes: 40,
    moves: true,
  },
  'brake-pull': { with: 'vehicle', gives: ['force'], minutes: 10, moves: false },
  'starting-pull': { with: 'vehicle', gives: ['starting', 'rolling'], minutes: 10, moves: false },
  'hauling-pull': {
    with: 'vehicle',
    gives: ['drivenAdhesion', 'drawbarPull', 'meanPressureFactor'],
    minutes: 15,
    moves: false,
  },
  'locked-wheels': { with: 'vehicle', gives: ['adhesion'], minutes: 10, moves: false },
  'leak-down': { with: 'vehicle', gives: ['leak', 'halfTime'], minutes: 15, moves: false },
  'apply-time': { with: 'vehicle', gives: ['deadTime', 'buildUp'], minutes: 10, moves: false },
  recharge: { with: 'vehicle', gives: ['rechargeTime', 'supplyRate'], minutes: 10, moves: false },
  tilt: { with: 'vehicle', gives: ['centreHeight'], minutes: 20, moves: false },
  'wheel-block': { with: 'vehicle', gives: ['twistFreedom'], minutes: 10, moves: false },
  weighing: { with: 'vehicle', gives: ['tare', 'centreAt', 'centreHeight'], minutes: 20, moves: false },
  slack: { with: 'vehicle', gives: ['slack', 'chainSlack'], minutes: 5, moves: false },
  spring: { with: 'vehicle', gives: ['stiffness'], minutes: 15, moves: false },
  'wheel-diameter': { with: 'vehicle', gives: ['wheelDiameter'], minutes: 5, moves: false },
  speedometer: { with: 'nothing', gives: ['speedometerFactor'], minutes: 15, moves: true },
  sight: { with: 'nothing', gives: ['sight'], minutes: 10, moves: false },
  riders: { with: 'nothing', gives: ['riderMass'], minutes: 15, moves: false },
};

type Measurer = { readonly [K in TestKind]: (test: Extract<Test, { kind: K }>, around: Around) => Outcome };

const measurers: Measurer = {
  'coast-down': coastDown,
  'curve-resistance': coastDown,
  'stop-test': stopTest,
  'brake-pull': brakePull,
  'starting-pull': startingPull,
  'hauling-pull': haulingPull,
  'locked-wheels': lockedWheels,
  'leak-down': leakDown,
  'apply-time': applyTime,
  recharge,
  tilt,
  'wheel-block': wheelBlock,
  weighing,
  slack,
  spring,
  'wheel-diameter': wheelDiameter,
  speedometer,
  sight: sightDistance,
  riders,
};

/** What a test's readings say, or why nothing was made of them. */
export const measure = (test: Test, around: Around): Outcome =>
  (measurers[test.kind] as (test: Test, around: Around) => Outcome)(test, around);
