/** The line from above: true where the curves close, bent to close where they do not, and readable at any size. */
import { describe, expect, it } from 'vitest';
import { grow } from '../../../desk/new/make.ts';
import type { CurveElement, Line } from '../../../engine/things/line/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { chainageNear, drawPlan, drawPlanMoment, openPlan } from '../../../views/plan/draw.ts';
import { layLine, spotOn } from '../../../views/plan/lay.ts';
import { planWords } from '../../../views/plan/words.ts';
import { textWidth } from '../../../views/strip/letters.ts';
import type { Shape } from '../../../views/strip/scene.ts';
import { stripModel } from '../../../views/strip/svg.ts';
import { changedExample } from '../../support/changed-examples.ts';
import { dressed } from '../../support/dressed-outings.ts';
import { all } from '../../support/four-replies.ts';

const arc = (from: number, length: number, radius: number): CurveElement => ({
  from,
  to: from + length,
  startCurvature: 1 / radius,
  endCurvature: 1 / radius,
  gaugeWidening: 0,
});

/** Two straights of 100 m and two half circles of 20 m; the second of another radius where it is said. */
function oval(second = 20, loop = true): Line {
  const half = Math.PI * 20;
  const length = 200 + 2 * half;
  const heights = [
    { at: 0, height: 0 },
    { at: length, height: 0 },
  ];
  const curves = [arc(100, half, 20), arc(200 + half, half, second)];
  return { ...dressed(1).line, loop, length, heights, curves, places: [] };
}

describe('the plan', () => {
  it('of an oval is the oval, which misses nothing', () => {
    const laid = layLine(oval());
    expect(laid?.misses).toBeUndefined();
    if (!laid) return;
    const [left, right] = [Math.min(...laid.x), Math.max(...laid.x)];
    expect(right - left).toBeCloseTo(140, 1);
    expect(Math.max(...laid.y) - Math.min(...laid.y)).toBeCloseTo(40, 1);
    // The middle of the first half circle lies 20 m beyond the straight, 20 m to its left.
    const spot = spotOn(laid, 100 + Math.PI * 10);
    expect(spot.x).toBeCloseTo(120, 1);
    expect(spot.y).toBeCloseTo(20, 1);
  });

  it('of a loop whose curves do not lead back says by how much, and closes it', () => {
    const laid = layLine(oval(22));
    expect(laid?.open).toBe(false);
    // By hand: the second half circle turns 20/22 of half a turn, and ends 22 m and a little from where it should.
    expect(laid?.misses?.turned).toBeCloseTo(Math.PI * (1 + 20 / 22), 6);
    expect(laid?.misses?.whole).toBeCloseTo(2 * Math.PI, 9);
    const beta = (Math.PI * 20) / 22;
    const end = [100 - 100 - 22 * Math.sin(beta), 40 - 22 * (1 - Math.cos(beta))];
    expect(laid?.misses?.away).toBeCloseTo(Math.hypot(...end), 1);
    if (!laid) return;
    const last = laid.x.length - 1;
    expect(Math.hypot(laid.x[last], laid.y[last])).toBeLessThan(0.01);
    // A line from end to end is left as it is written.
    const plain = layLine(oval(22, false));
    expect(plain?.misses).toBeUndefined();
    expect(Math.hypot(plain?.x[last] ?? 0, plain?.y[last] ?? 0)).toBeCloseTo(Math.hypot(...end), 1);
  });

  it('is none where no curve is written', () => {
    expect(layLine({ ...oval(), curves: [] })).toBeUndefined();
  });

  it.each([
    ['steam-light', 334, 351],
    ['steam-light', 296, 310],
    ['heavy-air', 720, 432],
    ['heavy-air', 1400, 520],
  ])(
    'of %s at %i px: no word small, over another or outside; hands as the train runs',
    async (name, width, height) => {
      const outing = await changedExample(name, () => {});
      const voice = { outing, system: 'imperial', wording: 'us' } as const;
      const textSize = width < 600 ? 12 : 14;
      const words = planWords(voice);
      for (const facing of [1, -1] as const) {
        const model = { ...stripModel(outing, null, voice), facing };
        const plan = openPlan(outing, model, { width, height, textSize }, words);
        if (!plan) throw new Error('no plan');
        const texts = textsOf(drawPlan(model, plan, words, { head: 300, speed: 0 }));
        expect(texts.length).toBeGreaterThan(8);
        expect(texts.filter((t) => t.size < 12)).toEqual([]);
        expect(texts.filter((t) => t.x0 < 0 || t.x1 > width || t.y0 < 0 || t.y1 > height)).toEqual([]);
        const over = texts.flatMap((a, i) =>
          texts
            .slice(i + 1)
            .filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
            .map((b) => `${a.text} / ${b.text}`),
        );
        expect(over).toEqual([]);
        const said = texts.map((t) => t.text);
        expect(said).toContain(`45 ft curve ${facing > 0 ? 'left' : 'right'}`);
        expect(said.join(' ')).not.toContain('curves turn');
        expect(said.join(' ')).toContain('north');
      }
    },
  );

  it('says of a loop that does not close what its curves turn', async () => {
    const outing = await changedExample('steam-light', (paper) => {
      (paper['line'] as { curves: unknown[] }).curves.splice(3, 1);
    });
    const voice = { outing, system: 'imperial', wording: 'us' } as const;
    const plan = openPlan(
      outing,
      stripModel(outing, null, voice),
      { width: 720, height: 432, textSize: 14 },
      planWords(voice),
    );
    // By hand: without its right-hand curve of 160 ft over 235 ft, 20 of them either way easing, 77° more.
    expect(plan?.notes.join(' ')).toContain('curves turn 438°, not 360°');
  });

  it('is none where nobody said where the curves lie: a layout of our own is no line of theirs', async () => {
    const { paper } = grow({ ...all, 'line.curve': '60' }, 'imperial');
    const read = await readOuting({ path: 'told', content: JSON.stringify(paper) }, async () => undefined);
    if (!read.ok) throw new Error(read.problems[0].message);
    const outing = read.value;
    expect(outing.line.curves).not.toEqual([]);
    const voice = { outing, system: 'imperial', wording: 'us' } as const;
    const view = { width: 720, height: 432, textSize: 14 };
    expect(openPlan(outing, stripModel(outing, null, voice), view, planWords(voice))).toBeUndefined();
  });

  it('finds the place that is pointed at, and shows the train there', async () => {
    const outing = await changedExample('steam-light', () => {});
    const voice = { outing, system: 'metric', wording: 'uk' } as const;
    const words = planWords(voice);
    const model = stripModel(outing, null, voice);
    const plan = openPlan(outing, model, { width: 700, height: 420, textSize: 14 }, words);
    if (!plan) throw new Error('no plan');
    for (const s of [10, 333, 620, 870]) {
      const { x, y } = plan.fitted.at(s);
      expect(Math.abs(chainageNear(plan, x, y) - s)).toBeLessThan(1);
      const arrow = (drawPlanMoment(model, plan, { head: s, speed: 1 }).children ?? []).at(-1) as Shape;
      const [, tipX, tipY] = /^M(-?[\d.]+),(-?[\d.]+)/.exec(String(arrow.attrs['d'])) ?? [];
      expect(Math.hypot(Number(tipX) - x, Number(tipY) - y)).toBeCloseTo(0.8 * 14, 0);
    }
  });
});

interface Written {
  readonly text: string;
  readonly size: number;
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

function textsOf(shape: Shape): Written[] {
  const below = (shape.children ?? []).flatMap((child) => (typeof child === 'string' ? [] : textsOf(child)));
  if (shape.tag !== 'text') return below;
  const [text, size] = [String(shape.children?.[0]), Number(shape.attrs['font-size'])];
  const wide = textWidth(text, size);
  const share = { start: 0, middle: 0.5, end: 1 }[String(shape.attrs['text-anchor'])] ?? 0;
  const x0 = Number(shape.attrs['x']) - wide * share;
  const y = Number(shape.attrs['y']);
  return [{ text, size, x0, x1: x0 + wide, y0: y - size * 0.9, y1: y + size * 0.25 }, ...below];
}
