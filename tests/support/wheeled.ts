/** A train whose wheels are all measured, on a line with one frog that they pass; and either otherwise. All made up. */
import { exact, type Quantity } from '../../engine/base/quantity.ts';
import { openOuting } from '../../engine/outing/open.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Finding } from '../../engine/questions/finding.ts';
import { askWheels } from '../../engine/questions/wheels/ask.ts';
import type { Flangeway, Line } from '../../engine/things/line/types.ts';
import type { Wheelset } from '../../engine/things/wheel/types.ts';
import { plain } from './rules.ts';

const IN = 0.0254;

/** Of 7¼ in gauge, by inches: 6.870 back to back, flange 5/32, height 5/32, width 3/4. */
export const wheelset = (changes: Partial<Wheelset> = {}): Wheelset => ({
  id: 'axle',
  name: 'axle',
  backToBack: [6.87 * IN, 6.872 * IN, 6.871 * IN],
  flangeThickness: exact((5 / 32) * IN),
  flangeHeight: (5 / 32) * IN,
  width: 0.75 * IN,
  ...changes,
});

export const frogAt = (at: number, changes: Partial<Flangeway> = {}): Flangeway => ({
  id: 'north-points-1',
  name: 'North points',
  at,
  guardCheck: 7.05 * IN,
  guardFace: 6.82 * IN,
  depth: 0.25 * IN,
  ...changes,
});

export const between = (low: number, high: number): Quantity => ({
  value: (low + high) / 2,
  low,
  high,
  how: 'measured',
});

/** The odd wheelset is the first of the last vehicle. */
export function wheeled(
  odd: Partial<Wheelset> = {},
  flangeways: readonly Flangeway[] = [frogAt(30)],
  line: Partial<Line> = {},
  cars = 2,
): Outing {
  const base = plain(cars);
  const gauge = 7.25 * IN;
  const vehicles = base.train.vehicles.map((v, i, all) => ({
    ...v,
    gauge,
    wheelsets: Array.from({ length: v.groups.reduce((n, g) => n + g.axles, 0) }, (_, k) => ({
      ...wheelset(i === all.length - 1 && k === 0 ? odd : {}),
      id: `axle-${k + 1}`,
      name: `axle ${k + 1}`,
    })),
  }));
  return {
    ...base,
    line: { ...base.line, gauge, places: [], flangeways, ...line },
    train: { ...base.train, vehicles },
  };
}

export const wheelsSay = (outing: Outing): readonly Finding[] => askWheels(openOuting(outing)).findings;
