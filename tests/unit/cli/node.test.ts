/** Which Node builds the workbench: the range of package.json, read as npm reads it. */
import { expect, it } from 'vitest';

const { nodeMeets } = (await import('../../../scripts/tools.mjs' as string)) as {
  nodeMeets: (version: string, range: string) => boolean;
};

it.each([
  ['18.20.0', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['20.20.2', true],
  ['21.7.0', false],
  ['22.11.0', false],
  ['22.12.0', true],
  ['23.0.0', true],
  ['24.1.0', true],
])('Node %s: %s', (version, meets) => {
  expect(nodeMeets(version, '^20.19.0 || >=22.12.0')).toBe(meets);
});
