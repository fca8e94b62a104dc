/** Units: what is printed reads back, and never on the unsafe side; no text makes the reader throw. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Kind, kinds } from '../../engine/base/quantity.ts';
import { findUnit, unitsByKind } from '../../units/factors.ts';
import { parseQuantity, printQuantity, type System, unitsOf } from '../../units/index.ts';
import { runs } from '../support/tier.ts';

const SEED = { seed: 20261125, numRuns: runs(200, 3000) };
const all = Object.keys(kinds) as Kind[];
const kind = fc.constantFrom(...all.filter((k) => k !== 'count' && k !== 'temperature'));
const system = fc.constantFrom<System>('imperial', 'metric');
const size = fc.double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true });

describe('units', () => {
  it('a figure printed in any of its units with enough digits reads back', () => {
    fc.assert(
      fc.property(kind, fc.nat(), size, (k, pick, si) => {
        const names = unitsOf(k);
        const unit = names[pick % names.length];
        const scaled = si * (findUnit(k, unit)?.factor ?? 1);
        const text = `${scaled / (findUnit(k, unit)?.factor ?? 1)} ${unit}`;
        const read = parseQuantity(text, k);
        expect(read.ok, text).toBe(true);
        if (read.ok) expect(Math.abs(read.si - scaled)).toBeLessThanOrEqual(1e-9 * Math.abs(scaled) + 1e-300);
      }),
      SEED,
    );
  });

  it('toward up never prints less, toward down never more, and both stay within one step', () => {
    fc.assert(
      fc.property(kind, system, size, (k, s, si) => {
        const up = parseQuantity(printQuantity(si, k, { system: s, toward: 'up' }), k);
        const down = parseQuantity(printQuantity(si, k, { system: s, toward: 'down' }), k);
        expect(up.ok && down.ok).toBe(true);
        if (!up.ok || !down.ok) return;
        const slack = 1e-8 * (Math.abs(si) + (findUnit(k, up.unit)?.factor ?? 1));
        expect(up.si).toBeGreaterThanOrEqual(si - slack);
        expect(down.si).toBeLessThanOrEqual(si + slack);
      }),
      SEED,
    );
  });

  it('lengths in feet, inches and fractions read back to a thirty-second of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), (n) => {
        const si = (n * 0.0254) / 16;
        for (const unit of ['in', 'ft in']) {
          const read = parseQuantity(printQuantity(si, 'length', { system: 'imperial', unit }), 'length');
          expect(read.ok && Math.abs(read.si - si)).toBeLessThan(1e-9);
        }
      }),
      SEED,
    );
  });

  it('no text at all makes the reader throw, and a problem always names what is accepted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), fc.constantFrom(...all), (text, k) => {
        const read = parseQuantity(text, k, 'the field');
        if (read.ok) expect(Number.isFinite(read.si)).toBe(true);
        else {
          expect(read.problem.field).toBe('the field');
          expect(read.problem.expected.length).toBeGreaterThan(5);
        }
      }),
      SEED,
    );
  });

  it('near misses of real figures are never misread as something else', () => {
    const parts = fc.constantFrom(
      '12',
      'ft',
      '6',
      'in',
      '-',
      '/',
      '1/2',
      '"',
      "'",
      ' ',
      '.',
      ',',
      't',
      'cwt',
      'psi',
      '%',
      '1 in',
    );
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 7 }), (words) => {
        const text = words.join('');
        const read = parseQuantity(text, 'length');
        if (!read.ok) return;
        // Whatever is accepted as a length has figures and only length units in it.
        expect(text).not.toMatch(/psi|%|cwt|,/);
        expect(text).toMatch(/\d/);
      }),
      SEED,
    );
  });

  it('names no unit twice within a kind', () => {
    for (const k of all) {
      const names = unitsByKind[k].flatMap((u) => [u.name, ...u.also]);
      expect(new Set(names).size, k).toBe(names.length);
    }
  });
});
