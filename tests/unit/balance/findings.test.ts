/** What balance finds, and that every finding can be said in every voice. */
import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../../engine/answer/complete.ts';
import { exact } from '../../../engine/base/quantity.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askBalance } from '../../../engine/questions/balance/ask.ts';
import { balanceFamilies } from '../../../engine/questions/balance/remedies.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { gridOf } from '../../../engine/questions/speed/map.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import type { Rider } from '../../../engine/things/train/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { tellFinding } from '../../../words/finding.ts';
import { balanceWords } from '../../../words/findings/balance.ts';
import type { Voice } from '../../../words/voice.ts';
import { bentLine, car, person, seatAt } from '../../support/balance.ts';
import { drawer, randomOuting, randomVehicle } from '../../support/random-outings.ts';

const draw = drawer(3);
const engine: Vehicle = { ...randomVehicle(draw, 'engine', true), centreHeight: exact(0.3) };

const line = (changes: Partial<Line> = {}): Line => ({ ...bentLine(12), twist: 0.002, ...changes });

const outing = (
  cars: readonly Vehicle[],
  riders: readonly Rider[],
  on: Partial<Line> = {},
  more: Partial<Outing> = {},
): Outing => ({
  ...randomOuting(1, 1),
  line: line(on),
  train: { name: 'test', vehicles: [engine, ...cars], pipeBrokenAfter: [], chainsFastened: true },
  riders,
  direction: 'forward',
  plannedSpeed: 2.5,
  ...more,
});

const ask = (o: Outing) => {
  const context = openOuting(o);
  return askBalance(context, gridOf(context.line.length));
};
const codes = (findings: readonly Finding[]): string[] => findings.map((f) => f.code);
const find = (o: Outing, code: string): Finding | undefined => ask(o).findings.find((f) => f.code === code);

const free = { suspension: { equalised: true, twistFreedom: 0.02 } };
const calm = { ...car(draw), ...free };
const fourOn = (vehicle: string, mass = 75): Rider[] =>
  [1, 2, 3, 4].map((i) => person(`${vehicle}${i}`, mass, { vehicle, seat: `${i}` }));

const wide: Vehicle = {
  ...car(draw, { seats: [seatAt('l', 1.1, 0.4, 0.2), seatAt('r', 1.1, 0.4, -0.2)], tare: 60 }),
  ...free,
};
const tall: Vehicle = { ...car(draw, { seats: [seatAt('1', 1.1, 0.9)] }), ...free };
const { centreHeight: _, ...unmeasured } = calm;
const { flange: __, ...noFlange } = calm;

const cases: Readonly<Record<string, Outing>> = {
  'tips-at-rest': outing([wide], [person('a', 90, { vehicle: 'car', seat: 'l' })]),
  'stands-light-on-one-side': outing([calm], fourOn('car'), {
    cants: [{ at: 0, cant: 0.026 }],
    curves: [],
  }),
  'curve-speed-limited-by-balance': outing([calm], fourOn('car'), {}, { plannedSpeed: 5 }),
  'lean-small': outing([tall], [person('a', 110, { vehicle: 'car', seat: '1' })], {
    cants: [{ at: 0, cant: 0.01 }],
  }),
  'centre-of-gravity-unknown': outing([unmeasured], fourOn('car')),
  'truck-lifts': outing(
    [{ ...car(draw, { tare: 40, trucks: [0.9, 1.3], seats: [seatAt('1', 0.2)] }), ...free }],
    [person('a', 100, { vehicle: 'car', seat: '1' })],
  ),
  'trucks-uneven': outing([calm], [person('a', 110, { vehicle: 'car', seat: '1' })]),
  'truck-overloaded': outing(
    [{ ...calm, ratings: { axleLoad: 104 } }],
    fourOn('car'),
    {},
    { train: { ...outing([], []).train, vehicles: [engine, { ...calm, ratings: { axleLoad: 104 } }] } },
  ),
  'wheel-unloads-on-twist': outing(
    [{ ...calm, suspension: { equalised: false, twistFreedom: 0.004, frameTwist: 0.001 } }],
    fourOn('car'),
  ),
  'twist-unknown': outing([car(draw)], fourOn('car')),
  'flange-may-climb': outing(
    [{ ...calm, flange: { angle: (35 * Math.PI) / 180, frictionHigh: 0.5 } }],
    fourOn('car'),
  ),
  'flange-shape-unknown': outing([noFlange], fourOn('car')),
};

describe('balance finds', () => {
  for (const [code, o] of Object.entries(cases)) {
    it(code, () => expect(codes(ask(o).findings)).toContain(code));
  }

  it('nothing about a calm car of known shape on gentle curves', () => {
    const gentle = {
      curves: [{ from: 80, to: 120, startCurvature: 1 / 60, endCurvature: 1 / 60, gaugeWidening: 0 }],
    };
    const still = { ...engine, ...free, flange: { angle: 1.22, frictionHigh: 0.35 } };
    const o = outing([calm], fourOn('car', 40), gentle);
    const { findings } = ask({ ...o, train: { ...o.train, vehicles: [still, calm] } });
    expect(codes(findings)).toEqual([]);
  });
});

describe('a centre of gravity that nobody measured', () => {
  it('is cleared where even the highest plausible one is safe', () => {
    const gentle = { curves: [] };
    expect(find(outing([unmeasured], fourOn('car'), gentle), 'centre-of-gravity-unknown')?.severity).toBe(
      'notes',
    );
  });

  it('limits where the bound sets a speed, and is asked for', () => {
    const found = find(
      outing([unmeasured], fourOn('car'), {}, { plannedSpeed: 5 }),
      'centre-of-gravity-unknown',
    );
    expect(found).toMatchObject({ severity: 'limits', measure: 'vehicle.centreHeight' });
  });

  it('cannot be told where the bound would tip, or where nothing bounds it', () => {
    const steep = { cants: [{ at: 0, cant: 0.07 }], curves: [] };
    expect(find(outing([unmeasured], fourOn('car'), steep), 'centre-of-gravity-unknown')?.severity).toBe(
      'unknown',
    );
    const { centreHeight: _c, ...bare } = engine;
    const o = outing([calm], []);
    const found = find({ ...o, train: { ...o.train, vehicles: [bare, calm] } }, 'centre-of-gravity-unknown');
    expect(found?.severity).toBe('unknown');
  });
});

describe('what the host asks', () => {
  it('a stricter share gives a lower speed, and is quoted', () => {
    const o = outing([calm], fourOn('car'), {}, { plannedSpeed: 5 });
    const speed = (share: number | undefined): number => {
      const host =
        share === undefined ? o.host : { ...o.host, leastWheelShare: { value: share, source: 'Rule 9' } };
      return find({ ...o, host }, 'curve-speed-limited-by-balance')?.found?.si ?? Infinity;
    };
    expect(speed(0.8)).toBeLessThan(speed(undefined));
    expect(speed(0.4)).toBeGreaterThan(speed(undefined));
    const strict = { ...o, host: { ...o.host, leastWheelShare: { value: 0.8, source: 'Rule 9' } } };
    expect(find(strict, 'curve-speed-limited-by-balance')?.source).toBe('Rule 9');
  });

  it('a cross wind lowers the speed in a curve', () => {
    const o = outing([calm], fourOn('car'), {}, { plannedSpeed: 5 });
    const windy = { ...o, conditions: { ...o.conditions, crosswind: 12 } };
    const lowest = (x: Outing): number => Math.min(...ask(x).data.ceiling.speed);
    expect(lowest(windy)).toBeLessThan(lowest(o));
  });
});

describe('words of balance', () => {
  const findings = [
    ...Object.values(cases).flatMap((o) => ask(o).findings),
    ...ask(outing([unmeasured], fourOn('car'), { curves: [] })).findings,
    ...ask(outing([noFlange], fourOn('car'), { twist: undefined as never })).findings,
  ];

  it('cases cover every code', () => {
    expect([...new Set(codes(findings))].sort()).toEqual(Object.keys(balanceWords).sort());
  });

  it('nothing is blank, undefined or a bare code', () => {
    for (const system of ['imperial', 'metric'] as const) {
      for (const wording of ['us', 'uk'] as const) {
        const voice: Voice = { system, wording, outing: outing([calm], fourOn('car')) };
        for (const finding of findings) {
          const { what, why } = tellFinding(finding, voice);
          for (const sentence of [what, why]) {
            expect(sentence).toMatch(/^\S.*[.]$/);
            expect(sentence).not.toMatch(/undefined|NaN|Infinity|not known\b(?!,)| {2}|\(\)/);
          }
          expect(what).not.toContain(finding.code);
        }
      }
    }
  });
});

describe('remedies of balance', () => {
  it('slower in the curve, other seats and ballast, each re-checked', () => {
    const two = (first: string, second: string): Rider[] => [
      person('a', 110, { vehicle: 'car', seat: first }),
      person('b', 60, { vehicle: 'car', seat: second }),
    ];
    const lowest = (people: Rider[]): number => Math.min(...ask(outing([calm], people)).data.ceiling.speed);
    // Faster than the front seats bear, slower than the middle ones do.
    const plannedSpeed = (lowest(two('1', '2')) + lowest(two('2', '3'))) / 2;
    const o = outing([calm], two('1', '2'), {}, { plannedSpeed });
    const answer = answerOuting(o, { counts: false });
    const found = answer.findings.find((f) => f.code === 'curve-speed-limited-by-balance');
    const kinds = found?.remedies.map((r) => r.change.kind);
    expect(kinds).toContain('slower');
    expect(kinds).toContain('seat');
    expect(found?.remedies.every((r) => r.clears)).toBe(true);
  });

  it('a lone heavy rider on one end goes to the middle', () => {
    const o = outing([calm], [person('a', 110, { vehicle: 'car', seat: '1' })]);
    const lean = ask(o).findings.find(
      (f) => f.code === 'curve-speed-limited-by-balance' || f.code === 'lean-small',
    );
    const families = balanceFamilies(o, lean ?? ask(o).findings[0]);
    const [best] = families.flatMap((f) => f.changes).filter((c) => c.kind === 'seat');
    expect(best?.kind === 'seat' && ['2', '3']).toContain(best?.kind === 'seat' ? best.moves[0].seat : '');
  });

  it('ballast under the floor raises the speed, the more of it the more', () => {
    const o = outing([calm], fourOn('car'), {}, { plannedSpeed: 5 });
    const finding = find(o, 'curve-speed-limited-by-balance') as Finding;
    const ballast = balanceFamilies(o, finding)
      .flatMap((f) => f.changes)
      .filter((c) => c.kind === 'ballast');
    expect(ballast.length).toBeGreaterThan(3);
    const lowest = (x: Outing): number => Math.min(...ask(x).data.ceiling.speed);
    const speeds = ballast.map((c) => lowest(applyChange(o, c)));
    speeds.forEach((v, i) => {
      expect(v).toBeGreaterThan(i === 0 ? lowest(o) : speeds[i - 1]);
    });
  });
});
