import { describe, expect, it } from 'vitest';
import { exact } from '../../../../engine/base/quantity.ts';
import type { Finding } from '../../../../engine/questions/finding.ts';
import type { Flangeway } from '../../../../engine/things/line/types.ts';
import { printedIn } from '../../../support/measured.ts';
import { wheeled, wheelsSay } from '../../../support/wheeled.ts';

const IN = 0.0254;
const HAIR = 1e-6;
const printed = printedIn(import.meta.url, 'A');

interface Wheels {
  readonly back: number;
  readonly flange: number;
  readonly width: number;
}

/** A train whose wheelsets are all alike on track of a gauge, inches. */
const on = (
  gauge: number,
  { back, flange, width }: Wheels,
  ways: readonly Flangeway[] = [],
): readonly Finding[] => {
  const outing = wheeled({}, ways, { gauge: gauge * IN });
  const vehicles = outing.train.vehicles.map((v) => ({
    ...v,
    gauge: gauge * IN,
    wheelsets: (v.wheelsets ?? []).map((w) => ({
      ...w,
      backToBack: [back * IN],
      flangeThickness: exact(flange * IN),
      flangeHeight: 1 * IN,
      width: width * IN,
    })),
  }));
  return wheelsSay({ ...outing, train: { ...outing.train, vehicles } });
};

const held = (of: readonly Finding[], code: Finding['code']): Finding | undefined =>
  of.find((f) => f.code === code && f.severity === 'forbids');
const inches = (f: Finding | undefined, of: 'found' | 'required'): number => (f?.[of]?.si ?? Number.NaN) / IN;

describe('at the least gauge of every class', () => {
  const LEAST = 56;
  it('the widest wheelset goes between the rails with a flange of 1-5/16 in, and with no thicker one', () => {
    const wide = { back: 53.375, width: 5.5 };
    expect(held(on(LEAST, { ...wide, flange: 1.3125 }), 'wheelset-binds-in-gauge')).toBeUndefined();
    const binds = held(on(LEAST, { ...wide, flange: 1.3125 + HAIR }), 'wheelset-binds-in-gauge');
    printed.figure('least gauge', inches(binds, 'required'), 56, 1e-9, 'in');
    printed.figure('over the flanges', inches(binds, 'found'), 56, 1e-5, 'in');
  });
});

describe('at the widest gauge of its class', () => {
  it.each([
    ['excepted', 58.25, 4.3125],
    ['class 1', 58, 4.0625],
    ['classes 2 and 3', 57.75, 3.8125],
    ['classes 4 and 5', 57.5, 3.5625],
  ])(
    '%s, %s in: the narrowest and thinnest drops in unless its wheels are wider than %s in',
    (name, gauge, width) => {
      const narrow = { back: 53, flange: 15 / 16 };
      expect(held(on(gauge, { ...narrow, width: width + HAIR }), 'wheel-drops-in')).toBeUndefined();
      const drops = held(on(gauge, { ...narrow, width: width - HAIR }), 'wheel-drops-in');
      printed.figure(`tread left, ${name}`, inches(drops, 'found'), 0, 1e-5, 'in');
    },
  );
});

describe('two flangeways of the least width', () => {
  const GAP = 1.5;
  const gaps = { guard: GAP * IN, frog: GAP * IN, depth: 1.5 * IN };
  const ways: readonly Flangeway[] = [{ id: 'north-points', name: 'North points', at: 30, ...gaps }];
  const thin = { flange: 15 / 16, width: 5.5 };

  it('just let the narrowest wheelset through at the least gauge', () => {
    expect(held(on(56, { ...thin, back: 53 }, ways), 'wheelset-binds-at-guard')).toBeUndefined();
    const binds = held(on(56, { ...thin, back: 53 - HAIR }, ways), 'wheelset-binds-at-guard');
    printed.figure('face to face at 56 in', inches(binds, 'required'), 53, 1e-9, 'in');
  });

  it('bind even the widest at standard gauge: each within its limit, the pair is not', () => {
    const binds = held(on(56.5, { ...thin, back: 53.375 }, ways), 'wheelset-binds-at-guard');
    printed.figure('face to face at 56-1/2 in', inches(binds, 'required'), 53.5, 1e-9, 'in');
    expect(inches(binds, 'found')).toBeCloseTo(53.375, 9);
  });
});
