/** A test written into papers: only where it belongs, kept with what stood there before, and taken back whole. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  applyToLine,
  applyToOuting,
  applyToVehicle,
  type Json,
  takeBack,
  testsIn,
} from '../../../desk/measured/apply.ts';
import { guideOf, testKinds } from '../../../desk/measured/guide.ts';
import { measured } from '../../../desk/measured/measure.ts';
import { blankRecord, readRecord, withPapers } from '../../../desk/measured/record.ts';
import { drivenAdhesion } from '../../../engine/questions/haul/draws.ts';
import { checkFile } from '../../../papers/check.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

const record = (kind: string): Json =>
  JSON.parse(readFileSync(new URL(`../../../examples/tests/${kind}.json`, import.meta.url), 'utf8'));

async function resultsOf(of: Json) {
  const read = await readRecord(of);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const made = measured(read.value);
  if (!made.ok) throw new Error(JSON.stringify(made));
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
  const pull = record('locked-wheels');
  const { date } = pull as { date: string };
  const found = (value: number, low: number, high: number) => ({
    value,
    low,
    high,
    how: 'measured',
    source: 'drag',
    date,
  });
  const read = async (more: Json, conditions: Json = {}) => {
    const own = { ...(outing['conditions'] as Json), railState: 'wet', ...conditions };
    const content = JSON.stringify({ ...outing, ...more, conditions: own });
    const made = await readOuting({ path: 'o', content }, async () => undefined);
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    return made.value;
  };

  it('is written for its own day, or for that rail', async () => {
    const results = await resultsOf(pull);
    const conditions = outing['conditions'] as Json;
    const on = (rail: string | undefined, day: string) =>
      applyToOuting(
        { ...outing, date: day, conditions: { ...conditions, railState: 'dry' } },
        { ...pull, rail },
        results,
      );
    expect(on('dry', date).written).toEqual(['conditions.adhesion']);
    expect(on('wet', date).written).toEqual(['measuredAdhesion.wet']);
    expect(on('dry', '2026-09-01').written).toEqual(['measuredAdhesion.dry']);
    expect(on(undefined, date).left).toEqual([{ key: 'adhesion', why: 'no-rail' }]);
    same(takeBack(on('wet', date).paper, 0).paper, on(undefined, date).paper);
  });

  it('counts on its own day in full, on another where it is less than assumed', async () => {
    const usual = (await read({})).assumed.adhesion;
    const better = { dry: found(0.28, 0.27, 0.29) };
    const worse = { dry: found(0.12, 0.11, 0.13) };
    const days = [date, '2026-09-01', undefined];
    const [own, other, unsaid] = await Promise.all(
      days.map(async (day) => (await read({ date: day, measuredAdhesion: better })).assumed.adhesion.dry),
    );
    expect(own).toMatchObject({ value: 0.28, low: 0.27 });
    expect(other).toEqual(usual.dry);
    expect(unsaid).toEqual(usual.dry);
    for (const day of days) {
      const { assumed } = await read({ date: day, measuredAdhesion: worse });
      expect(assumed.adhesion.dry).toMatchObject({ value: 0.12, low: 0.11, high: 0.13 });
      expect({ ...assumed.adhesion, dry: usual.dry }).toEqual(usual);
    }
  });

  it('what was measured on a damp rail never speaks for a wet one', async () => {
    const damp = await read({ date, measuredAdhesion: { damp: found(0.25, 0.24, 0.26) } });
    expect(damp.assumed.adhesion.wet).toEqual((await read({})).assumed.adhesion.wet);
    expect(damp.assumptions.map((a) => a.key)).toContain('adhesion/wet');
  });

  it('a dry rail that was measured poor makes no other rail hold better under driving wheels', async () => {
    const usual = await read({});
    const poor = await read({ date, measuredAdhesion: { dry: found(0.12, 0.11, 0.13) } });
    const of = (o: typeof usual) => drivenAdhesion(o.assumed, 'damp').value;
    expect(of(poor)).toBeLessThanOrEqual(of(usual));
  });
});

describe('into the outing and its line', () => {
  const line = outing['line'] as Json;

  it("the driver's reaction", async () => {
    const stops = record('stop-test');
    const [force] = await resultsOf(stops);
    const reaction = {
      ...force,
      key: 'reaction',
      kind: 'time' as const,
      quantity: { ...force.quantity, value: 1.2, low: 0.9, high: 1.6 },
      belongs: [{ paper: 'outing', field: 'conditions.reaction' } as const],
    };
    const made = applyToOuting(outing, stops, [reaction]);
    expect(made.written).toEqual(['conditions.reaction']);
    expect(await reads(made.paper)).toBe(true);
    same(takeBack(made.paper, 0).paper['conditions'], outing['conditions']);
  });

  it('a sight, at the place that was looked at', async () => {
    const looked = record('sight');
    const of = (more: Json): Json => ({ ...looked, test: { ...(looked['test'] as Json), ...more } });
    const at = async (more: Json) => applyToOuting(outing, of(more), await resultsOf(of(more)));
    const places = line['places'] as readonly Json[];
    const i = places.findIndex((p) => p['name'] === 'Foot signal');
    const foot = await at({ at: '2120 ft' });
    expect(foot.written).toContain(`line.places.${i}.sight`);
    expect(await reads(foot.paper)).toBe(true);
    same(takeBack(foot.paper, 0).paper['line'], line);
    expect((await at({ at: '2120 ft', way: 'reverse' })).written).toContain(`line.places.${i}.sightReverse`);
    // Two stand at one place: the record says which, or it is not written.
    expect((await at({ at: '2300 ft' })).written.filter((f) => f.includes('places'))).toEqual([]);
    const named = await at({ at: '2300 ft', place: 'Loop points' });
    expect(named.written.some((f) => f.includes('places'))).toBe(true);
    const alone = applyToLine(line, of({ at: '2120 ft' }), await resultsOf(of({ at: '2120 ft' })));
    expect(alone.written).toContain(`places.${i}.sight`);
    expect(checkFile('line', alone.paper)).toMatchObject({ ok: true });
  });

  it('a sight never lengthens that of a stretch', async () => {
    const looked = record('sight');
    const results = await resultsOf(looked);
    const with_ = (distance: string) => ({
      ...line,
      sights: [{ from: '2000 ft', to: '2250 ft', distance }],
    });
    expect(applyToLine(with_('300 ft'), looked, results).written).toContain('sights.0.distance');
    expect(applyToLine(with_('60 ft'), looked, results).written).not.toContain('sights.0.distance');
  });

  it("a club's riders, of the sort that was weighed and whom nobody weighed", async () => {
    const weighed = record('riders');
    const riders = [
      { name: 'D', weight: '180 lb', duty: 'driver' },
      { name: 'a', typical: 'adult' },
      { name: 'b', typical: 'child' },
      { name: 'c', typical: 'adult', weight: '150 lb' },
    ];
    const made = applyToOuting({ ...outing, riders }, weighed, await resultsOf(weighed));
    expect(made.written).toEqual(['riders.1.weight']);
    same(takeBack(made.paper, 0).paper['riders'], riders);
  });

  it('drag of curves, of the line', async () => {
    const coast = record('curve-resistance');
    const made = applyToOuting(outing, coast, await resultsOf(coast));
    expect(made.written).toEqual(['line.curveConstant']);
    const now = await readOuting({ path: 'o', content: JSON.stringify(made.paper) }, async () => undefined);
    if (!now.ok) throw new Error(JSON.stringify(now.problems));
    expect(now.value.assumed.curveConstant.how).toBe('measured');
    expect(now.value.assumptions.map((a) => a.key)).not.toContain('curve-constant');
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
