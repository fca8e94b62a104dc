/** A stopwatch by its presses: a phone that sleeps, a page opened anew, and its times in the record of a test. */
import { describe, expect, it } from 'vitest';
import { withLaps } from '../../../desk/measured/laps.ts';
import {
  between,
  laps,
  marked,
  type Press,
  running,
  started,
  stopped,
  withoutLast,
} from '../../../web/rooms/measure/watch.ts';

const at = (page: number, day = page, of = 0): Press => ({ page, day: 1_780_000_000_000 + day, of });

describe('a stopwatch', () => {
  it('goes by the clock that does not jump', () => {
    // The clock of the day is set by the network meanwhile, a little.
    expect(between(at(1000), at(5250, 5300))).toBe(4.25);
  });

  it('goes by the clock of the day where the page slept, or is another page', () => {
    expect(between(at(1000), at(3000, 9000))).toBe(8);
    expect(between(at(90_000, 1000), at(500, 61_000, 7))).toBe(60);
  });

  it('tells each press since the first, and forgets the last on demand', () => {
    const watch = stopped(marked(started(at(0)), at(4000)), at(9500));
    expect(laps(watch)).toEqual([4, 9.5]);
    expect(running(watch)).toBe(false);
    expect(laps(withoutLast(watch))).toEqual([4]);
  });
});

describe('its times in a record', () => {
  const runs = (record: object): readonly object[] =>
    (record as { test: { runs: readonly object[] } }).test.runs;

  it('are a run; the run after it goes back over the same marks', () => {
    const first = withLaps({ test: { kind: 'coast-down' } }, [4, 9.5]);
    expect(runs(first)).toEqual([
      {
        way: 'forward',
        from: '',
        passes: [
          { at: '', time: '4.00 s' },
          { at: '', time: '9.50 s' },
        ],
      },
    ]);
    const written = {
      test: {
        kind: 'coast-down',
        runs: [{ way: 'forward', from: '10 ft', passes: [{ at: '20 ft' }, { at: '30 ft' }] }],
      },
    };
    expect(runs(withLaps(written, [5, 11]))[1]).toEqual({
      way: 'reverse',
      from: '30 ft',
      passes: [
        { at: '20 ft', time: '5.00 s' },
        { at: '10 ft', time: '11.00 s' },
      ],
    });
  });

  it('are nothing where nothing was pressed, or the test has no times', () => {
    const tilt = { test: { kind: 'tilt' } };
    expect(withLaps(tilt, [1])).toBe(tilt);
    const coast = { test: { kind: 'coast-down' } };
    expect(withLaps(coast, [])).toBe(coast);
  });
});
