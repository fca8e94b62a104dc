/** The witness itself: closed forms, its own chance, and that it shares nothing with the engine. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Line } from '../../engine/things/line/types.ts';
import { randomOuting } from './against/outings.ts';
import { chance, drawn } from './chance.ts';
import { groundOf, heightAt, meanBend, meanGrade } from './ground.ts';
import { dealer, type Hand, hand, likelyDeal, tableOf } from './hand.ts';
import { skidding, slidingWay } from './slide.ts';
import { nothingTold, stop, type Told, wayAhead } from './stop.ts';
import { answering, G, leftOnTail } from './train.ts';

const here = new URL('.', import.meta.url).pathname;

describe('the witness shares nothing', () => {
  const own = readdirSync(here).filter((f) => f.endsWith('.ts') && !f.endsWith('.test.ts'));
  it('is looked at', () => expect(own.length).toBeGreaterThan(7));
  it('imports of the engine are types alone, and nothing else of the house', () => {
    for (const file of own) {
      const text = readFileSync(here + file, 'utf8');
      for (const [line, from] of text.matchAll(/^(?:import|export)[^;]*?from '([^']+)'/gms)) {
        const types =
          /^import type /.test(line) &&
          /^\.\.\/\.\.\/engine\/.*\/?(types|quantity|kinds\/index)\.ts$/.test(from);
        expect(types || /^\.\/[a-z-]+\.ts$/.test(from), `${file}: ${line}`).toBe(true);
      }
      expect(text, file).not.toMatch(/import\(/);
    }
  });
});

const level: Line = {
  ...randomOuting(1).line,
  loop: false,
  length: 1000,
  heights: [
    { at: 0, height: 0 },
    { at: 1000, height: 0 },
  ],
  curves: [],
  cants: [],
};

/** A hand that is the same at every speed: one brake on one vehicle of 1000 kg and 100 kg of wheels. */
function plainHand(changes: Partial<Hand> = {}): Hand {
  return {
    mass: Float64Array.of(1000),
    inertia: 1100,
    a: 0,
    b: 0,
    c: 0,
    curve: 0,
    reaction: 0,
    utilisation: 0.6,
    notice: 1,
    skid: { floor: 0.3, fall: 1.4 },
    grip: Float64Array.of(0.25 * 1000 * G),
    at: Float64Array.of(1),
    base: Float64Array.of(1),
    axles: Float64Array.of(2),
    wheels: Int16Array.of(0),
    material: Int16Array.of(-1),
    push: Float64Array.of(1100),
    dead: Float64Array.of(0),
    build: Float64Array.of(0),
    handle: Int16Array.of(0),
    alone: [false],
    frictions: [],
    ...changes,
  };
}

function stopOn(line: Line, of: Hand, speed: number): Told {
  const outing: Outing = { ...randomOuting(1), line, direction: 'forward' };
  const [car] = tableOf(outing, []).cars;
  const told = nothingTold();
  stop(wayAhead(groundOf(outing), [car], 300), of, speed, told);
  return told;
}

describe('a stop by closed form', () => {
  it('v²/2a, and the reaction before it', () => {
    expect(stopOn(level, plainHand(), 3).distance).toBeCloseTo(4.5, 3);
    expect(stopOn(level, plainHand({ reaction: 1.3 }), 3).distance).toBeCloseTo(4.5 + 3.9, 3);
  });
  it('a ramp of T to a steady a: v·T − a·T²/6 + (v − a·T/2)²/2a', () => {
    const expected = 3 * 2 - 4 / 6 + (3 - 1) ** 2 / 2;
    expect(stopOn(level, plainHand({ build: Float64Array.of(2) }), 3).distance).toBeCloseTo(expected, 3);
  });
  it('a fall takes weight × fall off the brake', () => {
    const heights = [
      { at: 0, height: 0 },
      { at: 1000, height: -20 },
    ];
    const slows = (1100 - 0.02 * 1000 * G) / 1100;
    expect(stopOn({ ...level, heights }, plainHand(), 3).distance).toBeCloseTo(4.5 / slows, 3);
    const weak = plainHand({ push: Float64Array.of(190) });
    const runs = stopOn({ ...level, heights }, weak, 3);
    expect(runs.distance).toBe(Number.POSITIVE_INFINITY);
    expect(runs.gained).toBeGreaterThan(0.05);
  });
  const hard = (changes: Partial<Hand> = {}): Hand =>
    plainHand({ push: Float64Array.of(3000), grip: Float64Array.of(2200), ...changes });
  it('wheels that nobody eases lock, and keep the friction of skidding: d = M·∫ v dv ÷ grip·skid(v)', () => {
    let way = 0;
    for (let v = 0.0005; v < 3; v += 0.001) way += (0.001 * v) / (2 * skidding(v, hard().skid));
    expect(stopOn(level, hard({ alone: [true] }), 3).distance).toBeCloseTo(way, 2);
  });
  it('an eased brake slides by skid friction until noticed, then keeps its share of adhesion', () => {
    // 3000 asked of 2200: slides all the way, so that 0.6 of 2 m/s² is kept afterwards.
    let [v, way] = [3, 0];
    for (let t = 0; t < 1; t += 0.0005) {
      way += 0.0005 * v;
      v -= 0.0005 * 2 * skidding(v, hard().skid);
    }
    expect(stopOn(level, hard(), 3).distance).toBeCloseTo(way + (v * v) / 2.4, 2);
  });
  it('near its grip it slides on a share of the way, with no step', () => {
    expect([0.7, 0.75, 1, 1.25, 2].map(slidingWay)).toEqual([0, 0, 0.5, 1, 1]);
    // 1980 asked of 2200, r = 0.9: p = 0.3, kept 0.7·0.9 + 0.3·0.6 = 0.81 of 2 m/s².
    const near = hard({ push: Float64Array.of(1980), notice: 0 });
    expect(stopOn(level, near, 3).distance).toBeCloseTo(4.5 / 1.62, 3);
  });
});

describe('the ground', () => {
  it('is one over the seam of a loop, and the same read backward', () => {
    for (const seed of [3, 6, 9, 12]) {
      const outing = randomOuting(seed);
      const { length } = outing.line;
      const forward = groundOf({ ...outing, direction: 'forward' });
      const back = groundOf({ ...outing, direction: 'reverse' });
      for (let x = 0.3; x < length - 3; x += 7.7) {
        expect(heightAt(back, length - x)).toBeCloseTo(heightAt(forward, x), 9);
        expect(meanBend(back, length - x - 2, length - x)).toBeCloseTo(meanBend(forward, x, x + 2), 9);
      }
      if (!outing.line.loop) continue;
      expect(meanGrade(forward, -1, 1)).toBeCloseTo(meanGrade(forward, length - 1, length + 1), 9);
    }
  });
  it('nodes some way apart change no stop by more than 0.2 %', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const outing = randomOuting(seed);
      const table = tableOf(outing, answering(outing));
      const ground = groundOf(outing);
      const [coarse, fine] = [nothingTold(), nothingTold()];
      stop(wayAhead(ground, table.cars, 40), hand(table, likelyDeal), 2.5, coarse, { step: 0.01 });
      stop(wayAhead(ground, table.cars, 40, 0.01), hand(table, likelyDeal), 2.5, fine, { step: 0.001 });
      if (fine.distance === Number.POSITIVE_INFINITY) continue;
      expect(Math.abs(coarse.distance / fine.distance - 1), `${seed}`).toBeLessThan(2e-3);
    }
  });
});

describe('chance', () => {
  const q: Quantity = { low: 1, value: 2, high: 5, how: 'assumed' };
  const share = (triangle: 'halves' | 'textbook', below: number): number => {
    const uniform = chance(4);
    let n = 0;
    for (let i = 0; i < 40_000; i++) if (drawn(q, uniform(), triangle) < below) n++;
    return n / 40_000;
  };
  it('halves: half below the likely figure; textbook: as the triangle has it', () => {
    expect(share('halves', 2)).toBeCloseTo(0.5, 1.9);
    expect(share('textbook', 2)).toBeCloseTo(0.25, 1.9);
    expect(share('textbook', 3.5)).toBeCloseTo(1 - 2.25 / 12, 1.9);
    expect(share('halves', 1) + share('textbook', 1)).toBe(0);
  });
  it('deals what belongs to the whole train once', () => {
    const deal = dealer(chance(9), 'halves')();
    expect(deal(q, 'rails')).toBe(deal(q, 'rails'));
    expect(deal(q)).not.toBe(deal(q));
  });
});

describe('brakes', () => {
  it('of a broken pipe answer on the engine side alone, and come on by themselves on a tail', () => {
    const base = randomOuting(1);
    const car = base.train.vehicles.find((v) => v.brakes.some((b) => b.kind === 'automatic-vacuum'));
    const engine = base.train.vehicles.find((v) => v.role === 'engine');
    if (!car || !engine) throw new Error('no braked car');
    const vehicles = [engine, { ...car, id: 'a' }, { ...car, id: 'b' }];
    const outing = { ...base, train: { ...base.train, vehicles, pipeBrokenAfter: [1] } };
    expect(answering(outing).map((b) => b.car)).toEqual([0, 1]);
    expect(leftOnTail(outing, 1).map((b) => b.car)).toEqual([1]);
    const whole = { ...outing, train: { ...outing.train, pipeBrokenAfter: [] } };
    expect(leftOnTail(whole, 1).map((b) => b.car)).toEqual([1, 2]);
  });
});
