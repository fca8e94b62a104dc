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
    equation: 'by table; an unmarked chain counts as grade 30; breaking = 4 × working (grade 43: 3 ×)',
    source: '49 CFR 393.108; EN 818-4 (metric grade 80); 1/8, 3/16, 7/32 and 9/32 in: suppliers’ charts',
    compute: ({ size, 'grade-mark': mark }) => {
      const load = chainWorkingLoad(mark, size);
      if (load === undefined)
        return {
          symbol: 'size',
          found: `${size}`,
          expected: 'a size and grade of the table: grades 30, 43, 70, 80, 100, 1/8 to 5/8 in or 6 to 16 mm',
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
    equation: 'least of chain, link, hook and attachment',
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
      'v = √(v₀² + 2·F·x/µ);  peak = F + √(F² + k·µ₁·v²);  µ = m₁·m₂/(m₁ + m₂);  µ₁ likewise, without what is sprung',
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
    equation: 'W = F·(s + ε·L) + E;  it takes c·B·ε·L before it breaks;  must break at W/(c·ε·L)',
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
      'v = √(v₀² + 2·F·s/µ);  ½µv² + F·x = ½k·x² + ½k·max(0, x − d)²;  shorter = k·x;  longer = k·max(0, x − d)',
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
    equation: 'x = |v₁ − v₂|·√(µ/k);  F = k·x;  v = (m₁v₁ + m₂v₂)/(m₁ + m₂)',
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
    equation: 'v = m·v₀/(m + m₂);  x = v·√((m + m₂)/k);  F = k·x',
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
    equation: 'k = E·A/L;  x = v·√(m/k);  F = k·x',
    source: 'energy balance; a machine-design text, ex. 7.2',
    compute: ({ mass, speed, length, diameter, modulus }) => {
      const k = barStiffness(modulus, (Math.PI / 4) * diameter * diameter, length);
      const x = speed * Math.sqrt(mass / k);
      return [x, k * x];
    },
  },
];
