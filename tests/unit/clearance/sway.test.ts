import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { keptClear } from '../../../engine/questions/clearance/kept-clear.ts';
import { lookAtClearance } from '../../../engine/questions/clearance/look.ts';
import { clearanceRemedies } from '../../../engine/questions/clearance/remedies.ts';
import type { Suspension } from '../../../engine/things/vehicle/types.ts';
import { beside, besideSays, CAR, post } from '../../support/beside.ts';

/** 100 kg at 0.25 m above the rail, on springs of 2,000 N·m to the radian. */
const Z = 25;
const K = 2000;
const springs = (stiffness = exact(K)): Suspension => ({ rollStiffness: stiffness, equalised: true });
const none: Suspension = { equalised: true };
const sprung = (suspension = springs()) => ({
  tare: exact(100),
  centreHeight: exact(0.25),
  loads: [],
  suspension,
});
const G = 9.80665;
type Case = Parameters<typeof beside>[0];
const canted = (cant: number): NonNullable<Case['line']> => ({
  cants: [
    { at: 0, cant },
    { at: 200, cant },
  ],
});
const takes = (outing: Outing, level: 'low' | 'likely' | 'high' = 'likely'): number =>
  lookAtClearance(openOuting(outing)).passings[0].body?.[level].takes ?? Number.NaN;
const overhead = (outing: Outing): number =>
  lookAtClearance(openOuting(outing)).passings.find((p) => p.side === 'over')?.body?.likely.takes ??
  Number.NaN;
const structures = [post()];

describe('sway on springs', () => {
  const plain = beside({ structures });
  const width = plain.line.contactWidth;

  it('leans the top over canted track by what statics say, on top of the track itself', () => {
    const lean = 0.02 / width;
    const rigid = takes(beside({ structures, line: canted(0.02), vehicle: sprung(none) }));
    const roll = (G * Z * lean) / (K - G * Z);
    const on = beside({ structures, line: canted(0.02), vehicle: sprung() });
    expect(takes(on) - rigid).toBeCloseTo(CAR.height * roll, 9);
    // 3.5 mm here: not a hair.
    expect(CAR.height * roll).toBeGreaterThan(0.003);
  });

  it('at the most by the softest that the springs may be, at the least by the stiffest', () => {
    const lean = 0.02 / width;
    const outing = (suspension: Suspension) =>
      beside({ structures, line: canted(0.02), vehicle: sprung(suspension) });
    const between = springs({ ...exact(K), low: 1500, high: 3000 });
    for (const [level, k] of [
      ['high', 1500],
      ['likely', K],
      ['low', 3000],
    ] as const) {
      const roll = (G * Z * lean) / (k - G * Z);
      expect(takes(outing(between), level) - takes(outing(none), level), level).toBeCloseTo(
        CAR.height * roll,
        9,
      );
    }
  });

  it('to the higher side it is not counted on to lean away', () => {
    const at = (suspension: Suspension) =>
      takes(beside({ structures, line: canted(-0.02), vehicle: sprung(suspension) }), 'high');
    expect(at(springs())).toBeCloseTo(at(none), 9);
  });

  it('of people off the middle, to their side alone', () => {
    const seated = (across: number, suspension = springs()) => {
      const { seats } = beside({}).train.vehicles[0];
      const vehicle = { ...sprung(suspension), seats: seats.map((s) => ({ ...s, across, height: 0.1 })) };
      return takes(beside({ structures: [post({ bottom: 0.3 })], vehicle, ridden: true }));
    };
    const centre = 0.1 + plain.assumed.riderCentre.value;
    const roll = (G * 70 * 0.1) / (K - G * (Z + 70 * centre));
    expect(seated(0.1) - seated(0.1, none)).toBeCloseTo(CAR.height * roll, 9);
    expect(seated(-0.1)).toBeLessThan(seated(-0.1, none));
  });

  const curve = (speed: number): Outing => ({
    ...beside({
      structures: [post({ side: 'right', distance: 0.45 })],
      line: {
        curves: [{ from: 20, to: 100, startCurvature: 1 / 15, endCurvature: 1 / 15, gaugeWidening: 0 }],
      },
      vehicle: sprung(),
    }),
    plannedSpeed: speed,
  });

  it('outward by the square of the speed that is run, inward not', () => {
    const roll = (v: number): number => (Z * v * v) / 15 / (K - G * Z);
    expect(takes(curve(3)) - takes(curve(0))).toBeCloseTo(CAR.height * roll(3), 6);
    const inside = (v: number): number => {
      const outing = curve(v);
      const [s] = outing.line.structures ?? [];
      return takes({
        ...outing,
        line: { ...outing.line, structures: [{ ...s, side: 'left', bottom: 0.3 }] },
      });
    };
    expect(inside(3)).toBe(inside(0));
  });

  it('no faster than what the line and the day allow at that place, whichever way it runs', () => {
    const slow = { from: 59, to: 61, speed: 0.5, why: 'post', source: 'sign' };
    const outing = curve(3);
    const limited = takes(curve(0.5));
    expect(takes({ ...outing, line: { ...outing.line, speedLimits: [slow] } })).toBeCloseTo(limited, 9);
    for (const direction of ['forward', 'reverse'] as const) {
      const run = { ...outing, direction };
      expect(takes({ ...run, extraLimits: [slow] }), direction).toBeCloseTo(limited, 9);
      expect(takes({ ...run, extraLimits: [{ ...slow, from: 20, to: 40 }] }), direction).toBeGreaterThan(
        limited,
      );
    }
  });

  it('slower past it is offered, tried, and told by how much it sways', () => {
    const between = (takes(curve(0), 'high') + takes(curve(3), 'high')) / 2;
    const outing = curve(3);
    const structures = (outing.line.structures ?? []).map((s) => ({ ...s, distance: between + 0.05 }));
    const tight: Outing = { ...outing, line: { ...outing.line, structures } };
    const [told] = besideSays(tight);
    expect(told).toMatchObject({ code: 'little-room-beside', severity: 'limits' });
    expect('sway' in told.facts && told.facts.sway?.si).toBeGreaterThan(0.003);
    const family = clearanceRemedies['little-room-beside']?.(tight, told)[0];
    const clears = family?.changes.filter((c) => besideSays(applyChange(tight, c)).length === 0) ?? [];
    expect(clears.length).toBeGreaterThan(0);
    expect(clears.length).toBeLessThan(family?.changes.length ?? 0);
    // A limit elsewhere is none here.
    const far = clears.map((c) => ({ ...c, from: 80, to: 90 }));
    expect(besideSays(applyChange(tight, far[0]))).not.toEqual([]);
  });

  it('overhead by the edge that rises, and in what must be left clear', () => {
    const roof = [post({ distance: 5, headroom: 1 })];
    const over = (suspension: Suspension) =>
      overhead(beside({ structures: roof, line: canted(0.02), vehicle: sprung(suspension) }));
    const roll = (G * Z * 0.02) / width / (K - G * Z);
    expect(over(springs()) - over(none)).toBeCloseTo((CAR.width / 2) * roll, 9);
    const left = (suspension: Suspension) =>
      keptClear(openOuting(beside({ line: canted(0.02), vehicle: sprung(suspension) })))?.left[100] ??
      Number.NaN;
    expect(left(springs()) - left(none)).toBeCloseTo(CAR.height * roll, 9);
  });

  it('softer springs never take less; those too weak to hold it are told by balance', () => {
    const at = (k: number): number =>
      takes(beside({ structures, line: canted(0.02), vehicle: sprung(springs(exact(k))) }), 'high');
    const all = [400, 800, 2000, 1e5].map(at);
    expect(all).toEqual([...all].sort((a, b) => b - a));
    expect(new Set(all).size).toBe(4);
    expect(at(G * Z)).toBeCloseTo(at(1e12), 6);
  });
});
