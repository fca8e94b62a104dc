/** Own train and line from four questions: every reply left out once, everything left out, nothing of an example. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldKey, Replies } from '../../../desk/new/field.ts';
import { grow } from '../../../desk/new/make.ts';
import { fieldKeys, fieldOf } from '../../../desk/new/questions.ts';
import { withUnit } from '../../../desk/new/reading.ts';
import { tellReply } from '../../../desk/new/say.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { printQuantity } from '../../../units/index.ts';
import { fieldAt } from '../../../words/field.ts';
import { all } from '../../support/four-replies.ts';
import { runs } from '../../support/tier.ts';

/** All that is asked of a steam engine alone; the power is asked of any other. */
const noPull: Replies = { 'engine.pull': '' };
const steam: Replies = {
  ...noPull,
  'engine.kind': 'steam',
  'engine.cylinders': '2',
  'engine.bore': '2 in',
  'engine.stroke': '3 in',
  'engine.wheel': '8 in',
  'engine.pressure': '80 psi',
};

const without = (...keys: FieldKey[]): Replies =>
  Object.fromEntries(Object.entries(all).filter(([key]) => !keys.includes(key as FieldKey)));

async function answerTo(replies: Replies): Promise<Answer | undefined> {
  const { faults, paper } = grow(replies, 'imperial');
  expect(faults).toEqual([]);
  if (!paper) return undefined;
  const read = await readOuting({ path: 'own', content: JSON.stringify(paper) }, async () => undefined);
  expect(read.ok ? [] : read.problems).toEqual([]);
  return read.ok ? answerOuting(read.value, { remedies: false, counts: 'today' }) : undefined;
}

describe('own train and line', () => {
  it('with everything told has a word', async () => {
    expect(grow(all, 'imperial').missing).toEqual([]);
    expect(['go', 'limits']).toContain((await answerTo(all))?.verdict);
  });

  it('is told to keep up a walk alike in feet and in metres', async () => {
    const weighed: Replies = { ...all, 'people.weighed': '170 lb, 12 st 4 lb' };
    const written = Object.fromEntries(
      Object.entries(weighed).map(([key, text]) => [
        key,
        withUnit(text, fieldOf(key as FieldKey), 'imperial'),
      ]),
    );
    const kept = async (system: 'imperial' | 'metric') => {
      const { paper } = grow(written, system);
      const read = await readOuting({ path: 'own', content: JSON.stringify(paper) }, async () => undefined);
      return read.ok
        ? answerOuting(read.value, { remedies: false, counts: 'today' }).cars[0].keepsSpeed
        : 'unread';
    };
    const feet = await kept('imperial');
    expect(feet).toBeGreaterThan(0);
    expect(await kept('metric')).toBe(feet);
  });

  it('with nothing told cannot be told, and what to measure is named', () => {
    const { missing, paper, faults } = grow({}, 'imperial');
    expect(paper).toBeUndefined();
    expect(faults).toEqual([]);
    expect(missing).toEqual([
      'engine.gauge',
      'engine.weight',
      'engine.pull',
      'engine.brake',
      'cars.count',
      'cars.weight',
      'people.adults',
      'line.grade',
      'line.curve',
      'line.rail',
    ]);
    for (const key of missing) expect(fieldOf(key).how.length).toBeGreaterThan(5);
  });

  /** On a push those that cost the word or the paper, and some others. */
  const left = fieldKeys.filter(
    (key, i) => key in all && (fieldOf(key).need !== 'more' || i % runs(8, 1) === 0),
  );
  it.each(left)(
    'without %s is never go by silence',
    async (key) => {
      const { missing, open } = grow(without(key), 'imperial');
      const answer = await answerTo(without(key));
      const said = key.startsWith('people.') && fieldOf(key).need === 'paper';
      if (fieldOf(key).need === 'paper' && !said) expect(answer).toBeUndefined();
      if (fieldOf(key).need !== 'more' && !said) expect(missing).toContain(key);
      else if (!key.startsWith('people.') && fieldOf(key).form !== 'text') expect(open).toContain(key);
      if (fieldOf(key).need === 'word') expect(['unknown', 'hold']).toContain(answer?.verdict);
      // With everything told it is within limits: less told is no better.
      if (answer) expect(answer.verdict).not.toBe('go');
    },
    20_000,
  );

  it('writes down what was typed as typed, and the rest as assumed', () => {
    const text = JSON.stringify(grow(without('cars.length', 'cars.seatHeight'), 'imperial').paper);
    expect(text).toContain('"tare":"600 lb"');
    expect(text).toContain('"weight":"12 st 4 lb"');
    expect(text).toMatch(/"length":\{"value":"[\d.]+ ft","how":"assumed","source":"typical shape/);
    expect(text).not.toContain('measured');
  });

  it('keeps nothing of an example', () => {
    const text = JSON.stringify(grow(all, 'imperial').paper);
    for (const file of ['lines/larkfield-hollow', 'vehicles/bracken', 'hosts/larkfield-hollow']) {
      const example = JSON.parse(
        readFileSync(new URL(`../../../examples/${file}.json`, import.meta.url), 'utf8'),
      );
      expect(text).not.toContain(example.name);
    }
  });

  it('takes a bare number in the units that are set, and refuses one that could be two', () => {
    expect(
      JSON.stringify(
        grow({ ...all, 'engine.weight': '270', 'engine.gauge': '184', 'cars.chainSize': '6' }, 'metric')
          .paper,
      ),
    ).toContain('"tare":"270 kg"');
    expect(grow({ ...without('engine.pull'), 'engine.power': '750' }, 'imperial').faults).toEqual([
      expect.objectContaining({ key: 'engine.power' }),
    ]);
  });

  const filling = fieldKeys.flatMap((key) => {
    const field = fieldOf(key);
    return field.form === 'figure' && field.fills !== undefined
      ? [{ key, kind: field.kind, fills: field.fills }]
      : [];
  });
  it.each(filling)('$key: what $fills would not take is told at its question', ({ key, kind, fills }) => {
    const is = fieldAt(fills)?.is;
    if (is?.form !== 'figure') throw new Error(`${fills} is no figure`);
    expect(is.kind).toBe(kind);
    const text = (si: number) => printQuantity(si, kind, { system: 'metric', digits: 9 });
    const around: Partial<Record<FieldKey, Replies>> = {
      'engine.power': noPull,
      'engine.parks': { 'engine.holds': 'no' },
      'engine.pull': {},
    };
    const faultsOf = (si: number) =>
      grow(
        { ...all, ...(around[key] ?? (key in steam ? steam : {})), [key]: text(si) },
        'imperial',
      ).faults.filter((fault) => fault.key === key);
    const ofRange = expect.stringMatching(/^from .* to /);
    expect(faultsOf(is.to * (kind === 'count' ? 2 : 1.01))).toMatchObject([{ expected: ofRange }]);
    expect(faultsOf(is.to).filter(({ expected }) => expected.startsWith('from '))).toEqual([]);
    if (is.from > 0)
      expect(faultsOf(kind === 'count' ? 0 : is.from * 0.9)).toMatchObject([{ expected: ofRange }]);
  });
  it('a gauge in inches is not taken for millimetres', () => {
    expect(grow({ ...all, 'engine.gauge': '7.25', 'cars.chainSize': '6' }, 'metric').faults).toMatchObject([
      { key: 'engine.gauge', found: '"7.25 mm"', expected: 'from 50 mm to 1000 mm' },
    ]);
  });

  it('says what cannot be read at its question', () => {
    for (const [key, text] of [
      ['engine.weight', 'heavy'],
      ['engine.brake', '-5 lbf'],
      ['people.adults', '2.5'],
      ['people.adults', '100000'],
      ['line.rail', 'icy'],
      ['line.gradeLength', '900 ft'],
    ] as const)
      expect(
        grow({ ...all, [key]: text }, 'imperial').faults.map((f) => f.key),
        text,
      ).toEqual([key]);
  });

  it('an engine without a brake is not one whose brake is not known', async () => {
    const none = grow({ ...all, 'engine.brake': 'none' }, 'imperial');
    expect(none.missing).toEqual([]);
    expect(JSON.stringify(none.paper)).toContain('"brakes":[]');
    expect((await answerTo({ ...all, 'engine.brake': 'none', 'cars.brake': 'none' }))?.verdict).toBe('hold');
  });

  it('a hand brake of the cars, which answers no driver, is not waited for', async () => {
    const hand: Replies = { ...without('cars.pull'), 'cars.brake': 'hand' };
    expect(grow(hand, 'imperial').missing).toEqual([]);
    expect(grow(hand, 'imperial').open).toContain('cars.pull');
    expect((await answerTo(hand))?.verdict).not.toBe('cannot-tell');
    const air: Replies = { ...hand, 'cars.brake': 'automatic air', 'cars.worked': 'yes' };
    expect(grow(air, 'imperial').missing).toEqual(['cars.pull']);
  });

  it('a hand brake of the cars that stays on holds; a screw stops nothing, a lever does', async () => {
    const hand: Replies = {
      ...all,
      'cars.brake': 'hand',
      'people.driverOn': 'first car',
      'engine.brake': 'none',
    };
    const told = async (holds: string) => {
      const answer = await answerTo({ ...hand, 'cars.holds': holds });
      const [{ held, heldByDriver }] = answer!.cars;
      const stops = !answer!.findings.some(({ code }) => code === 'no-brake-answers');
      return { held: Math.max(held ?? 0, heldByDriver ?? 0) > 0, stops };
    };
    expect(await told('no')).toEqual({ held: false, stops: true });
    expect(await told('by a screw')).toEqual({ held: true, stops: false });
    expect(await told('by a lever')).toEqual({ held: true, stops: true });
    expect(grow(hand, 'imperial').open).toContain('cars.holds');
    expect(grow(all, 'imperial').open).not.toContain('cars.holds');
  });

  it('an engine with one brake to stop and another to park with is stopped by the one and held by the other', async () => {
    const two = (parks: string): Replies => ({
      ...without('engine.holds'),
      'cars.brake': 'none',
      'engine.parks': parks,
    });
    const told = async (parks: string) => {
      const answer = await answerTo(two(parks));
      const codes = answer!.findings.map(({ code }) => code);
      const asked = answer!.findings.flatMap(({ measure }) => measure ?? []);
      return {
        by: answer!.cars[0].heldByDriver,
        stops: !codes.includes('no-brake-answers'),
        parks: !codes.includes('no-parking-brake'),
        asks: asked.some((path) => /^vehicle\.brakes\..*parking.*\.force$/.test(path)),
        word: answer!.verdict,
      };
    };
    expect(await told('60')).toMatchObject({ stops: true, parks: true, asks: false });
    expect((await told('60')).by).toBeGreaterThan(0);
    // The same stop with a brake that parks and with none: what only parks stops nothing.
    const way = async (parks: string) => (await answerTo(two(parks)))!.cars[0].stopped;
    expect(await way('60')).toBe(await way('none'));
    // One that nobody pulled holds nothing yet, and is asked for.
    expect(await told('yes')).toMatchObject({ stops: true, parks: true, asks: true, word: 'limits' });
    expect((await told('yes')).by).toBeNull();
    expect(grow(two('yes'), 'imperial').open).toContain('engine.parks');
    expect(grow(two('60'), 'imperial').open).not.toContain('engine.parks');
    // That the brake which stops lets go costs nothing then.
    expect(grow(two('60'), 'imperial').open).not.toContain('engine.holds');
    expect(grow(two('none'), 'imperial').open).toContain('engine.holds');
    expect(await told('none')).toMatchObject({ by: 0, parks: false, asks: false });
  }, 30_000);

  it('cars with a brake through the train have a screw or lever besides', async () => {
    const brakes = (parks: string): unknown =>
      JSON.parse(JSON.stringify(grow({ ...all, 'cars.parks': parks }, 'imperial').paper)).train.vehicles[1]
        .vehicle.brakes;
    const air = { kind: 'automatic-vacuum', force: '30 lbf' };
    expect(brakes('20')).toEqual([
      air,
      { name: 'parking brake', kind: 'mechanical', force: '20 lbf', parking: true },
    ]);
    expect(brakes('yes')).toEqual([air, { name: 'parking brake', kind: 'mechanical', parking: true }]);
    expect(brakes('none')).toEqual([air]);
    expect(grow({ ...all, 'cars.brake': 'hand' }, 'imperial').open).not.toContain('cars.parks');
    const held = async (parks: string) =>
      (await answerTo({ ...without('engine.holds'), 'cars.parks': parks }))!.cars[0].heldByAll;
    expect(await held('200')).toBeGreaterThan((await held('none')) ?? 0);
    expect(await held('yes')).toBeNull();
  }, 30_000);

  it('a screw says what it comes to, before anybody takes it for a brake to stop with', () => {
    expect(tellReply('engine.holds', 'by a screw', 'us')).toContain('nothing on the engine stops the train');
    expect(tellReply('engine.holds', 'by a lever', 'us')).toBe('');
    expect(tellReply('engine.parks', 'yes', 'us')).toBe(fieldOf('engine.parks').cost);
    expect(tellReply('engine.parks', '60', 'us')).toBe('');
  });

  it('a brake through the train that nobody says the engine works is not worked', async () => {
    const { paper } = grow(without('cars.worked'), 'imperial');
    expect(JSON.stringify(paper)).toContain('"supplies":[]');
    // It stops nothing, so that no word waits for how hard it brakes: what New says its files say too.
    const unsaid = grow(without('cars.worked', 'cars.pull'), 'imperial');
    expect(unsaid.missing).toEqual([]);
    expect(unsaid.open).toEqual(expect.arrayContaining(['cars.pull', 'cars.worked']));
    expect((await answerTo(without('cars.worked', 'cars.pull')))!.verdict).toBe(
      (await answerTo({ ...without('cars.worked', 'cars.pull'), 'cars.brake': 'none' }))!.verdict,
    );
  });
});
