/** Readings from CSV: as a hand would write them into the record; what cannot be read is said with its row. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { measured } from '../../../desk/measured/measure.ts';
import { readRecord } from '../../../desk/measured/record.ts';
import { importReadings, listOf } from '../../../papers/import/readings.ts';

type Json = Record<string, unknown>;
const record = (kind: string): Json =>
  JSON.parse(readFileSync(new URL(`../../../examples/tests/${kind}.json`, import.meta.url), 'utf8'));

async function told(json: Json): Promise<unknown> {
  const read = await readRecord(json);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return measured(read.value);
}

describe('readings from CSV', () => {
  it('of pulls say the same as those of the record', async () => {
    const whole = record('brake-pull');
    const csv = 'Force (lbf),way\n61,forward\n64,reverse\n60,forward\n65,reverse\n';
    const { test } = importReadings(csv, 'pulls.csv', 'brake-pull');
    expect(await told({ ...whole, test: { ...(whole['test'] as Json), ...test } })).toEqual(
      await told(whole),
    );
  });

  it('of coasts are runs one below the other', async () => {
    const whole = record('coast-down');
    const { runs } = whole['test'] as { runs: { way: string; from: string; passes: Json[]; rest: Json }[] };
    const lines = runs.flatMap(({ way, from, passes, rest }, i) => [
      [i, way, from, '', ''],
      ...passes.map((p) => [i, '', p['at'], p['time'], '']),
      [i, '', rest['at'], '', 'yes'],
    ]);
    const csv = ['run;way;at;time;rest', ...lines.map((l) => l.join(';'))].join('\n');
    const { test } = importReadings(csv, 'runs.csv', 'coast-down');
    expect(test).toEqual(whole['test']);
  });

  it('frames of a video stand for times, from the first of each run', () => {
    const csv = 'run,way,at (ft),frame\n1,forward,300,120\n1,,320,210\n2,reverse,340,1000\n2,,320,1045\n';
    const { test } = importReadings(csv, 'film.csv', 'coast-down', 30);
    expect(test?.['runs']).toMatchObject([
      { from: '300 ft', passes: [{ at: '320 ft', time: '3.0000 s' }] },
      { from: '340 ft', passes: [{ at: '320 ft', time: '1.5000 s' }] },
    ]);
    const odd = importReadings(csv.replace('210', '7.5 s'), 'film.csv', 'coast-down', 30);
    expect(odd.problems[0].found).toBe('"7.5 s"');
    // Without the frames of a second nobody knows what they are.
    expect(importReadings(csv, 'film.csv', 'coast-down').problems[0].found).toBe('"frame"');
  });

  it('with semicolons have commas in their figures', () => {
    const semi = importReadings('height (mm);lifts\n1,5;no\n2;yes\n', 't.csv', 'wheel-block');
    expect(semi.test?.['blocks']).toEqual([
      { height: '1.5 mm', lifts: false },
      { height: '2 mm', lifts: true },
    ]);
  });

  it.each([
    ['force,colour\n1,2', 'colour'],
    ['force', 'no readings'],
    ['', 'no readings'],
    ['way,force (lbf)\nforward,61,5', '3 cells'],
  ])('%j is refused in words', (csv, words) => {
    const { test, problems } = importReadings(csv, 'x.csv', 'brake-pull');
    expect(test).toBeUndefined();
    expect(JSON.stringify(problems)).toContain(words);
  });

  it('every test has a list whose rows they are', () => {
    for (const kind of ['coast-down', 'stop-test', 'leak-down', 'tilt', 'weighing', 'riders', 'speedometer'])
      expect(listOf(kind)?.key, kind).toBeDefined();
  });
});
