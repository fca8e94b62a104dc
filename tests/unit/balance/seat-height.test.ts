/** How high a seat may be, against the moments about one rail written out by hand. All made up. */
import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../engine/base/constants.ts';
import { between, exact } from '../../../engine/base/quantity.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { type SeatAsk, seatHeight } from '../../../engine/questions/balance/seat-height.ts';
import { car, seatAt } from '../../support/balance.ts';
import { drawer } from '../../support/random-outings.ts';
import { altered, party, plain, rule } from '../../support/rules.ts';

const TARE = 110;
const CENTRE = 0.24;
const PEOPLE = 2 * 70;
/** A seated adult's centre above the seat, m. */
const ABOVE = 0.25;
const BASE = 0.2;
const CANT = 0.02;

/** Straight and canted all along; two people, all figures exact. */
function canted(changes: Partial<Outing> = {}): Outing {
  const outing = plain(1, { riders: party(2), plannedSpeed: 2, ...changes });
  const { line } = outing;
  const seats = ['1', '2'].map((id, i) => ({ ...seatAt(id, 0.6 + i), adultCentre: exact(ABOVE) }));
  return altered(
    {
      ...outing,
      line: {
        ...line,
        loop: false,
        contactWidth: BASE,
        cants: [
          { at: 0, cant: CANT },
          { at: line.length, cant: CANT },
        ],
      },
    },
    1,
    {
      ...car(drawer(3), { id: 'car1', tare: TARE, centre: CENTRE, seats }),
      loads: [],
      suspension: undefined,
    } as never,
  );
}

const ask = (lean: number, who: SeatAsk['who'] = 'all'): SeatAsk => ({ vehicle: 'car1', lean, who });

/** Z·tan θ + m·y = M·b/2: the height of the seats at which all who lean bring it over the lower rail. */
function byHand(lean: number): number {
  const tan = Math.tan(Math.asin(CANT / BASE));
  const Z = (((TARE + PEOPLE) * BASE) / 2 - PEOPLE * lean) / tan;
  return (Z - TARE * CENTRE) / PEOPLE - ABOVE;
}

describe('how high the seats may be', () => {
  it('is where all who lean bring the car over, by the moments about the rail', () => {
    for (const lean of [0.05, 0.07, 0.09]) {
      const all = seatHeight(canted(), ask(lean))?.limits.find((l) => l.reason === 'all');
      expect(byHand(lean)).toBeGreaterThan(0.1);
      expect(all?.height).toBeLessThanOrEqual(byHand(lean) + 1e-9);
      expect(all?.height).toBeGreaterThan(byHand(lean) - 0.001);
    }
  });

  it('is where standing on cant leaves two fifths of a wheel, and where a curve leaves three', () => {
    const sin = CANT / BASE;
    const mass = TARE + PEOPLE;
    const seat = (Z: number): number => (Z - TARE * CENTRE) / PEOPLE - ABOVE;
    const limit = (outing: Outing, reason: string): number =>
      seatHeight(outing, ask(0))?.limits.find((l) => l.reason === reason)?.height ?? 0;
    const standing = seat(((Math.sqrt(1 - sin * sin) - 0.4) * mass * BASE) / (2 * sin));
    expect(limit(canted(), 'standing')).toBeCloseTo(standing, 2);
    const { line, ...rest } = canted();
    const bend = { from: 0, to: line.length, startCurvature: 1 / 8, endCurvature: 1 / 8, gaugeWidening: 0 };
    // 2 m/s round a radius of 8 m.
    const curve = seat((((1 - 0.6) * mass * BASE) / 2) * (GRAVITY / (4 / 8)));
    expect(limit({ ...rest, line: { ...line, cants: [], curves: [bend] } }, 'curve')).toBeCloseTo(curve, 2);
  });

  it('counts a curve that lies within the train’s length of where the line begins', () => {
    const { line, ...rest } = canted();
    const bend = { from: 0, to: 4, startCurvature: 1 / 4, endCurvature: 1 / 4, gaugeWidening: 0 };
    const at = { ...rest, line: { ...line, cants: [], curves: [bend] } };
    const curve = seatHeight(at, ask(0))?.limits.find((l) => l.reason === 'curve');
    expect(curve?.height).toBeLessThan(1);
    expect(curve?.at).toBeLessThan(8);
  });

  it('is the lowest of its reasons, keeps at that height and not above it', () => {
    const found = seatHeight(canted(), ask(0.09));
    const counted = found?.limits.filter((l) => l.reason !== 'one').map((l) => l.height ?? 0) ?? [];
    expect(found?.height).toBe(Math.min(...counted));
    const again = seatHeight(found?.outing ?? canted(), ask(0.09));
    expect(again?.now).toBeCloseTo(found?.height ?? 0, 9);
    expect(again?.height).toBeCloseTo(found?.height ?? 0, 2);
  });

  it('falls the farther people lean, and is none where no seat is low enough', () => {
    const leans = [0.02, 0.06, 0.08, 0.1, 0.18];
    const heights = seatHeight(canted(), ask(0.07), leans)?.byLean.map((b) => b.all.height ?? -1) ?? [];
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
    const none = seatHeight(canted(), ask(0.18));
    expect(none).toMatchObject({ height: null, setBy: { reason: 'all' } });
    expect(none?.outing).toBeUndefined();
  });

  it("is never above the host's rule", () => {
    const host = { name: 'made up', seatHeight: rule(0.3) };
    expect(seatHeight(canted({ host }), ask(0.05))).toMatchObject({ height: 0.3, setBy: { reason: 'host' } });
  });

  it('is lower with a centre of gravity that nobody measured: it rises with the seat', () => {
    const known = canted();
    const unknown = altered(known, 1, { centreHeight: undefined } as never);
    const height = (outing: Outing): number => seatHeight(outing, ask(0.07))?.height ?? 0;
    expect(height(unknown)).toBeLessThan(height(known));
    expect(seatHeight(unknown, ask(0.07))?.centreKnown).toBe(false);
  });

  it('is lower for people of whom less is known', () => {
    const sure = canted();
    const riders = sure.riders.map((r) => ({ ...r, mass: between(50, 70, 95, 'assumed') }));
    const all = (o: Outing): number =>
      seatHeight(o, ask(0.07))?.limits.find((l) => l.reason === 'all')?.height ?? 0;
    expect(all({ ...sure, riders })).toBeLessThan(all(sure));
  });

  it('is not told where nobody sits', () => {
    expect(seatHeight(canted({ riders: [] }), ask(0.07))).toBeUndefined();
    expect(seatHeight(canted(), { ...ask(0.07), vehicle: 'engine' })).toBeUndefined();
  });
});
