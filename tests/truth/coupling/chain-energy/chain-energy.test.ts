import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../../data/index.ts';
import {
  chainEnergyToBreak,
  chainStiffness,
  leastBreakingLoad,
  leastElongation,
  stiffnessInLine,
} from '../../../../engine/things/chain/energy.ts';
import { printedIn } from '../../../support/measured.ts';

const INCH = 0.0254;
const POUND = 4.4482216152605;
const { fullness } = assumedValues.chainCatch;
const pages = printedIn(import.meta.url, 'B');
const programs = printedIn(import.meta.url, 'C');
const law = printedIn(import.meta.url, 'D', { source: 'Work until a chain breaks: bounds of its shape' });

describe('a chain that breaks', () => {
  it('has stretched as its grade must', () => {
    for (const grade of [30, 43, 70])
      pages.figure(`elongation, grade ${grade}`, leastElongation(grade) ?? NaN, 0.15, 0);
    for (const grade of [80, 100])
      pages.figure(`elongation, grade ${grade}`, leastElongation(grade) ?? NaN, 0.2, 0);
    pages.figure('elongation, coil chain', leastElongation(undefined) ?? NaN, 0.1, 0);
    expect(leastElongation(50)).toBeUndefined();
  });

  it('is pulled by a mean force between yielding at proof and an even rise from there', () => {
    const proof = { share: 200 / 400, stretch: 0.016 };
    const until = (elongation: number, end: number): number =>
      (0.5 * proof.share * proof.stretch + ((proof.share + end) / 2) * (elongation - proof.stretch)) /
      elongation;
    law.figure('fullness, least', fullness.low, until(0.15, proof.share), 0.005);
    law.figure('fullness, most', fullness.high, until(0.15, 1), 0.005);
    expect(Math.abs(fullness.value - (fullness.low + fullness.high) / 2)).toBeLessThan(0.01);
  });

  it('of 3/16 in, grade 30 and 0.3 m takes some 370 N·m', () => {
    const breaking = 4 * 800 * POUND;
    const work = chainEnergyToBreak((3 / 16) * INCH, 30, 0.3, fullness.value);
    expect(work).toBeCloseTo(fullness.value * breaking * 0.15 * 0.3, 6);
    law.figure('3/16 in of grade 30', work ?? 0, 371.5, 0.5, 'N·m');
  });

  it('without a mark takes a third less, and of a size below the tables is not told', () => {
    const marked = chainEnergyToBreak((1 / 4) * INCH, 30, 0.2, 0.5) ?? Number.NaN;
    expect(chainEnergyToBreak((1 / 4) * INCH, undefined, 0.2, 0.5)).toBeCloseTo((marked * 0.1) / 0.15, 9);
    expect(chainEnergyToBreak(0.003, 30, 0.2, 0.5)).toBeUndefined();
    expect(chainEnergyToBreak((1 / 4) * INCH, 50, 0.2, 0.5)).toBeUndefined();
  });
});

describe('the breaking load that a catch asks for', () => {
  const heavyTrain = { pull: 301 * POUND, slack: 2 * INCH, length: 0.3, elongation: 0.15 };

  it('is that of a chain whose work of breaking is just the work of the catch', () => {
    const breaks = leastBreakingLoad({ ...heavyTrain, fullness: fullness.value });
    const ofThatChain = fullness.value * breaks * 0.15 * 0.3;
    law.figure('work of a catch', ofThatChain, 301 * POUND * (2 * INCH + 0.15 * 0.3), 5e-10, 'N·m');
  });

  it('of 2 in of slack under 301 lbf is below what 3/16 in of grade 30 breaks at, even at its poorest', () => {
    expect(leastBreakingLoad({ ...heavyTrain, length: 0.15, fullness: fullness.low })).toBeLessThan(
      4 * 800 * POUND,
    );
    // The slack alone is 68 N·m of it.
    expect(301 * POUND * 2 * INCH).toBeCloseTo(68, 0);
  });
});

describe('stiffness of a chain', () => {
  it('is that of a mooring program, and 1.3 % above the modulus of another', () => {
    const d = 0.0079;
    programs.figure('EA', chainStiffness(d, 1), 0.854e8 * 1e3 * d * d, 0.0005, 'N');
    const legs = (Math.PI / 2) * d * d;
    const modulus = (5.4 - 0.004 * 1e3 * d) * 1e10;
    programs.figure('above the other program', 1 - (modulus * legs) / chainStiffness(d, 1), 0.013, 0.0005);
  });

  it('with hooks and headstocks in line is that of the softest and less', () => {
    const inLine = 1 / (0.125e-6 + 0.5e-6 + 2e-6);
    law.figure('in line', stiffnessInLine([8e6, 2e6, 1e6, 1e6]), inLine, 0.0005, 'N/m');
  });
});
