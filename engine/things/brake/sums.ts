/** Sums of brakes: filling, emptying, drawing down, reductions, chambers, a person's arm. */

import { STANDARD_ATMOSPHERE as AIR } from '../../base/constants.ts';
import { exact } from '../../base/quantity.ts';
import { input, notNegative, positive, result, type Sum, type SumProblem } from '../../base/sum.ts';
import { STANDARD_TEMPERATURE } from '../air/formulas.ts';
import { automaticVacuumDifference, cylinderPressure, equalised } from './equalise.ts';
import { handBlockForce } from './hand-and-push.ts';
import { SEAL_PRESSURE } from './piston.ts';
import { drawDownTime, emptyTime, fillTime, pumpUpTime } from './vessel.ts';

const pressure = { low: 0, high: 2e6 } as const;
const vacuum = { low: 0, high: AIR } as const;
const passage = [
  input('volume', 'volume', { low: 0, open: true, high: 100 }),
  input('diameter', 'length', { low: 1e-5, high: 1 }),
  input('coefficient', 'ratio', { low: 0.01, high: 1, default: 0.65 }),
  input('temperature', 'temperature', { low: 200, high: 500, default: STANDARD_TEMPERATURE }),
];
/** Of the day, absolute. */
const air = input('air', 'pressure', { low: 20_000, high: 120_000, default: AIR });
const times = [result('isothermal', 'time'), result('adiabatic', 'time')];
const through = (i: Readonly<Record<string, number>>) => ({
  volume: i.volume,
  area: i.coefficient * (Math.PI / 4) * i.diameter * i.diameter,
  temperature: i.temperature,
});
const problem = (symbol: string, found: number, expected: string): SumProblem => ({
  symbol,
  found: `${found}`,
  expected,
});

export const brakeSums: readonly Sum[] = [
  {
    id: 'vessel-filling',
    inputs: [
      ...passage,
      input('supply', 'gaugePressure', { ...pressure, open: true }),
      input('to', 'gaugePressure', pressure),
      input('from', 'gaugePressure', { ...pressure, default: 0 }),
    ],
    results: times,
    equation:
      't₁ = V/(C·A·√(R·T))·(φ(r₂) − φ(r₁));  t₂ = t₁/γ;  A = π/4·d²;  r₁ = (p₁ + p₀)/(p + p₀);  r₂ = (p₂ + p₀)/(p + p₀)',
    letters:
      't₁ isothermal, t₂ adiabatic, V volume, C coefficient, A area-of-the-hole, R gas-constant, T temperature, φ integral, r₁ ratio-of-pressures-before, r₂ ratio-of-pressures-after, γ heat-ratio, d diameter, p₁ from, p₂ to, p supply, p₀ air-at-sea-level',
    remark: 'φ(r) is r/0.6847 up to r = 0.528; beyond, it grows by √7·(√(1 − 0.528^(2/7)) − √(1 − r^(2/7)))',
    source: 'de Saint-Venant and Wantzel, integrated; checked against an independent integrator',
    compute: (i) => {
      if (i.to > i.supply) return problem('to', i.to, 'no more than the supply');
      if (i.from > i.to) return problem('from', i.from, 'no more than the pressure to reach');
      return (['isothermal', 'adiabatic'] as const).map((thermal) =>
        fillTime(through(i), i.supply + AIR, i.from + AIR, i.to + AIR, thermal),
      );
    },
  },
  {
    id: 'vessel-emptying',
    inputs: [
      ...passage,
      input('from', 'gaugePressure', { ...pressure, open: true }),
      input('to', 'gaugePressure', pressure),
    ],
    results: times,
    equation:
      't₁ = V/(C·A·√(R·T))·(φ(r₂) − φ(r₁));  t₂ = V/(γ·C·A·√(R·T))·(χ(r₂) − χ(r₁));  A = π/4·d²;  r₁ = p₀/(p₁ + p₀);  r₂ = p₀/(p₂ + p₀)',
    letters:
      't₁ isothermal, t₂ adiabatic, V volume, C coefficient, A area-of-the-hole, R gas-constant, T temperature, φ integral, χ integral-as-it-cools, r₁ ratio-of-pressures-before, r₂ ratio-of-pressures-after, γ heat-ratio, d diameter, p₁ from, p₂ to, p₀ air-at-sea-level',
    remark:
      'φ(r) = ∫dr/(r·ψ(r)), ψ the flow of a nozzle; χ likewise with T falling as the pressure to the power 2/7',
    source: 'de Saint-Venant and Wantzel, integrated; checked against an independent integrator',
    compute: (i) => {
      if (i.to > i.from) return problem('to', i.to, 'no more than the pressure before');
      return (['isothermal', 'adiabatic'] as const).map((thermal) =>
        emptyTime(through(i), AIR, i.from + AIR, i.to + AIR, thermal),
      );
    },
  },
  {
    id: 'draw-down-time',
    inputs: [
      input('volume', 'volume', { low: 0, open: true, high: 1000 }),
      input('suction', 'flow', { low: 1e-7, high: 1000 }),
      input('to', 'vacuum', { low: 1, high: AIR }),
      input('from', 'vacuum', { ...vacuum, default: 0 }),
      input('greatest', 'vacuum', { ...vacuum, default: AIR }),
    ],
    results: [result('time', 'time')],
    equation: 't = V/S·ln((u₀ − u₁)/(u₀ − u₂))',
    letters: 't time, V volume, S suction, u₀ greatest, u₁ from, u₂ to',
    remark: 'at sea level',
    source: 'constant suction; three published pump examples',
    compute: (i) => {
      if (AIR - i.to <= AIR - i.greatest)
        return problem('to', i.to, 'less than the greatest vacuum of the ejector');
      if (i.from > i.to) return problem('from', i.from, 'no more than the vacuum to reach');
      return [drawDownTime(i.volume, i.suction, AIR - i.from, AIR - i.to, AIR - i.greatest)];
    },
  },
  {
    id: 'pump-up-time',
    inputs: [
      input('volume', 'volume', { low: 0, open: true, high: 1000 }),
      input('free-air', 'flow', { low: 1e-7, high: 1000 }),
      input('to', 'gaugePressure', pressure),
      input('from', 'gaugePressure', { ...pressure, default: 0 }),
    ],
    results: [result('time', 'time')],
    equation: 't = V·(p₂ − p₁)/(p₀·q)',
    letters: 't time, V volume, p₂ to, p₁ from, p₀ air-at-sea-level, q free-air',
    source: 'Boyle’s law',
    compute: (i) =>
      i.from > i.to
        ? problem('from', i.from, 'no more than the pressure to reach')
        : [pumpUpTime(i.volume, i['free-air'], i.from + AIR, i.to + AIR, AIR)],
  },
  {
    id: 'cylinder-from-reduction',
    inputs: [
      input('reduction', 'gaugePressure', pressure),
      input('charge', 'gaugePressure', { ...pressure, open: true }),
      input('reservoir', 'volume', positive),
      input('swept', 'volume', positive),
      input('clearance', 'volume', positive),
      input('spring', 'gaugePressure', { low: 0, high: 1e6, default: SEAL_PRESSURE }),
      air,
    ],
    results: [
      result('cylinder', 'gaugePressure'),
      result('equalised', 'gaugePressure'),
      result('full-reduction', 'gaugePressure'),
    ],
    equation:
      '(p + P)·(V₀ + V₂·min(1, p/S)) = P·V₀ + r·V₁;  (e + P)·(V₁ + V₀ + V₂·min(1, e/S)) = (c + P)·V₁ + P·V₀;  f = c − e',
    letters:
      'p cylinder, P air, V₀ clearance, V₂ swept, S spring, r reduction, V₁ reservoir, e equalised, c charge, f full-reduction',
    remark: 'p at most e',
    source: 'Boyle’s law; handbook rule of 2½ lb a pound (1913)',
    compute: (i) => {
      if (i.reduction > i.charge) return problem('reduction', i.reduction, 'no more than the charge');
      const piston = {
        clearance: i.clearance,
        swept: i.swept,
        strokeAt: Math.max(SEAL_PRESSURE, i.spring),
      };
      const charge = i.charge + i.air;
      const equal = equalised(charge, i.reservoir, piston, i.air);
      const cylinder = cylinderPressure(i.reduction, charge, i.reservoir, piston, i.air);
      return [cylinder - i.air, equal - i.air, charge - equal];
    },
  },
  {
    id: 'vacuum-chamber',
    inputs: [
      input('vacuum', 'vacuum', { ...vacuum, open: true }),
      input('chamber', 'volume', positive),
      input('swept', 'volume', positive),
      input('spring', 'vacuum', { low: 0, high: AIR, default: SEAL_PRESSURE }),
      air,
    ],
    results: [result('left', 'vacuum')],
    equation: 'l = P − (P − u)·V/(V − V₁·min(1, l/S))',
    letters: 'l left, P air, u vacuum, V chamber, V₁ swept, S spring',
    source: 'Boyle’s law',
    compute: (i) => {
      if (i.vacuum > i.air) return problem('vacuum', i.vacuum, 'no more than the pressure of the air');
      if (i.chamber <= i.swept) return problem('chamber', i.chamber, 'more than what the piston sweeps');
      const piston = { clearance: 0, swept: i.swept, strokeAt: Math.max(SEAL_PRESSURE, i.spring) };
      return [automaticVacuumDifference(i.vacuum, i.chamber, piston, i.air)];
    },
  },
  {
    id: 'hand-brake',
    inputs: [
      input('pull', 'force', { low: 0, open: true, high: 2000 }),
      input('radius', 'length', { low: 0.005, high: 1 }),
      input('lead', 'length', { low: 0.0005, high: 0.1 }),
      input('lever', 'ratio', { low: 0, open: true, high: 100 }),
      input('efficiency', 'ratio', { low: 0, open: true, high: 1, default: 0.3 }),
      input('friction', 'ratio', { ...notNegative, high: 1, default: 0.25 }),
    ],
    results: [result('blocks', 'force'), result('retarding', 'force')],
    equation: 'B = P·2·π·R/l·i·η;  F = φ·B',
    letters: 'B blocks, P pull, R radius, l lead, i lever, η efficiency, F retarding, φ friction',
    source: 'principle of work; efficiency of a screw seldom above 0.4 (common practice)',
    compute: (i) => {
      const hand = {
        wheelRadius: i.radius,
        screwLead: i.lead,
        leverRatio: i.lever,
        efficiency: exact(i.efficiency),
        block: 'other' as const,
      };
      const blocks = handBlockForce(hand, exact(i.pull)).value;
      return [blocks, blocks * i.friction];
    },
  },
];
