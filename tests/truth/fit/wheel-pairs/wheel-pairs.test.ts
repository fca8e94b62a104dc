import { expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import { exact } from '../../../../engine/base/quantity.ts';
import type { Finding } from '../../../../engine/questions/finding.ts';
import { printedIn } from '../../../support/measured.ts';
import { frogAt, wheeled, wheelsSay } from '../../../support/wheeled.ts';

const IN = 0.0254;
const printed = printedIn(import.meta.url, 'A');

/** One wheelset of standard gauge on class 1 track at its limits; the others stand well inside. */
const at = (back: number[], height: number): readonly Finding[] => {
  const frog = frogAt(30, { guardCheck: 54.125 * IN, guardFace: 53.25 * IN, depth: 1.375 * IN });
  const inside = {
    backToBack: [53.26 * IN],
    flangeThickness: exact(0.8 * IN),
    flangeHeight: 1 * IN,
    width: 5 * IN,
  };
  const outing = wheeled({}, [frog], { gauge: 56.5 * IN });
  const vehicles = outing.train.vehicles.map((v, i, all) => ({
    ...v,
    gauge: 56.5 * IN,
    wheelsets: (v.wheelsets ?? []).map((w, k) => ({
      ...w,
      ...inside,
      ...(i === all.length - 1 && k === 0
        ? {
            backToBack: back.map((b) => b * IN),
            flangeThickness: exact((15 / 16) * IN),
            flangeHeight: height * IN,
          }
        : {}),
    })),
  }));
  return wheelsSay({ ...outing, train: { ...outing.train, vehicles } });
};
const held = (of: readonly Finding[]) => of.filter((f) => f.severity === 'forbids');
const inches = (f: Finding | undefined, of: 'found' | 'required'): number => (f?.[of]?.si ?? Number.NaN) / IN;

it('the widest wheelset within its limits strikes a frog within its limits', () => {
  const [strikes, ...more] = held(at([53.375], 1));
  expect([strikes?.code, more.length]).toEqual(['wheel-strikes-frog', 0]);
  printed.figure('wheel check', inches(strikes, 'found'), 54.3125, 1e-9, 'in');
  printed.figure('guard check', inches(strikes, 'required'), 54.125, 1e-9, 'in');
});

it('the narrowest binds between guard rail and wing within theirs', () => {
  const [binds, ...more] = held(at([53], 1));
  expect([binds?.code, more.length]).toEqual(['wheelset-binds-at-guard', 0]);
  printed.figure('back to back', inches(binds, 'found'), 53, 1e-9, 'in');
  printed.figure('guard face', inches(binds, 'required'), 53.25, 1e-9, 'in');
});

it('the deepest flange runs on the shallowest floor', () => {
  const floor = held(at([53.25], 1.5)).find((f) => f.code === 'flange-strikes-floor');
  printed.figure('flange height', inches(floor, 'found'), 1.5, 1e-9, 'in');
  printed.figure('flangeway depth', inches(floor, 'required'), 1.375, 1e-9, 'in');
});

it('a back-to-back may vary by a quarter of an inch on standard gauge', () => {
  printed.figure('varies', assumedValues.practice['wheel-runout'].value * 56.5, 0.25, 1e-9, 'in');
});
