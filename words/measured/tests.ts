/** What tests, their results and what makes them unsure are called. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';

/** `{…}`: words that differ across the Atlantic. */
export const testNames: Readonly<Record<TestKind, string>> = {
  'coast-down': 'coast-down',
  'curve-resistance': 'coast through a curve',
  'stop-test': 'stop test',
  'brake-pull': 'pull against the brake',
  'starting-pull': 'pull that starts a car',
  'hauling-pull': 'pull at the drawbar',
  'locked-wheels': 'drag with locked wheels',
  'leak-down': 'leak-down',
  'apply-time': 'time to apply at the last car',
  recharge: 'recharge',
  tilt: 'tilt',
  'wheel-block': 'block under one wheel',
  weighing: 'weighing',
  slack: 'slack',
  spring: 'spring under load',
  'wheel-diameter': 'wheel rolled along the rail',
  speedometer: 'speedometer over a known length',
  sight: 'sight along the line',
  riders: 'riders on the scales',
};

const results: Readonly<Record<string, string>> = {
  rolling: 'rolling resistance',
  perSpeed: 'rolling resistance, more for each metre per second',
  curveConstant: 'curve drag, times the radius',
  force: 'full retarding force',
  deadTime: 'dead time',
  buildUp: 'build-up',
  reaction: "driver's reaction",
  starting: 'starting resistance',
  drivenAdhesion: 'adhesion under the driven wheels',
  drawbarPull: 'pull at the drawbar',
  meanPressureFactor: 'mean ÷ boiler pressure',
  adhesion: 'adhesion of locked wheels',
  leak: 'leak in the first minute',
  halfTime: 'time until half is gone',
  rechargeTime: 'time to recharge',
  supplyRate: 'what pump or ejector delivers',
  centreHeight: 'height of the centre of gravity above the rail',
  twistFreedom: 'twist freedom',
  tare: 'weight empty',
  centreAt: 'centre of gravity from the front',
  slack: 'slack of the {coupler}',
  chainSlack: 'slack of the chain',
  stiffness: 'stiffness',
  wheelDiameter: 'wheel diameter',
  speedometerFactor: 'true ÷ shown speed',
  sight: 'sight',
  riderMass: 'weight of a rider',
};

/** By the key of a result: `force/2` is the second force. */
export const resultName = (key: string): string => results[key.split('/')[0]] ?? key;

const unsure: Readonly<Record<string, string>> = {
  grade: 'the {grade} that the survey may have missed: level the stretch, or run it both ways',
  wheels: 'the inertia of the wheels: weigh or measure a wheelset',
  curve: 'the drag of curves: take a straight stretch',
  tape: 'the tape: hold it against a steel one',
  speedometer: 'what shows the speed: time it over a known length',
  rolling: 'the rolling resistance: make a coast-down first',
  adhesion: 'the adhesion: brake more gently, so that no wheel slides',
  balance: 'the spring balance: hang a known weight from it',
  floor: 'the fall of the floor: pull both ways',
  gauge: 'the gauge: hold it against another',
  scales: 'the scales: put a known weight on them',
  level: 'the tilt of the instrument: turn it round and take the mean',
  aside: 'where the centre lies to one side: tilt it to both sides',
};

export const whatUnsure = (key: string): string => unsure[key] ?? key;
