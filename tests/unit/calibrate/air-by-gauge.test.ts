/** The brake's air by gauge and stopwatch: what cannot be right, and figures by their closed forms. All made up. */
import { describe, expect, it } from 'vitest';
import { assumedValues, instruments } from '../../../data/index.ts';
import { leaked } from '../../../engine/calibrate/tests/brake-air.ts';
import { measure, type Test } from '../../../engine/calibrate/tests/index.ts';

const sea = 101_325;
const tell = (test: object) => measure(test as Test, { instruments, assumed: assumedValues });
const value = (made: ReturnType<typeof tell>, key: string): number | undefined =>
  made.ok ? made.results.find((r) => r.key === key)?.quantity.value : undefined;
const code = (made: ReturnType<typeof tell>): string => (made.ok ? 'ok' : made.code);

describe('a leak followed by steps', () => {
  it('through a hole that is choked falls as a plain exponential, absolute', () => {
    // From 5 to above 1 bar over the atmosphere: p = p₀·e^(−t/τ).
    const [half, whole] = leaked(5e5, 100, false, sea, [50, 100]);
    expect(half).toBeCloseTo((sea + 5e5) * Math.exp(-0.5) - sea, 0);
    expect(whole).toBeCloseTo((sea + 5e5) * Math.exp(-1) - sea, 0);
  });

  it('into a vacuum through a choked hole rises evenly: a share of the day’s air a second', () => {
    const [soon, later] = leaked(8e4, 200, true, sea, [10, 30]);
    expect(soon).toBeCloseTo(8e4 - (10 * sea) / 200, 0);
    expect(later).toBeCloseTo(8e4 - (30 * sea) / 200, 0);
  });

  it('ends with nothing left, and never beyond', () => {
    expect(leaked(1e4, 10, false, sea, [500, 1000])).toEqual([0, 0].map(() => expect.closeTo(0, 0)));
    expect(leaked(1e4, 10, true, sea, [1000])[0]).toBeGreaterThanOrEqual(0);
  });
});

describe('times that cannot be right', () => {
  const apply = (tries: readonly { first?: number; full?: number }[]) =>
    tell({ kind: 'apply-time', brake: 'automatic-vacuum', tries });
  it('full before the first touch, or with it; too few', () => {
    const good = { first: 0.6, full: 2.4 };
    expect(code(apply([good, good]))).toBe('ok');
    expect(apply([good, { first: 2, full: 1.9 }])).toMatchObject({
      ok: false,
      code: 'runs-backwards',
      facts: { reading: 2 },
    });
    expect(code(apply([good, { first: 2, full: 2 }]))).toBe('runs-backwards');
    expect(apply([good])).toMatchObject({
      ok: false,
      code: 'too-few-readings',
      facts: { found: 2, needed: 3 },
    });
    expect(code(apply([good, { full: 2.5 }]))).toBe('ok');
    expect(value(apply([good, good, good, good]), 'deadTime')).toBeCloseTo(0.6, 1);
  });

  const charge = (more: object) =>
    tell({ kind: 'recharge', brake: 'straight-air', from: 1e5, to: 4e5, times: [30, 31, 29], ...more });
  it('a recharge: three times, upward, no deeper than the day’s air', () => {
    expect(value(charge({}), 'rechargeTime')).toBeCloseTo(30, 1);
    expect(code(charge({ times: [30, 31] }))).toBe('too-few-readings');
    expect(code(charge({ to: 1e5 }))).toBe('runs-backwards');
    expect(code(charge({ brake: 'automatic-vacuum', from: 0, to: sea }))).toBe('out-of-range');
    expect(code(charge({ brake: 'automatic-vacuum', from: 0, to: 7e4 }))).toBe('ok');
    expect(code(charge({ brake: 'automatic-vacuum', from: 0, to: 7e4, atmosphere: 6.9e4 }))).toBe(
      'out-of-range',
    );
  });

  it('with its volume gives what is delivered: free air into a pipe, air at its own pressure out of it', () => {
    expect(value(charge({ volume: 0.02 }), 'supplyRate')).toBeCloseTo((0.02 * 3e5) / sea / 30, 5);
    const drawn = charge({ brake: 'automatic-vacuum', from: 2e4, to: 7e4, volume: 0.02 });
    expect(value(drawn, 'supplyRate')).toBeCloseTo((0.02 * Math.log((sea - 2e4) / (sea - 7e4))) / 30, 5);
    expect(value(charge({}), 'supplyRate')).toBeUndefined();
  });

  it('a leak: three readings, forward, within what a gauge shows', () => {
    const leak = (of: readonly [number, number][], more: object = {}) =>
      tell({
        kind: 'leak-down',
        brake: 'automatic-vacuum',
        readings: of.map(([time, pressure]) => ({ time, pressure })),
        ...more,
      });
    const fall = [0, 60, 120].map((time): [number, number] => [time, 7e4 - (time * sea) / 4000]);
    const made = leak(fall);
    expect(value(made, 'leak')).toBeCloseTo((60 * sea) / 4000, -2);
    // Half of it is gone after 35 000 Pa of a fortieth of the day’s air a hundred seconds, while the hole is choked.
    expect(value(made, 'halfTime')).toBeGreaterThan((3.5e4 * 4000) / sea - 20);
    expect(code(leak(fall.slice(1)))).toBe('too-few-readings');
    expect(leak([fall[0], fall[2], [90, 6e4]])).toMatchObject({
      code: 'runs-backwards',
      facts: { reading: 3 },
    });
    expect(code(leak([fall[0], [0, 6.9e4], fall[2]]))).toBe('runs-backwards');
    expect(code(leak([[0, sea], fall[1], fall[2]]))).toBe('out-of-range');
    expect(leak([fall[0], fall[1], [120, -1]])).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'readings.2.pressure' },
    });
  });
});
