/** Where wheels run light: told, tabled and drawn from one map. */

import { describe, expect, it } from 'vitest';
import { lookAtBalance } from '../../../desk/balance.ts';
import { lightestPlace, lightLines, lightStretches } from '../../../desk/light-wheels.ts';
import { answerOuting } from '../../../engine/answer/complete.ts';
import type { Answer } from '../../../engine/answer/types.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { WheelMap } from '../../../engine/questions/balance/wheel-map.ts';
import { drawStrip } from '../../../views/strip/draw.ts';
import type { Shape } from '../../../views/strip/scene.ts';
import { stripModel, stripSvg } from '../../../views/strip/svg.ts';
import { stripWords } from '../../../views/strip/words.ts';
import type { Voice } from '../../../words/voice.ts';
import { randomOuting } from '../../support/random-outings.ts';

const outing: Outing = { ...randomOuting(4), direction: 'forward' };
const voice: Voice = { system: 'metric', wording: 'us', outing };
const answerOf = (o: Outing): Answer => answerOuting(o, { remedies: false, counts: false });
const answer = answerOf(outing);

const map = (share: readonly number[], by = share.map(() => 0)): WheelMap => ({
  at: Float64Array.from(share, (_, j) => j * 0.5),
  share: Float64Array.from(share),
  by: Int16Array.from(by),
  required: 0.6,
  unknown: [],
});

describe('where wheels run light', () => {
  it('gathers what is within a quarter of the allowed loss into stretches, each with its worst place', () => {
    expect(lightStretches(map([1, 0.71, 0.69, 0.62, 0.69, 0.7, 1, 0.5], [0, 0, 0, 1, 0, 0, 0, 2]))).toEqual([
      { from: 1, to: 2, at: 1.5, share: 0.62, by: 1 },
      { from: 3.5, to: 3.5, at: 3.5, share: 0.5, by: 2 },
    ]);
    expect(lightStretches(map([1, 0.9]))).toEqual([]);
  });

  it('is the least of what the closer look at balance finds for each vehicle', () => {
    const { data } = lookAtBalance(outing);
    const told = lightestPlace(answer.wheels);
    expect(told?.share).toBe(Math.min(...data.vehicles.map((v) => v.running.share)));
    expect(data.vehicles.find((v) => v.index === told?.by)?.running.share).toBe(told?.share);
  });

  it('turns with the direction of running, as the speeds do', () => {
    const back = answerOf({ ...outing, direction: 'reverse' });
    const { at, share } = back.wheels;
    expect(at[0]).toBeLessThan(at[1]);
    expect([...at]).toEqual([...(back.speeds?.at ?? [])]);
    expect(share.length).toBe(at.length);
  });

  it('says what it cannot weigh, and never rounds load up', () => {
    const { lines } = lightLines({ ...map([1, 0.6999]), unknown: [0] }, voice);
    const name = outing.train.vehicles[0].name;
    expect(lines).toEqual([
      `${name} at 1 m: 69 % of its load left`,
      `Cannot tell for ${name}: measure where the centre of gravity is`,
    ]);
    expect(lightLines({ ...map([Infinity], [-1]), unknown: [0] }, voice).lines).toHaveLength(1);
  });

  it('draws thin places as a caution, short ones as a limit, however far away', () => {
    const share = answer.wheels.at.map(() => 0.95);
    const put = (at: number, value: number): void => {
      share[Math.round(at / 0.5)] = value;
    };
    put(5, 0.65);
    put(outing.line.length - 5, 0.55);
    const wheels = { ...answer.wheels, share, required: 0.6 };
    const model = stripModel(outing, { ...answer, wheels }, voice);
    const inks = (from: number, to: number): unknown[] => {
      const view = { width: 200, height: 300, from, to, textSize: 12 };
      const band = (drawStrip(model, view, stripWords(voice)).children as Shape[]).find(
        (c) => c.attrs['class'] === 'wheels',
      );
      return ((band?.children ?? []) as Shape[]).map((c) => c.attrs['class']);
    };
    // One grid point of half a metre, where a pixel is more than that.
    expect(inks(0, outing.line.length)).toContain('weightthin');
    expect(inks(0, outing.line.length)).toContain('weightshort');
    expect(inks(0, 10)).toContain('weightthin');
    expect(inks(0, 10)).not.toContain('weightshort');
    expect(stripSvg(outing, answer, voice)).toContain('lightest wheel');
  });
});
