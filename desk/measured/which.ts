/** Which test tells what is asked for, or what is assumed. */
import type { TestKind } from '../../engine/calibrate/tests/index.ts';

/** By the end of the path that a finding names. */
const gives: readonly (readonly [RegExp, TestKind])[] = [
  [/brakes.*\.force$/, 'brake-pull'],
  [/leakRate$/, 'leak-down'],
  [/centreHeight$/, 'tilt'],
  [/twistFreedom$/, 'wheel-block'],
  [/\bsight/, 'sight'],
  [/\btraction\b/, 'hauling-pull'],
  [/\btare\b/, 'weighing'],
];

export const testAsked = (path: string | undefined): TestKind | undefined =>
  path === undefined ? undefined : gives.find(([end]) => end.test(path))?.[1];

/** By the first word of the key of what is assumed. */
const assumed: Readonly<Record<string, TestKind>> = {
  rolling: 'coast-down',
  'curve-constant': 'curve-resistance',
  adhesion: 'locked-wheels',
  'block-friction': 'brake-pull',
  'brake-force-spread': 'brake-pull',
  'dead-time': 'apply-time',
  'build-up': 'apply-time',
  reaction: 'stop-test',
  'mean-pressure-factor': 'hauling-pull',
  sight: 'sight',
};

export const testOfAssumed = (key: string): TestKind | undefined => assumed[key.split('/')[0]];
