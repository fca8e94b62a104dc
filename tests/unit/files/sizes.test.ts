/**
 * Whatever is handed in is answered or refused at once: reading takes time by the size of the file, never its square.
 * Held by counting steps, which are the same on a busy machine; the seconds are told by `npm run bench`.
 */
import { afterAll, describe, expect, it } from 'vitest';
import { outingIn } from '../../../desk/outing-code.ts';
import { readSurvey } from '../../../desk/survey.ts';
import { firstCode } from '../../support/first-code.ts';
import { large } from '../../support/large-inputs.ts';
import { counter } from '../../support/steps.ts';
import { runs } from '../../support/tier.ts';

/** On a push a quarter of it. */
const SHARE = runs(0.25, 1);
/** Shares at which steps are counted. */
const [SMALL, TIMES] = [1 / 32, 4];

const steps = await counter();
afterAll(() => steps.close());

describe('eight megabytes of', () => {
  it.each(large)('$name', async ({ make, read, words }) => {
    const told = await read(make(SHARE));
    if (words) expect(told).toMatch(words);
    else expect(told).toBe('');
    // A hundred faults, each with the names of all fields that might have been meant.
    expect(told.length).toBeLessThan(100 * 400);
  });

  it.each(large.map(({ name }, index) => ({ name, index })))(
    '$name: no more steps than it is longer',
    async ({ index }) => {
      const few = await steps.count(index, SMALL);
      const many = await steps.count(index, SMALL * TIMES);
      expect(few.steps).toBeGreaterThan(0);
      // Pieces that were run equally often are told as one, so that the count may be half: a square would be sixteen.
      expect(many.steps / few.steps).toBeLessThan(2 * TIMES);
      // Nor is there anything that is gone through again and again at any size.
      expect(many.steps).toBeLessThan(MOST_STEPS * Math.max(many.letters, 100_000));
    },
  );
});

/** For each letter of what is read, or of what a code may hold. */
const MOST_STEPS = 60;

describe('a survey', () => {
  it('with a document type is refused', async () => {
    const text = '<!DOCTYPE g [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx/>';
    const about = { name: 'x', gauge: '7.25 in' };
    const { made, problems } = await readSurvey(new TextEncoder().encode(text), 'a.gpx', about);
    expect(made).toBeUndefined();
    expect(problems[0].message).toMatch(/a document type/);
  });

  it('of 200,000 satellite points becomes a line, and says how far it is', async () => {
    const track = large.find(({ name }) => name.startsWith('points of a satellite'));
    const content = new TextEncoder().encode(track?.make(runs(0.1, 1)));
    const heard: number[] = [];
    const { made, notes } = await readSurvey(content, 'a.gpx', {
      name: 'x',
      gauge: '7.25 in',
      share: (share) => void heard.push(share),
    });
    expect(made?.line.length).toBeCloseTo(89_005, -2);
    expect(made?.line.heights.length).toBeLessThanOrEqual(10_000);
    expect(notes.join()).toMatch(/Of \d+ smoothed heights/);
    expect(heard).toEqual([...heard].sort((a, b) => a - b));
    expect(heard.length).toBeGreaterThan(20);
  });
});

describe('a code', () => {
  it('that unpacks to more than an outing is refused before it is unpacked', async () => {
    const code = firstCode(' '.repeat(8_000_000));
    expect(code.length).toBeLessThan(20_000);
    const asked = DecompressionStream.prototype;
    const readable = Object.getOwnPropertyDescriptor(asked, 'readable')?.get as () => ReadableStream;
    let unpacked = 0;
    Object.defineProperty(asked, 'readable', {
      configurable: true,
      get(this: DecompressionStream) {
        const counted = new TransformStream({
          transform: (chunk: Uint8Array, out) => {
            unpacked += chunk.length;
            out.enqueue(chunk);
          },
        });
        return readable.call(this).pipeThrough(counted);
      },
    });
    try {
      expect(await outingIn(code)).toEqual({ fault: expect.stringContaining('more than an outing') });
    } finally {
      Object.defineProperty(asked, 'readable', { configurable: true, get: readable });
    }
    expect(unpacked).toBeGreaterThan(0);
    expect(unpacked).toBeLessThan(1_500_000);
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
