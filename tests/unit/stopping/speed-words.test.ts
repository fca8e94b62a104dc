/**
 * What is said of a speed that somebody or something limits, on a map laid by hand: 100 m of level line, a point
 * every 10 m, the driver means to run 3 m/s.
 */

import { describe, expect, it } from 'vitest';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { askSpeeds } from '../../../engine/questions/speed/ask.ts';
import type { SpeedMap, SpeedReasonKind } from '../../../engine/questions/speed/types.ts';
import { assumedValues } from '../../support/random-outings.ts';
import { plain } from '../../support/rules.ts';

const MPH = 0.44704;
const base = plain(2);
const level = [
  { at: 0, height: 0 },
  { at: 100, height: 0 },
];
const line = { ...base.line, loop: false, length: 100, heights: level };
const ready = prepare(openOuting({ ...base, line }), 1, 0);
const free: SpeedReasonKind = 'host-line';

/** Its own reason at the points that have one; elsewhere it runs as fast as is wanted. */
function map(limits: Record<number, number>, kind: SpeedReasonKind): SpeedMap {
  const at = Float64Array.from({ length: 11 }, (_, j) => 10 * j);
  const reason = (of: SpeedReasonKind) => ({ kind: of, what: 'what', source: 'source' });
  return {
    railState: 'dry',
    step: 10,
    at,
    limit: at.map((_, j) => limits[j] ?? 3),
    reason: Uint16Array.from({ length: 11 }, (_, j) => (limits[j] === undefined ? 0 : 1)),
    reasons: [reason(free), reason(kind)],
    likelyStop: new Float64Array(11),
    cautiousStop: new Float64Array(11),
    gap: new Float64Array(11),
  };
}
const allowed = [
  { reason: { kind: free, what: 'what', source: 'source' }, speed: new Float64Array(11).fill(3) },
];
const said = (limits: Record<number, number>, kind: SpeedReasonKind) =>
  askSpeeds(ready, map(limits, kind), new Float64Array(11).fill(3), allowed);
const codes = (limits: Record<number, number>, kind: SpeedReasonKind) =>
  said(limits, kind).map((f) => [f.code, f.severity]);

describe('a lower limit', () => {
  it('is told from the last point that is free to the first that is again, with its least speed', () => {
    const [only, ...more] = said({ 3: 2, 4: 1.5, 5: 2 }, 'stopping-sight');
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      code: 'speed-limited',
      severity: 'limits',
      where: { from: 20, to: 60 },
      found: { si: 1.5 },
      required: { si: 3 },
      margin: -0.5,
      facts: { reason: 'stopping-sight', at: { si: 40 } },
      sum: { id: 'stopping-distance' },
    });
  });
  it('reaches the ends of the map', () => {
    expect(said({ 0: 2, 1: 2 }, 'curve')[0].where).toEqual({ from: 0, to: 20 });
    expect(said({ 9: 2, 10: 2 }, 'curve')[0].where).toEqual({ from: 80, to: 100 });
  });
  it('that is no lower, or by less than a millimetre a second, is none', () =>
    expect(codes({ 3: 3, 5: 2.9995 }, 'curve')).toEqual([]));
  it('of a curve has no sum of a stop', () => expect(said({ 3: 2 }, 'curve')[0].sum).toBeUndefined());
  it('by a sight that nobody measured is asked for elsewhere', () =>
    expect(codes({ 3: 0 }, 'stopping-assumed-sight')).toEqual([]));
  it('by balance is told by balance', () => expect(codes({ 3: 2 }, 'balance')).toEqual([]));
});

describe('a limit below a slow walk', () => {
  it.each(['stopping-sight', 'balance', 'flange', 'curve'] as const)(
    'that %s sets holds: nobody drives so',
    (kind) => {
      expect(assumedValues.practice['slowest-driven'].value).toBeCloseTo(2 * MPH, 12);
      expect(codes({ 3: 1.9 * MPH }, kind)).toEqual([['too-slow-to-drive', 'forbids']]);
    },
  );
  it.each(['host-line', 'host-place', 'vehicle', 'agreed', 'looked-no-higher'] as const)(
    'that %s sets is theirs to set',
    (kind) => expect(codes({ 3: 1 * MPH }, kind)).toEqual([['speed-limited', 'limits']]),
  );
  it('is told where it is so, and by how much', () => {
    const [only] = said({ 2: 2, 3: 2, 4: 0.5, 5: 0.6, 6: 2, 7: 2 }, 'stopping-sight');
    expect(only).toMatchObject({ where: { from: 30, to: 60 }, found: { si: 0.5 } });
    expect(only.margin).toBeCloseTo(0.5 / (2 * MPH) - 1, 12);
  });
  it('is told though the driver means to go no faster', () => {
    const asked = askSpeeds(
      ready,
      map({ 3: 0.5 }, 'stopping-sight'),
      new Float64Array(11).fill(0.4),
      allowed,
    );
    expect(asked.map((f) => f.code)).toContain('too-slow-to-drive');
  });
});

describe('no speed at all', () => {
  it.each(['stopping-sight', 'cannot-stop', 'host-line', 'balance'] as const)('by %s holds', (kind) => {
    expect(codes({ 3: 0.09 * MPH }, kind)).toEqual([['cannot-stop', 'forbids']]);
    expect(said({ 3: 0 }, kind)[0]).toMatchObject({ found: { si: 0 }, required: { si: 3 }, margin: -1 });
  });
  it('at a host’s place is one at a tenth of a mile an hour', () =>
    expect(codes({ 3: 0.11 * MPH }, 'host-place')).toEqual([['speed-limited', 'limits']]));
});

describe('the end of the line', () => {
  // A stop keeps its margin to the end, and the train has first to leave where it starts.
  it('is where every train comes to a stand', () => {
    expect(codes({ 8: 2, 9: 1, 10: 0 }, 'stopping-end')).toEqual([['speed-limited', 'notes']]);
    expect(codes({ 8: 2, 9: 1, 10: 1 }, 'stopping-end')).toEqual([['speed-limited', 'notes']]);
  });
  it('is not a stand farther before it than what must be kept', () =>
    expect(codes({ 8: 0, 9: 0, 10: 0 }, 'stopping-end')).toEqual([['cannot-stop', 'forbids']]));
});
