/** Plans of transitions of five forms: at end and middle as published, at 101 points as a general-purpose integrator has them. */
import { describe, expect, it } from 'vitest';
import { layPlan, type Spot, spotAt } from '../../../../engine/things/line/plan.ts';
import type { Line } from '../../../../engine/things/line/types.ts';
import { printedIn } from '../../../support/measured.ts';
import { integrate } from '../../../support/odex.ts';

/** Curvatures at both ends, 1/m, and the length between, m. */
interface Eased {
  readonly first: number;
  readonly last: number;
  readonly length: number;
}

const PUBLISHED: Eased = { first: 1 / 1000, last: 1 / 300, length: 100 };
type Form = (u: number) => number;

const forms: Readonly<Record<'clothoid' | 'Bloss' | 'cosine' | 'Helmert' | 'sine', Form>> = {
  clothoid: (u) => u,
  Bloss: (u) => 3 * u * u - 2 * u ** 3,
  cosine: (u) => (1 - Math.cos(Math.PI * u)) / 2,
  Helmert: (u) => (u < 0.5 ? 2 * u * u : 1 - 2 * (1 - u) ** 2),
  sine: (u) => u - Math.sin(2 * Math.PI * u) / (2 * Math.PI),
};
const names = ['clothoid', 'Bloss', 'cosine', 'Helmert', 'sine'] as const;

/** In pieces whose curvature is straight. */
function placed(form: Form, { first, last, length }: Eased, pieces: number): (at: number) => Spot {
  const step = length / pieces;
  const curvature = (i: number): number => first + (last - first) * form(i / pieces);
  const curves = Array.from({ length: pieces }, (_, i) => ({
    from: i * step,
    to: (i + 1) * step,
    startCurvature: curvature(i),
    endCurvature: curvature(i + 1),
    gaugeWidening: 0,
  }));
  const plan = layPlan({ loop: false, length, curves } as unknown as Line, 0, length);
  return (at) => {
    const spot: Spot = { x: 0, y: 0, cos: 1, sin: 0 };
    spotAt(plan, at, spot);
    return spot;
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly way: number;
}

/** dθ = κ, dx = cos θ, dy = sin θ by a library's extrapolation, hundredth by hundredth of the length. */
function integrated(form: Form, { first, last, length }: Eased): Point[] {
  const points: Point[] = [{ x: 0, y: 0, way: 0 }];
  let state = [0, 0, 0];
  for (let i = 0; i < 100; i++) {
    state = integrate(
      (s, [, , way]) => [Math.cos(way), Math.sin(way), first + (last - first) * form(s / length)],
      (i * length) / 100,
      state,
      ((i + 1) * length) / 100,
      1e-13,
    );
    points.push({ x: state[0], y: state[1], way: state[2] });
  }
  return points;
}

const published = printedIn(import.meta.url, 'C');

describe('as published', () => {
  it.each([
    ['clothoid', 1, 5e-9, [99.4068642448, 8.8579786321], [49.9566969513, 1.7352795135]],
    // Pieces of a metre cut the corners of its curvature: by half a millimetre in a hundred metres.
    ['Bloss', 100, 5e-4, [99.4381286127, 8.4706823198], [49.9657730948, 1.5410775795]],
  ] as const)('%s', (form, pieces, within, end, middle) => {
    for (const [at, [x, y]] of [
      [100, end],
      [50, middle],
    ] as const) {
      const spot = placed(forms[form], PUBLISHED, pieces)(at);
      published.figure(`${form} x at ${at} m`, spot.x, x, within, 'm');
      published.figure(`${form} y at ${at} m`, spot.y, y, within, 'm');
    }
  });
});

/** The lists have ten decimals. What this tells where their points lie it tells between them too. */
it.each([
  ['clothoid', [99.4068642448, 8.8579786321], [49.9566969513, 1.7352795135]],
  ['Bloss', [99.4381286127, 8.4706823198], [49.9657730948, 1.5410775795]],
] as const)(
  'the integrator has the published points of the %s to their last decimals',
  (form, end, middle) => {
    const points = integrated(forms[form], PUBLISHED);
    for (const [i, [x, y]] of [
      [100, end],
      [50, middle],
    ] as const) {
      expect(Math.abs(points[i].x - x)).toBeLessThan(2e-10);
      expect(Math.abs(points[i].y - y)).toBeLessThan(2e-10);
    }
  },
);

const cases: readonly (readonly [string, Eased])[] = [
  ['1000 m to 300 m in 100 m', PUBLISHED],
  ['300 m to 1000 m in 100 m', { first: 1 / 300, last: 1 / 1000, length: 100 }],
  ['straight to 300 m in 100 m', { first: 0, last: 1 / 300, length: 100 }],
  ['one hand to the other in 100 m', { first: 1 / 600, last: -1 / 300, length: 100 }],
  ['straight to 12 m in 6 m', { first: 0, last: -1 / 12, length: 6 }],
];

describe.each(cases)('%s, at 101 points', (_, eased) => {
  it.each(names)('%s lies where the integrator has it', (name) => {
    const form = forms[name];
    const points = integrated(form, eased);
    const worst = (pieces: number): number => {
      const at = placed(form, eased, pieces);
      return Math.max(
        ...points.map(({ x, y, way }, i) => {
          const spot = at((i * eased.length) / 100);
          const turned = Math.abs(Math.sin(way) * spot.cos - Math.cos(way) * spot.sin);
          return Math.max(Math.hypot(spot.x - x, spot.y - y), turned * eased.length);
        }),
      );
    };
    // What pieces of straight curvature leave out falls with their square; of the clothoid they leave out nothing.
    if (name === 'clothoid') return expect(worst(1)).toBeLessThan(1e-8 * eased.length);
    expect(worst(100)).toBeLessThan(1e-5 * eased.length);
    expect(worst(1000)).toBeLessThan(1e-7 * eased.length);
    return undefined;
  });
});
