/** Sums of chains and impacts. */

import { input, notNegative, positive, result, type Sum, type SumProblem } from '../../base/sum.ts';
import { impact } from '../coupler/impact.ts';
import { leastBreakingLoad, workOfCatch } from './energy.ts';
import {
  barStiffness,
  chainDesignFactor,
  chainWorkingLoad,
  reducedMass,
  sharedForce,
  sharedSnatch,
  slackSpeed,
  snatchForce,
} from './formulas.ts';

const lessThan = (symbol: string, found: number, most: number): SumProblem => ({
  symbol,
  found: `${found} kg`,
  expected: `less than ${most} kg, the mass that it is part of`,
});

const stiffness = input('stiffness', 'stiffness', positive);

export const chainSums: readonly Sum[] = [
  {
    id: 'chain-working-load',
    inputs: [
      input('size', 'length', positive),
      input('grade-mark', 'count', { low: 30, high: 100, whole: true, default: 30 }),
    ],
    results: [result('working-load', 'force'), result('breaking-load', 'force')],
    equation: 'W = f(d, G);  B = n·W',
    letters: 'W working-load, f table, d size, G grade-mark, B breaking-load, n design-factor',
    remark:
      'f is read from a table, a size between two as the smaller; an unmarked chain counts as grade 30; n is 3 for grade 43, else 4',
    source: '49 CFR 393.108; EN 818-4 (metric grade 80); 1/8, 3/16, 7/32 and 9/32 in: suppliers’ charts',
    compute: ({ size, 'grade-mark': mark }) => {
      const load = chainWorkingLoad(mark, size);
      if (load === undefined)
        return {
          symbol: 'size',
          found: `${size}`,
          expected:
            'a grade of the table (30, 43, 70, 80, 100) and a size not below its smallest: 1/8 in of 30, 1/4 in of 43 and 70, 7/32 in of 80 and 100',
        };
      return [load, load * chainDesignFactor(mark)];
    },
  },
  {
    id: 'weakest-link',
    inputs: [
      input('chain', 'force', positive),
      input('link', 'force', positive),
      input('hook', 'force', positive),
      input('attachment', 'force', positive),
    ],
    results: [result('working-load', 'force')],
    equation: 'W = min(c, l, h, a)',
    letters: 'W working-load, c chain, l link, h hook, a attachment',
    source: 'statics: parts in line carry the same force',
    compute: ({ chain, link, hook, attachment }) => [Math.min(chain, link, hook, attachment)],
  },
  {
    id: 'chain-snatch',
    inputs: [
      input('mass', 'mass', positive),
      input('other-mass', 'mass', positive),
      input('slack', 'length', notNegative),
      input('pull', 'force', { low: 0, default: 0 }),
      input('speed', 'speed', { low: 0, high: 30, default: 0 }),
      stiffness,
      input('sprung', 'mass', { low: 0, default: 0 }),
      input('other-sprung', 'mass', { low: 0, default: 0 }),
    ],
    results: [result('force', 'force'), result('speed-at-end', 'speed')],
    equation:
      'P = F + √(F² + k·µ₁·v²);  v = √(u² + 2·F·s/µ);  µ = m₁·m₂/(m₁ + m₂);  µ₁ = (m₁ − n₁)·(m₂ − n₂)/(m₁ + m₂ − n₁ − n₂)',
    letters:
      'P force, F pull, k stiffness, v speed-at-end, u speed, s slack, µ reduced-mass, µ₁ reduced-mass-without-what-is-sprung, m₁ mass, m₂ other-mass, n₁ sprung, n₂ other-sprung',
    source: 'energy balance; linear chain without damping',
    compute: ({
      mass,
      'other-mass': other,
      slack,
      pull,
      speed,
      stiffness: k,
      sprung,
      'other-sprung': second,
    }) => {
      if (sprung >= mass) return lessThan('sprung', sprung, mass);
      if (second >= other) return lessThan('other-sprung', second, other);
      const v = slackSpeed(speed, pull, slack, reducedMass(mass, other));
      return [snatchForce(v, k, reducedMass(mass - sprung, other - second), pull), v];
    },
  },
  {
    id: 'chain-energy',
    inputs: [
      input('pull', 'force', notNegative),
      input('slack', 'length', notNegative),
      input('length', 'length', positive),
      input('breaking', 'force', positive),
      input('elongation', 'ratio', { low: 0, open: true, high: 1, default: 0.15 }),
      input('fullness', 'ratio', { low: 0, open: true, high: 1, default: 0.58 }),
      input('moving', 'energy', { low: 0, default: 0 }),
    ],
    results: [result('must-break-at', 'force'), result('work', 'energy'), result('work-to-break', 'energy')],
    equation: 'B₁ = W/(c·ε·L);  W = F·(s + ε·L) + E;  E₁ = c·B·ε·L',
    letters:
      'B₁ must-break-at, W work, c fullness, ε elongation, L length, F pull, s slack, E moving, E₁ work-to-break, B breaking',
    source:
      'energy balance; elongation: ASTM A413 (from memory); fullness: as the assumed value chain-catch/fullness',
    compute: ({ pull, slack, length, breaking, elongation, fullness, moving }) => {
      const work = { pull, slack, length, elongation, fullness, moving };
      return [leastBreakingLoad(work), workOfCatch(work), fullness * breaking * elongation * length];
    },
  },
  {
    id: 'two-chains',
    inputs: [
      input('mass', 'mass', positive),
      input('other-mass', 'mass', positive),
      input('slack', 'length', notNegative),
      input('slack-difference', 'length', notNegative),
      input('pull', 'force', { low: 0, default: 0 }),
      input('speed', 'speed', { low: 0, high: 30, default: 0 }),
      stiffness,
    ],
    results: [result('shorter', 'force'), result('longer', 'force'), result('shorter-steady', 'force')],
    equation:
      '½·µ·v² + F·P₁/k = ½·P₁²/k + ½·k·max(0, P₁/k − d)²;  P₂ = max(0, P₁ − k·d);  F₁ = min(F, (F + k·d)/2);  v = √(u² + 2·F·s/µ);  µ = m₁·m₂/(m₁ + m₂)',
    letters:
      'µ reduced-mass, v speed-at-the-end-of-the-slack, F pull, k stiffness, d slack-difference, P₁ shorter, P₂ longer, F₁ shorter-steady, u speed, s slack, m₁ mass, m₂ other-mass',
    source: 'energy balance; linear chains without damping',
    compute: ({ mass, 'other-mass': other, slack, 'slack-difference': d, pull, speed, stiffness: k }) => {
      const reduced = reducedMass(mass, other);
      const { shortest, others } = sharedSnatch(
        2,
        d,
        slackSpeed(speed, pull, slack, reduced),
        k,
        reduced,
        pull,
      );
      return [shortest, others, sharedForce(2, d, k, pull).shortest];
    },
  },
  {
    id: 'impact',
    inputs: [
      input('mass', 'mass', positive),
      input('speed', 'speed', { low: -60, high: 60 }),
      input('other-mass', 'mass', positive),
      input('other-speed', 'speed', { low: -60, high: 60, default: 0 }),
      stiffness,
    ],
    results: [
      result('squeeze', 'length'),
      result('force', 'force'),
      result('common-speed', 'speed'),
      result('energy', 'energy'),
    ],
    equation:
      'x = |v₁ − v₂|·√(µ/k);  F = k·x;  v = (m₁·v₁ + m₂·v₂)/(m₁ + m₂);  E = ½·µ·(v₁ − v₂)²;  µ = m₁·m₂/(m₁ + m₂)',
    letters:
      'x squeeze, v₁ speed, v₂ other-speed, µ reduced-mass, k stiffness, F force, v common-speed, m₁ mass, m₂ other-mass, E energy',
    source: 'momentum and energy; Wolfson, Essential University Physics 9.43',
    compute: ({ mass, speed, 'other-mass': other, 'other-speed': second, stiffness: k }) => {
      const r = impact(mass, speed, other, second, k);
      return [r.squeeze, r.force, r.commonSpeed, r.energy];
    },
  },
  {
    id: 'buffer-stop',
    inputs: [
      input('mass', 'mass', positive),
      input('speed', 'speed', { low: 0, open: true, high: 60 }),
      input('coupled-mass', 'mass', { low: 0, default: 0 }),
      stiffness,
    ],
    results: [result('squeeze', 'length'), result('force', 'force'), result('speed-after', 'speed')],
    equation: 'v = m·u/(m + m₁);  x = v·√((m + m₁)/k);  F = k·x',
    letters: 'v speed-after, m mass, u speed, m₁ coupled-mass, x squeeze, k stiffness, F force',
    source:
      'momentum as the cars couple, then energy into the spring; Wolfson, Essential University Physics 9.43',
    compute: ({ mass, speed, 'coupled-mass': standing, stiffness: k }) => {
      const v = (mass * speed) / (mass + standing);
      const x = v * Math.sqrt((mass + standing) / k);
      return [x, k * x, v];
    },
  },
  {
    id: 'bar-snatch',
    inputs: [
      input('mass', 'mass', positive),
      input('speed', 'speed', { low: 0, open: true, high: 30 }),
      input('length', 'length', positive),
      input('diameter', 'length', positive),
      input('modulus', 'stress', positive),
    ],
    results: [result('stretch', 'length'), result('force', 'force')],
    equation: 'k = E·A/L;  A = π/4·d²;  x = v·√(m/k);  F = k·x',
    letters:
      'k stiffness-of-the-bar, E modulus, A area-of-the-bar, L length, d diameter, x stretch, v speed, m mass, F force',
    source: 'energy balance; a machine-design text, ex. 7.2',
    compute: ({ mass, speed, length, diameter, modulus }) => {
      const k = barStiffness(modulus, (Math.PI / 4) * diameter * diameter, length);
      const x = speed * Math.sqrt(mass / k);
      return [x, k * x];
    },
  },
];
