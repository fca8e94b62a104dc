/** Plans of transitions of five forms: as published, and as integrated by Simpson's rule. */
import { describe, expect, it } from 'vitest';
import { layPlan, type Spot, spotAt } from '../../../../engine/things/line/plan.ts';
import type { Line } from '../../../../engine/things/line/types.ts';
import { printedIn } from '../../../support/measured.ts';

const LENGTH = 100;
const [FIRST, LAST] = [1 / 1000, 1 / 300];
type Form = (u: number) => number;

const forms: Readonly<Record<'clothoid' | 'Bloss' | 'cosine' | 'Helmert' | 'sine', Form>> = {
  clothoid: (u) => u,
  Bloss: (u) => 3 * u * u - 2 * u ** 3,
  cosine: (u) => (1 - Math.cos(Math.PI * u)) / 2,
  Helmert: (u) => (u < 0.5 ? 2 * u * u : 1 - 2 * (1 - u) ** 2),
  sine: (u) => u - Math.sin(2 * Math.PI * u) / (2 * Math.PI),
};
const curvature = (form: Form, s: number): number => FIRST + (LAST - FIRST) * form(s / LENGTH);

/** In pieces whose curvature is straight. */
function placed(form: Form, pieces: number, at: number): Spot {
  const step = LENGTH / pieces;
  const curves = Array.from({ length: pieces }, (_, i) => ({
    from: i * step,
    to: (i + 1) * step,
    startCurvature: curvature(form, i * step),
    endCurvature: curvature(form, (i + 1) * step),
    gaugeWidening: 0,
  }));
  const plan = layPlan({ loop: false, length: LENGTH, curves } as unknown as Line, 0, LENGTH);
  const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
  spotAt(plan, at, spot);
  return spot;
}

/** θ = ∫κ, x = ∫cos θ, y = ∫sin θ, each by Simpson's rule over steps of a centimetre. */
function integrated(
  form: Form,
  to: number,
): { readonly x: number; readonly y: number; readonly way: number } {
  const [steps, h] = [to * 100, 0.01];
  let [x, y, way] = [0, 0, 0];
  for (let i = 0; i < steps; i++) {
    const s = i * h;
    const turn = (over: number): number =>
      (over / 6) * (curvature(form, s) + 4 * curvature(form, s + over / 2) + curvature(form, s + over));
    const [middle, end] = [way + turn(h / 2), way + turn(h)];
    x += (h / 6) * (Math.cos(way) + 4 * Math.cos(middle) + Math.cos(end));
    y += (h / 6) * (Math.sin(way) + 4 * Math.sin(middle) + Math.sin(end));
    way = end;
  }
  return { x, y, way };
}

const published = printedIn(import.meta.url, 'C');

describe('as published', () => {
  it.each([
    ['clothoid', 1, 5e-9, [99.4068642448, 8.8579786321], [49.9566969513, 1.7352795135]],
    // Pieces of a metre cut the corners of its curvature: by half a millimetre in a hundred metres.
    ['Bloss', 100, 5e-4, [99.4381286127, 8.4706823198], [49.9657730948, 1.5410775795]],
  ] as const)('%s', (form, pieces, within, end, middle) => {
    for (const [at, [x, y]] of [
      [LENGTH, end],
      [LENGTH / 2, middle],
    ] as const) {
      const spot = placed(forms[form], pieces, at);
      published.figure(`${form} x at ${at} m`, spot.x, x, within, 'm');
      published.figure(`${form} y at ${at} m`, spot.y, y, within, 'm');
    }
  });
});

it.each(['Bloss', 'cosine', 'Helmert', 'sine', 'clothoid'] as const)(
  '%s in pieces of a metre lies where its integral does within half a millimetre, in pieces of 10 cm within 5 µm',
  (name) => {
    const form = forms[name];
    for (const at of [50, 100]) {
      const own = integrated(form, at);
      const off = (pieces: number): number => {
        const spot = placed(form, pieces, at);
        return Math.hypot(spot.x - own.x, spot.y - own.y);
      };
      expect(off(100)).toBeLessThan(5e-4);
      expect(off(1000)).toBeLessThan(5e-6);
    }
    // All turn by the mean of both curvatures: they are the same about their middle.
    const { cos, sin } = placed(form, 100, LENGTH);
    expect(Math.atan2(sin, cos)).toBeCloseTo(((FIRST + LAST) / 2) * LENGTH, 6);
  },
);
