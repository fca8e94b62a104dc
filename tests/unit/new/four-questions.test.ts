/** Own train and line from four questions: every reply left out once, everything left out, nothing of an example. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldKey, Replies } from '../../../desk/new/field.ts';
import { grow } from '../../../desk/new/make.ts';
import { fieldKeys, fieldOf } from '../../../desk/new/questions.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { all } from '../../support/four-replies.ts';
import { runs } from '../../support/tier.ts';

const without = (...keys: FieldKey[]): Replies =>
  Object.fromEntries(Object.entries(all).filter(([key]) => !keys.includes(key as FieldKey)));

async function answerTo(replies: Replies): Promise<Answer | undefined> {
  const { faults, paper } = grow(replies, 'imperial');
  expect(faults).toEqual([]);
  if (!paper) return undefined;
  const read = await readOuting({ path: 'own', content: JSON.stringify(paper) }, async () => undefined);
  expect(read.ok ? [] : read.problems).toEqual([]);
  return read.ok ? answerOuting(read.value, { remedies: false }) : undefined;
}

describe('own train and line', () => {
  it('with everything told has a word', async () => {
    expect(grow(all, 'imperial').missing).toEqual([]);
    expect(['go', 'limits']).toContain((await answerTo(all))?.verdict);
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
    expect(JSON.stringify(grow({ ...all, 'engine.weight': '270' }, 'metric').paper)).toContain(
      '"tare":"270 kg"',
    );
    expect(grow({ ...without('engine.pull'), 'engine.power': '750' }, 'imperial').faults).toEqual([
      expect.objectContaining({ key: 'engine.power' }),
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

  it('a brake through the train that nobody says the engine works is not worked', async () => {
    const { paper } = grow(without('cars.worked'), 'imperial');
    expect(JSON.stringify(paper)).toContain('"supplies":[]');
  });
});
