/** A test written into papers: only where it belongs, kept with what stood there before, and taken back whole. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { applyToOuting, applyToVehicle, type Json, takeBack, testsIn } from '../../../desk/measured/apply.ts';
import { guideOf, testKinds } from '../../../desk/measured/guide.ts';
import { blankRecord, fitRecord, withPapers } from '../../../desk/measured/record.ts';
import { checkFile } from '../../../papers/check.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

const speech = { system: 'imperial', wording: 'us' } as const;
const record = (kind: string): Json =>
  JSON.parse(readFileSync(new URL(`../../../examples/tests/${kind}.json`, import.meta.url), 'utf8'));

async function resultsOf(of: Json) {
  const made = await fitRecord(of, speech);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.results;
}

const outing = (await examplePaper('battery-vacuum')) as Json;
const reads = async (paper: Json): Promise<boolean> =>
  (await readOuting({ path: 'o', content: JSON.stringify(paper) }, async () => undefined)).ok;
const same = (a: unknown, b: unknown): void => expect(JSON.stringify(a)).toBe(JSON.stringify(b));

describe('a test of one vehicle', () => {
  const tilt = record('tilt');
  const name = (tilt['vehicle'] as Json)['name'];

  it('is written into the one that was tested and no other, and taken back', async () => {
    const results = await resultsOf(tilt);
    const made = applyToOuting(outing, tilt, results, 'car-2');
    expect(made.written).toEqual(['car-2: centreHeight']);
    expect(await reads(made.paper)).toBe(true);
    const [kept] = testsIn(made.paper);
    expect(kept).toMatchObject({ name: tilt['name'], date: tilt['date'], test: tilt['test'] });
    expect(kept).not.toHaveProperty('vehicle');
    const back = takeBack(made.paper, 0);
    expect(back.stays).toEqual([]);
    expect(back.paper).not.toHaveProperty('tests');
    const outingBack = await readOuting(
      { path: 'o', content: JSON.stringify(back.paper) },
      async () => undefined,
    );
    const before = await readOuting({ path: 'o', content: JSON.stringify(outing) }, async () => undefined);
    expect(outingBack).toEqual(before);
  });

  it('is not written into one of another name', async () => {
    const made = applyToOuting(outing, tilt, await resultsOf(tilt), 'engine');
    expect(made.written).toEqual([]);
    expect(made.left).toEqual([{ key: 'centreHeight', why: 'not-here' }]);
    expect(made.paper).not.toHaveProperty('tests');
  });

  it('of two over each other the older is taken back from under the newer', async () => {
    const results = await resultsOf(tilt);
    const paper = tilt['vehicle'] as Json;
    const once = applyToVehicle(paper, tilt, results).paper;
    const twice = applyToVehicle(once, { ...tilt, name: 'again' }, [
      { ...results[0], quantity: { ...results[0].quantity, source: 'again' } },
    ]).paper;
    const first = takeBack(twice, 0);
    expect(testsIn(first.paper).map((t) => t['name'])).toEqual(['again']);
    expect(first.paper['centreHeight']).toMatchObject({ source: 'again' });
    same(takeBack(first.paper, 0).paper, paper);
    expect(checkFile('vehicle', twice)).toMatchObject({ ok: true });
    expect(name).toBe(paper['name']);
  });

  it('what was written anew since stays', async () => {
    const paper = tilt['vehicle'] as Json;
    const made = applyToVehicle(paper, tilt, await resultsOf(tilt)).paper;
    const { stays, paper: back } = takeBack({ ...made, centreHeight: '10 in' }, 0);
    expect(stays).toEqual(['centreHeight']);
    expect(back['centreHeight']).toBe('10 in');
  });
});

describe('a test of the whole train', () => {
  it('is written into those of the same id and name', async () => {
    const coast = record('coast-down');
    const results = await resultsOf(coast);
    const made = applyToOuting(outing, coast, results);
    expect(made.written).toEqual(['engine: resistance.rolling']);
    const strange = applyToOuting(await other(), coast, results);
    expect(strange.written).toEqual([]);
    expect(strange.left.map(({ why }) => why)).toContain('not-here');
  });

  async function other(): Promise<Json> {
    const vehicles = (outing['train'] as { vehicles: Json[] }).vehicles.map((m, i) =>
      i === 0 ? { ...m, vehicle: { ...(m['vehicle'] as Json), name: 'Another' } } : m,
    );
    return { ...outing, train: { ...(outing['train'] as Json), vehicles } };
  }
});

describe('how a rail holds', () => {
  it('is a figure of that rail on that day', async () => {
    const pull = record('hauling-pull');
    const results = await resultsOf(pull);
    const conditions = outing['conditions'] as Json;
    const on = (rail: string, more: Json = {}) =>
      applyToOuting(
        { ...outing, ...more, conditions: { ...conditions, railState: 'dry' } },
        { ...pull, rail },
        results,
      );
    const { date } = pull as { date: string };
    expect(on('dry', { date }).written).toEqual(['conditions.adhesion']);
    expect(on('wet', { date }).left).toEqual([{ key: 'drivenAdhesion', why: 'other-rail' }]);
    expect(on('dry', { date: '2026-09-01' }).left).toEqual([{ key: 'drivenAdhesion', why: 'other-day' }]);
  });
});

it('a paper that keeps what is no test is refused, and where', async () => {
  const read = await readOuting(
    {
      path: 'o',
      content: JSON.stringify({ ...outing, tests: [{ heedway: 'test', version: 1, name: 'x' }] }),
    },
    async () => undefined,
  );
  expect(read.ok).toBe(false);
  if (!read.ok) expect(read.problems[0].path).toMatch(/^tests\[0\]/);
});

it('the driver alone is aboard in a test, unless it is said', async () => {
  const blank = blankRecord('coast-down', '2026-05-17', 'dry');
  const riders = (of: Json): readonly Json[] => (of['outing'] as { riders: Json[] }).riders;
  expect(riders(withPapers(blank, { outing })).map((r) => r['duty'])).toEqual(['driver']);
  expect(riders(withPapers(blank, { outing, riders: true })).length).toBeGreaterThan(1);
});

it.each(testKinds)('%s has a guide without a bare word', (kind) => {
  for (const wording of ['us', 'uk'] as const) {
    const text = JSON.stringify(guideOf(kind, { system: 'imperial', wording }));
    expect(text).not.toMatch(/undefined|\{(grade|coupler|truck)/);
    const { steps, tools, readings, safety, moves } = guideOf(kind, { system: 'imperial', wording });
    expect(Math.min(steps.length, tools.length, readings.length)).toBeGreaterThan(0);
    if (moves) expect(safety[0]).toMatch(/^Never with riders until the brakes are proved/);
  }
});
