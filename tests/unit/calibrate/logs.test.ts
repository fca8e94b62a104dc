/** Logs of a phone: from a roll and a stop that are known exactly, back to them; and each log that is none in a clear word. */
import { describe, expect, it } from 'vitest';
import type { Felt } from '../../../desk/measured/level.ts';
import {
  coastFrom,
  type FromLog,
  gradeChange,
  type LogAbout,
  stillOf,
  stopFrom,
} from '../../../desk/measured/log.ts';
import { importLog, type Log } from '../../../papers/import/log.ts';
import { gradeWords, logFault } from '../../../words/measured/logs.ts';
import { assumedOuting } from '../../support/true-trains.ts';

const logOf = (text: string, file = 'log.csv'): Log => {
  const read = importLog(text, file);
  if ('problems' in read) throw new Error(read.problems.map((p) => p.message).join());
  return read.log;
};
const fault = (text: string, file = 'log.csv'): string => {
  const read = importLog(text, file);
  return 'problems' in read ? read.problems.map((p) => `${p.path} ${p.message}`).join() : 'none';
};
const made = (from: FromLog) => {
  if ('fault' in from) throw new Error(from.fault);
  return from;
};
const si = (text: unknown): number => Number.parseFloat(`${text}`);

/** Steady at 4 m/s until 5 s, then slowed by 0.8 m/s² to rest at 10 s, 10 m on; then it stands. */
const speedAt = (t: number): number => Math.max(0, Math.min(4, 4 - 0.8 * (t - 5)));
const wayAt = (t: number): number => (t < 5 ? 4 * t : 20 + (t < 10 ? 4 * (t - 5) - 0.4 * (t - 5) ** 2 : 10));
const moments = (step: number): number[] =>
  Array.from({ length: Math.round(14 / step) + 1 }, (_, i) => i * step);
const table = (head: string, row: (t: number) => readonly number[], step = 0.1): string =>
  [head, ...moments(step).map((t) => [t, ...row(t)].map((x) => x.toFixed(5)).join(','))].join('\n');

/** The phone fixed askew: the axis of the track in it, and down. */
const [down, track]: readonly [Felt, Felt] = [
  [0.1, 0.05, Math.sqrt(1 - 0.0125)],
  [Math.sqrt(1 - 0.01), 0, -0.1],
];
const felt = (slows: number, floor = 0): Felt =>
  [0, 1, 2].map((k) => 9.80665 * down[k] + (slows + 9.80665 * floor) * track[k]) as unknown as Felt;
const feltTable = table(
  'time (s),x (m/s^2),y (m/s^2),z (m/s^2)',
  (t) => felt(t >= 5 && t < 10 ? 0.8 : 0, 0.004),
  0.02,
);
/** On a floor that falls, and turned half round on it: what it falls it then falls the other way in the phone's axes. */
const set: Partial<LogAbout> = { level: felt(0, 0.01), turned: felt(0, -0.01) };

const stopAbout: LogAbout = { from: 100, way: 'reverse', begin: 5 };

describe('a stop', () => {
  const logs = [
    ['speeds', table('Time (s),Speed (mph)', (t) => [speedAt(t) / 0.44704]), {}, 0.03],
    ['places', table('time_s,distance_m', (t) => [300 + wayAt(t)]), {}, 0.1],
    ['what the phone felt', feltTable, set, 0.2],
  ] as const;
  it.each(logs)('by %s', (_, text, more, off) => {
    const { reading } = made(stopFrom(logOf(text), { ...stopAbout, ...more }));
    expect(Math.abs(si(reading['speed']) - 4)).toBeLessThan(0.2);
    expect(Math.abs(100 - si(reading['restAt']) - 10)).toBeLessThan(off);
    expect(Math.abs(si(reading['time']) - 5)).toBeLessThan(0.3);
    expect(reading['way']).toBe('reverse');
  });

  const wrong = [
    ['no-begin', feltTable, { begin: undefined as never }],
    ['no-level', feltTable, { level: undefined as never }],
    ['upside-down', feltTable, { level: [0, 0, -9.8], turned: [0, 0, -9.8] }],
    ['not-level', feltTable, { level: [9.8, 0, 9.8], turned: [9.8, 0, 9.8] }],
    ['weight-off', feltTable.replaceAll('m/s^2', 'g'), {}],
    ['not-slowing', feltTable, { begin: 10.5 }],
    ['too-short', feltTable, { begin: 13.5 }],
    ['not-at-rest', table('time (s),speed (m/s)', () => [4]), {}],
  ] as const;
  it.each(wrong)('%s, in words', (code, text, more) => {
    expect(stopFrom(logOf(text), { ...stopAbout, ...set, ...(more as object) })).toEqual({ fault: code });
    expect(logFault(code)).toMatch(/\.$/);
  });

  it('a phone that lay still is a level, one that was moved is none', () => {
    const still = table('time (s),x (g),y (g),z (g)', () => [0.01, 0, 1]);
    expect(stillOf(logOf(still))?.[0]).toBeCloseTo(0.01, 4);
    expect(stillOf(logOf(feltTable))).toBeUndefined();
  });
});

describe('the ground under a stop that was felt', () => {
  const flatThenUp = {
    ...assumedOuting(1),
    line: {
      ...assumedOuting(1).line,
      heights: [
        { at: 0, height: 0 },
        { at: 200, height: 0 },
        { at: 400, height: 4 },
      ],
    },
  };
  it('is said where it does not rise evenly, the way that it ran', () => {
    const change = (from: number, restAt: number, way: 'forward' | 'reverse' = 'forward') =>
      gradeChange(flatThenUp, { way, from, restAt });
    expect(change(80, 120)).toBeUndefined();
    expect(change(340, 360)).toBeUndefined();
    expect(change(120, 350)).toBeCloseTo(0.02, 3);
    expect(change(350, 120, 'reverse')).toBeCloseTo(0.02, 3);
    expect(gradeWords(0.02)).toContain('rises more by 2.0 %');
  });
});

describe('a coast', () => {
  /** 3 m/s, losing 0.05 m/s each second. */
  const coast = (t: number): number => 3 - 0.05 * t;
  it('by speeds: from its fastest, places summed up', () => {
    const { reading, instruments } = made(
      coastFrom(logOf(table('t (s),v (m/s)', (t) => [coast(t)])), { from: 50, way: 'forward' }),
    );
    const passes = reading['passes'] as Record<string, string>[];
    expect(si(reading['speed'])).toBeCloseTo(3, 3);
    expect(passes.length).toBeGreaterThan(8);
    for (const { at, speed, time } of passes) {
      const t = (3 - si(speed)) / 0.05;
      expect(si(at)).toBeCloseTo(50 + 3 * t - 0.025 * t * t, 2);
      expect(time).toBeUndefined();
    }
    expect(instruments).toMatchObject({ speedometer: 0.07 });
  });

  it('by satellites: times at places, metres off', () => {
    const points = moments(1).map((t) => {
      const lon = (3 * t - 0.025 * t * t) / 111_319.49;
      return `<trkpt lat="0" lon="${lon.toFixed(9)}"><time>2026-05-17T10:00:${String(t).padStart(2, '0')}Z</time></trkpt>`;
    });
    const gpx = `<gpx version="1.1"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`;
    const { reading, instruments } = made(
      coastFrom(logOf(gpx, 'ride.gpx'), { from: 0, way: 'forward', begin: 0 }),
    );
    const passes = reading['passes'] as Record<string, string>[];
    const last = passes[passes.length - 1];
    expect(si(last['at'])).toBeCloseTo(3 * si(last['time']) - 0.025 * si(last['time']) ** 2, 1);
    expect(instruments).toMatchObject({ place: '8 m' });
    expect(fault(gpx.replace(':05Z', ':03Z'), 'ride.gpx')).toContain('runs back');
    expect(fault(gpx.replaceAll(/<time>.*?<\/time>/g, ''), 'ride.gpx')).toContain('0 points with a time');
  });

  it('what the phone felt is too rough for one', () => {
    expect(coastFrom(logOf(feltTable), stopAbout)).toEqual({ fault: 'no-coast-by-feel' });
  });
});

describe('a table that is none', () => {
  const rows = '0,1\n1,1\n2,1\n';
  const wrong = [
    ['no unit', `time (s),speed\n${rows}`, 'speed without a unit'],
    ['a unit of something else', `time (s),speed (kg)\n${rows}`, '"kg"'],
    ['nothing beside time', `time (s),heart\n${rows}`, 'time (s) with speed (mph)'],
    ['times backwards', 'time (s),speed (mph)\n0,1\n2,1\n1,1\n3,1\n', 'times that go on'],
    ['ten times too fast and more', 'time (s),speed (mph)\n0,1\n1,8e3\n2,1\n', 'a speed that a train'],
    ['a word', 'time (s),speed (mph)\n0,1\n1,fast\n2,1\n', '"fast"'],
    ['two rows', 'time (s),speed (mph)\n0,1\n1,1\n', 'no log'],
  ] as const;
  it.each(wrong)('%s', (_, text, words) => expect(fault(text)).toContain(words));
});
