/** Whatever is handed in is answered or refused at once: reading takes time by the size of the file, never its square. */
import { describe, expect, it } from 'vitest';
import { outingIn } from '../../../desk/outing-code.ts';
import { readSurvey } from '../../../desk/survey.ts';
import { type FileProblem, type Read, readLine, readOuting } from '../../../papers/index.ts';
import { firstCode } from '../../support/first-code.ts';
import { runs } from '../../support/tier.ts';

/** On a push a quarter of it. */
const MB = runs(250_000, 1_000_000);
const POINTS = runs(5000, 49_000);
/** Seconds of processor. */
const AT_ONCE = 2;
const times = (count: number, make: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => make(i)).join(',');
const outing = (rest: string): string => `{"heedway":"outing","version":1,"name":"x",${rest}}`;
const line = (rest: string): string =>
  `{"heedway":"line","version":1,"name":"x","gauge":"7.25 in","shape":"point-to-point",${rest}}`;

/** Processor time, s: other work of the machine does not count. */
async function timed<T>(work: () => Promise<T>): Promise<{ readonly value: T; readonly seconds: number }> {
  const before = process.cpuUsage();
  const value = await work();
  const { user, system } = process.cpuUsage(before);
  return { value, seconds: (user + system) / 1e6 };
}

const refused: readonly [string, () => string, RegExp][] = [
  ['words that are no figures', () => `[${'NaN,'.repeat(2 * MB)}1]`, /100 faults/],
  ['faults behind many lines', () => `[${'\n'.repeat(8_000_000)}${'NaN,'.repeat(200)}1]`, /100 faults/],
  ['lists in lists', () => '['.repeat(8 * MB), /at most 64 levels/],
  ['nothing but lines', () => '\n'.repeat(8 * MB), /the end of the file/],
  ['a text without an end', () => `"${'a'.repeat(8 * MB)}`, /closing/],
  ['values', () => outing(`"riders":[${'1,'.repeat(3.9 * MB)}1]`), /more than 250000 values/],
  ['fields', () => outing(times(400_000, (i) => `"f${i}":1`)), /more than 500 fields/],
  ['fields that nobody meant', () => outing(times(400, (i) => `"f${i}${'x'.repeat(30)}":1`)), /100 faults/],
  ['a field with a long name', () => outing(`"${'k'.repeat(7.9 * MB)}":1`), /unknown field/],
  ['a long name', () => outing(`"note":"${'k'.repeat(7.9 * MB)}"`), /10000 letters/],
  ['riders', () => outing(`"riders":[${times(1001, (i) => `{"name":"r${i}"}`)}]`), /at most 1000 entries/],
  [
    'points',
    () => line(`"profile":[${times(50_001, (i) => `{"at":"${i} m","height":"0 m"}`)}]`),
    /at most 50000 entries/,
  ],
  [
    'points without sense',
    () => line(`"profile":[${times(POINTS, () => '{"at":"1","height":"x"}')}]`),
    /100 faults/,
  ],
  [
    'points in one place',
    () => line(`"profile":[${times(POINTS, () => '{"at":"0 m","height":"0 m"}')}]`),
    /100 faults/,
  ],
  ['a long figure', () => line(`"profile":[],"contactWidth":"${'1 ft '.repeat(1.5 * MB)}"`), /contactWidth/],
];

const isLine = (text: string): boolean => text.startsWith('{"heedway":"line"');
const told = (problems: readonly FileProblem[]): string => problems.map((p) => p.message).join('\n');

describe('eight megabytes of', () => {
  it.each(refused)('%s', async (_what, make, words) => {
    const entry = { path: 'x', content: make() };
    const { value, seconds } = await timed<Read<unknown>>(() =>
      isLine(entry.content) ? readLine(entry) : readOuting(entry, async () => undefined),
    );
    expect(value.ok).toBe(false);
    if (value.ok) return;
    expect(told(value.problems)).toMatch(words);
    // A hundred faults, each with the names of all fields that might have been meant.
    expect(told(value.problems).length).toBeLessThan(100 * 400);
    expect(seconds).toBeLessThan(AT_ONCE);
  });

  it('a line of 50,000 points is read', async () => {
    const content = line(`"profile":[${times(50_000, (i) => `{"at":"${i} m","height":"0 m"}`)}]`);
    const { value, seconds } = await timed(() => readLine({ path: 'x', content }));
    expect(value.ok).toBe(true);
    expect(seconds).toBeLessThan(AT_ONCE);
  });
});

describe('a survey', () => {
  const about = { name: 'x', gauge: '7.25 in' };
  const head = 'Chainage (ft),Height (ft)\n';
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

  it.each([
    ['a.csv', () => ','.repeat(8 * MB), /a line of \d+ letters/],
    ['a.csv', () => `${head}"${'a\n'.repeat(4 * MB)}`, /more than 200000 lines/],
    ['a.csv', () => head + '1,1\n'.repeat(60_000), /more than 50000/],
    ['a.csv', () => head + 'x,y\n'.repeat(40_000), /100 faults/],
    ['a.gpx', () => '<'.repeat(8 * MB), /well-formed/],
    ['a.gpx', () => '<gpx>'.repeat(6 * MB), /at most 64 levels/],
    [
      'a.gpx',
      () => `<gpx ${times(300_000, (i) => `a${i}="1"`).replaceAll(',', ' ')}`,
      /more than 64 attributes/,
    ],

    ['a.gpx', () => '<!DOCTYPE g [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx/>', /a document type/],
  ] as [string, () => string, RegExp][])('%s is refused in words', async (name, make, words) => {
    const content = bytes(make());
    const { value, seconds } = await timed(() => readSurvey(content, name, about));
    expect(value.made).toBeUndefined();
    expect(told(value.problems)).toMatch(words);
    expect(seconds).toBeLessThan(AT_ONCE);
  });

  it('of 200,000 satellite points becomes a line, and says how far it is', async () => {
    const count = runs(20_000, 200_000);
    const point = (i: number): string =>
      `<trkpt lat="${(51 + (i * 0.8) / count).toFixed(7)}" lon="-1.000000"><ele>${(100 + Math.sin(i / 900)).toFixed(2)}</ele></trkpt>`;
    const content = bytes(
      `<gpx><trk><trkseg>${times(count, point).replaceAll(',', '\n')}</trkseg></trk></gpx>`,
    );
    const heard: number[] = [];
    const { value, seconds } = await timed(() =>
      readSurvey(content, 'a.gpx', { ...about, share: (share) => void heard.push(share) }),
    );
    expect(value.made?.line.length).toBeCloseTo(89_005, -2);
    expect(value.made?.line.heights.length).toBeLessThanOrEqual(10_000);
    expect(value.notes.join()).toMatch(/Of \d+ smoothed heights/);
    expect(heard).toEqual([...heard].sort((a, b) => a - b));
    expect(heard.length).toBeGreaterThan(20);
    expect(seconds).toBeLessThan(3);
  });
});

describe('a code', () => {
  it('that unpacks to more than an outing is refused before it is unpacked', async () => {
    const code = firstCode(' '.repeat(8 * MB));
    expect(code.length).toBeLessThan(20_000);
    const { value, seconds } = await timed(() => outingIn(code));
    expect(value).toEqual({ fault: expect.stringContaining('more than an outing') });
    expect(seconds).toBeLessThan(0.2);
  });

  it('that unpacks to nonsense is read and refused at once', async () => {
    const { value, seconds } = await timed(async () => {
      const content = await outingIn(firstCode(`[${'NaN,'.repeat(200_000)}1]`));
      return 'fault' in content ? content : readOuting({ path: 'code', content }, async () => undefined);
    });
    expect(value).toMatchObject({ ok: false });
    expect(seconds).toBeLessThan(0.2);
  });

  it('that is too long, cut short, or none of ours says so', async () => {
    const whole = firstCode(JSON.stringify({ name: 'x'.repeat(50) }));
    expect(await outingIn(whole)).toBeInstanceOf(Uint8Array);
    expect(await outingIn(`${whole}${'0'.repeat(20_000)}`)).toEqual({
      fault: expect.stringContaining('at most 20000'),
    });
    expect(await outingIn(whole.slice(0, -6))).toEqual({ fault: expect.stringMatching(/broken|no code/) });
    expect(await outingIn('hello')).toEqual({ fault: expect.stringContaining('no code of an outing') });
  });
});
