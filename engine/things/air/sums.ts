/** Sums of air, vacuum, brake cylinders and blocks. */
import { AIR_GAS_CONSTANT, MPH, STANDARD_ATMOSPHERE } from '../../base/constants.ts';
import { input, positive, result, type Sum } from '../../base/sum.ts';
import {
  atmosphericPressure,
  CRITICAL_RATIO,
  equalisedPressure,
  freeAirFlow,
  orificeMassFlow,
  vacuumLimit,
} from './formulas.ts';

const altitude = input('altitude', 'length', { low: -1000, high: 11_000 });
const mphs = [0, 5, 10, 20, 30];
const galton = [0.33, 0.273, 0.242, 0.192, 0.164];

export const airSums: readonly Sum[] = [
  {
    id: 'orifice-flow',
    inputs: [
      input('pressure', 'gaugePressure', { low: 0, open: true, high: 2e7 }),
      input('diameter', 'length', { low: 0, open: true, high: 1 }),
      input('coefficient', 'ratio', { low: 0, open: true, high: 1, default: 1 }),
      input('temperature', 'temperature', { low: 200, high: 500, default: 294.2611 }),
      input('downstream', 'gaugePressure', { low: 0, default: 0 }),
    ],
    results: [result('free-air', 'flow'), result('mass-per-second', 'ratio'), result('choked', 'count')],
    equation:
      'W = C·A·p/√(R·T)·√(2·γ/(γ − 1)·(r^(2/γ) − r^((γ + 1)/γ)));  A = π/4·d²;  p = p₁ + p₀;  r = max(0.5283, (p₂ + p₀)/p);  c = (p₂ + p₀)/p ≤ 0.5283;  Q = W·R·T/p₀',
    letters:
      'W mass-per-second, C coefficient, A area-of-the-hole, p absolute-pressure-before-it, R gas-constant, T temperature, γ heat-ratio, r ratio-of-pressures, d diameter, p₁ pressure, p₀ air-at-sea-level, p₂ downstream, c choked, Q free-air',
    remark: 'c is 1 where it holds',
    source: 'de Saint-Venant and Wantzel; table of Moss 1906',
    compute: ({ pressure, diameter, coefficient, temperature, downstream }) => {
      if (downstream >= pressure)
        return {
          symbol: 'downstream',
          found: `${downstream}`,
          expected: 'less than the pressure before the hole',
        };
      const [p1, p2] = [pressure + STANDARD_ATMOSPHERE, downstream + STANDARD_ATMOSPHERE];
      const flow = orificeMassFlow(p1, p2, (Math.PI / 4) * diameter * diameter, coefficient, temperature);
      return [freeAirFlow(flow, STANDARD_ATMOSPHERE, temperature), flow, p2 / p1 <= CRITICAL_RATIO ? 1 : 0];
    },
  },
  {
    id: 'reservoir-equalisation',
    inputs: [
      input('reservoir', 'volume', positive),
      input('pressure', 'gaugePressure', { low: 0, high: 2e7 }),
      input('cylinder', 'volume', positive),
      input('cylinder-pressure', 'gaugePressure', { low: -STANDARD_ATMOSPHERE, high: 2e7, default: 0 }),
    ],
    results: [result('equalised', 'gaugePressure')],
    equation: 'p = (p₁·V₁ + p₂·V₂)/(V₁ + V₂)',
    letters: 'p equalised, p₁ pressure, V₁ reservoir, p₂ cylinder-pressure, V₂ cylinder',
    source: 'Boyle’s law; the air-brake handbook’s 70 → 50 psi',
    compute: ({ reservoir, pressure, cylinder, 'cylinder-pressure': second }) => [
      equalisedPressure([
        { pressure: pressure + STANDARD_ATMOSPHERE, volume: reservoir },
        { pressure: second + STANDARD_ATMOSPHERE, volume: cylinder },
      ]) - STANDARD_ATMOSPHERE,
    ],
  },
  {
    id: 'standard-atmosphere',
    inputs: [altitude],
    results: [result('pressure', 'pressure')],
    equation: 'p = p₀·(1 − L·h/T₀)^(g/(R·L))',
    letters:
      'p pressure, h altitude, p₀ air-at-sea-level, L lapse-rate, T₀ temperature-at-sea-level, g gravity, R gas-constant',
    source: 'US Standard Atmosphere 1976, lowest layer',
    compute: ({ altitude: h }) => [atmosphericPressure(h)],
  },
  {
    id: 'vacuum-limit',
    inputs: [altitude, input('lowest', 'pressure', { low: 0, default: 15_000 })],
    results: [result('vacuum', 'vacuum')],
    equation: 'u = p − p₁;  p = p₀·(1 − L·h/T₀)^(g/(R·L))',
    letters:
      'u vacuum, p pressure-of-the-air-there, p₁ lowest, h altitude, p₀ air-at-sea-level, L lapse-rate, T₀ temperature-at-sea-level, g gravity, R gas-constant',
    source:
      'US Standard Atmosphere 1976; simple equipment works at 80–90 kPa at most (a hobby society’s brake note)',
    compute: ({ altitude: h, lowest }) => {
      const left = vacuumLimit(h, lowest);
      return left > 0
        ? [left]
        : { symbol: 'lowest', found: `${lowest}`, expected: 'less than the pressure of the air there' };
    },
  },
  {
    id: 'brake-from-cylinder',
    inputs: [
      input('bore', 'length', positive),
      input('pressure', 'gaugePressure', positive),
      input('cylinders', 'count', { low: 1, high: 16, whole: true, default: 1 }),
      input('lever', 'ratio', { low: 0, open: true, high: 100 }),
      input('efficiency', 'ratio', { low: 0, open: true, high: 1, default: 0.8 }),
      input('friction', 'ratio', { low: 0, open: true, high: 1 }),
      input('spring', 'force', { low: 0, default: 0 }),
    ],
    results: [result('force', 'force'), result('blocks', 'force')],
    equation: 'F = µ·B;  B = n·(π/4·d²·p − S)·i·η',
    letters:
      'F force, µ friction, B blocks, n cylinders, d bore, p pressure, S spring, i lever, η efficiency',
    source: 'statics of brake rigging',
    compute: ({ bore, pressure, cylinders, lever, efficiency, friction, spring }) => {
      const piston = (Math.PI / 4) * bore * bore * pressure - spring;
      if (piston <= 0)
        return { symbol: 'pressure', found: `${pressure}`, expected: 'enough to overcome the return spring' };
      const blocks = piston * cylinders * lever * efficiency;
      return [friction * blocks, blocks];
    },
  },
  {
    id: 'block-friction',
    inputs: [input('speed', 'speed', { low: 0, high: 30 * MPH })],
    results: [result('friction', 'ratio')],
    equation: 'µ = f(V)',
    letters: 'µ friction, V speed in mph, f table',
    remark:
      'f is even between Galton’s figures: 0.330 just moving, 0.273 at 5 mph, 0.242 at 10, 0.192 at 20, 0.164 at 30',
    source: 'Galton 1878, cast-iron block on steel tyre (from memory)',
    compute: ({ speed }) => {
      const v = speed / MPH;
      let i = 0;
      while (i < mphs.length - 2 && mphs[i + 1] <= v) i++;
      return [galton[i] + ((galton[i + 1] - galton[i]) * (v - mphs[i])) / (mphs[i + 1] - mphs[i])];
    },
  },
  {
    id: 'air-mass',
    inputs: [
      input('volume', 'volume', positive),
      input('pressure', 'gaugePressure', { low: -STANDARD_ATMOSPHERE, high: 2e7 }),
      input('temperature', 'temperature', { low: 200, high: 500, default: 288.15 }),
    ],
    results: [result('mass', 'mass')],
    equation: 'm = (p + p₀)·V/(R·T)',
    letters: 'm mass, p pressure, p₀ air-at-sea-level, V volume, R gas-constant, T temperature',
    source: 'ideal gas law',
    compute: ({ volume, pressure, temperature }) => [
      ((pressure + STANDARD_ATMOSPHERE) * volume) / (AIR_GAS_CONSTANT * temperature),
    ],
  },
];
