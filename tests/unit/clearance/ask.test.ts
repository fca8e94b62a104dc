import { describe, expect, it } from 'vitest';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { keptClear } from '../../../engine/questions/clearance/kept-clear.ts';
import { lookAtClearance } from '../../../engine/questions/clearance/look.ts';
import { clearanceRemedies } from '../../../engine/questions/clearance/remedies.ts';
import { beside, besideSays, CAR, post } from '../../support/beside.ts';

type Case = Parameters<typeof beside>[0];

/** Codes with their weights, in order. */
const told = (of: Case): string[] => besideSays(beside(of)).map((f) => `${f.code} ${f.severity}`);
const arc = (radius: number, from = 40, to = 90) => ({
  curves: [{ from, to, startCurvature: 1 / radius, endCurvature: 1 / radius, gaugeWidening: 0 }],
});
const HALF = CAR.width / 2;
const play = beside({}).assumed.coupler.play;

describe('beside straight track', () => {
  it('passes with room, and strikes what stands nearer than half its width', () => {
    expect(told({ structures: [post({ distance: HALF + 0.2 })] })).toEqual([]);
    expect(told({ structures: [post({ distance: HALF - 0.001 })] })).toEqual(['strikes-structure forbids']);
  });

  it('is limited where only the play of its flanges lets it touch, and where little is left', () => {
    const between = (play.low + play.high) / 4;
    expect(told({ structures: [post({ distance: HALF + between })] })).toEqual(['strikes-structure limits']);
    expect(told({ structures: [post({ distance: HALF + 0.045 })] })).toEqual(['little-room-beside limits']);
  });

  it('stands beside on its own side alone, between its own heights alone', () => {
    const near = { distance: HALF - 0.05 };
    const on = (side: 'left' | 'right') =>
      lookAtClearance(openOuting(beside({ structures: [post({ ...near, side })] }))).passings.map(
        (p) => p.side,
      );
    expect(on('right')).toEqual(['right']);
    expect(on('left')).toEqual(['left']);
    expect(told({ structures: [post({ ...near, bottom: CAR.height })] })).toEqual([]);
    expect(told({ structures: [post({ ...near, bottom: CAR.height - 0.01 })] })).toHaveLength(1);
    const raised = { envelope: { width: CAR.width, height: CAR.height, underside: 0.2 } };
    expect(told({ structures: [post({ ...near, top: 0.2 })], vehicle: raised })).toEqual([]);
    expect(told({ structures: [post({ ...near, top: 0.21 })], vehicle: raised })).toHaveLength(1);
    expect(told({ structures: [post({ ...near, top: 0.2 })] })).toEqual(['strikes-structure forbids']);
  });
});

describe('in curves', () => {
  const radius = 8;
  const axis = Math.sqrt(radius ** 2 - (CAR.guides / 2) ** 2);
  const inside = radius - axis + HALF;
  const outside = Math.hypot(axis + HALF, CAR.length / 2) - radius;
  const room = (side: 'left' | 'right', distance: number) =>
    told({ structures: [post({ side, distance })], line: arc(radius) });

  it('its middle hangs inward, its ends outward, by as much as the chord says', () => {
    expect(room('left', inside - 0.001)).toEqual(['strikes-structure forbids']);
    expect(room('left', inside + play.high + 0.051)).toEqual([]);
    expect(room('right', outside - 0.001)).toEqual(['strikes-structure forbids']);
    // Aslant in its play its end stands out by more than half of it.
    expect(room('right', outside + play.high + 0.051)).toEqual([]);
    expect(room('right', HALF + 0.04)).toEqual(['strikes-structure forbids']);
  });

  it('its ends swing out before the curve begins and after it has ended, not a car’s length from it', () => {
    const takes = (at: number): number => {
      const structures = [post({ from: at, to: at, side: 'right' })];
      const [{ body }] = lookAtClearance(openOuting(beside({ structures, line: arc(radius) }))).passings;
      return (body?.low.takes ?? 0) - HALF;
    };
    const straight = takes(20);
    expect(takes(39.8)).toBeGreaterThan(straight + 0.002);
    expect(takes(42)).toBeGreaterThan(straight + 0.04);
    expect(takes(90.2)).toBeGreaterThan(straight + 0.002);
    for (const far of [37, 93]) expect(takes(far)).toBeCloseTo(straight, 9);
  });

  it('of a long structure the nearest place counts', () => {
    const wall = post({ from: 30, to: 100, distance: HALF + 0.06 });
    const [{ body }] = lookAtClearance(
      openOuting(beside({ structures: [wall], line: arc(radius, 60, 70) })),
    ).passings;
    expect(body?.low.takes).toBeCloseTo(inside + play.low / 2, 2);
    expect(body?.low.at).toBeGreaterThan(60);
    expect(body?.low.at).toBeLessThan(70);
  });

  it('widened gauge lets it come nearer', () => {
    const wide = { curves: [{ ...arc(radius).curves[0], gaugeWidening: 0.02 }] };
    const structures = [post({ distance: inside + 0.005 })];
    expect(told({ structures, line: arc(radius) })).not.toEqual(['strikes-structure forbids']);
    expect(told({ structures, line: wide })).toEqual(['strikes-structure forbids']);
  });

  it('says where a frame is longer than the curve lets it stand', () => {
    expect(told({ structures: [post()], line: arc(0.78) })).toEqual(['frame-too-long-for-curve forbids']);
  });
});

it('canted track leans it over its lower rail, the higher the more', () => {
  const line = { cants: [{ at: 0, cant: 0.02 }], contactWidth: 0.2 };
  const lean = (top: number): number => (0.02 / 0.2) * top;
  const low = post({ distance: HALF + lean(0.3) - 0.001, top: 0.3 });
  expect(told({ structures: [low], line })).toEqual(['strikes-structure forbids']);
  expect(told({ structures: [{ ...low, side: 'right' }], line })).not.toEqual(['strikes-structure forbids']);
  const high = post({ distance: HALF + lean(CAR.height) - 0.001 });
  expect(told({ structures: [high], line })).toEqual(['strikes-structure forbids']);
});

describe('people who stand out above what they sit on', () => {
  const slope = 0.02 / 0.2;
  const line = { cants: [{ at: 0, cant: 0.02 }], contactWidth: 0.2 };
  const shoulders = (of: 'low' | 'value' | 'high'): number =>
    HALF + slope * (CAR.seat + beside({}).assumed.person.shoulder[of]);
  const at = (distance: number, more: Partial<ReturnType<typeof post>> = {}) =>
    told({ structures: [post({ distance, ...more })], line, ridden: true });

  it('are leaned over the lower rail by canted track farther than the car under them', () => {
    expect(CAR.height).toBeLessThan(CAR.seat + beside({}).assumed.person.shoulder.low);
    expect(at(shoulders('value') + play.value / 2 - 0.001)).toEqual([
      'rider-strikes-structure forbids',
      'within-arms-reach notes',
    ]);
    expect(at(shoulders('high') + play.high / 2 - 0.001)).toContain('rider-strikes-structure limits');
    // 2 in are wanted beside their shoulders, not beside the car.
    expect(at(shoulders('high') + play.high / 2 + 0.049)).toContain('little-room-beside limits');
    expect(at(shoulders('high') + play.high / 2 + 0.052)).toEqual(['within-arms-reach notes']);
  });

  it('not beside what is no higher than the car, nor where nobody rides', () => {
    const near = shoulders('value') - 0.001;
    expect(at(near, { top: CAR.height })).not.toContain('rider-strikes-structure forbids');
    const bare = told({ structures: [post({ distance: near })], line });
    expect(bare.filter((f) => f.includes('strikes'))).toEqual([]);
  });

  it('are not told where the car strikes as well', () => {
    expect(at(HALF)).toEqual(['strikes-structure forbids', 'within-arms-reach notes']);
  });

  it('must be left clear of with their shoulders', () => {
    const outing = beside({ line, ridden: true });
    const { left } = keptClear(openOuting(outing)) as NonNullable<ReturnType<typeof keptClear>>;
    expect(Math.max(...left)).toBeCloseTo(shoulders('high') + play.high / 2, 2);
  });
});

describe('under a roof', () => {
  const roof = (headroom: number) => {
    const { distance: _none, ...over } = post({ from: 60, to: 64, name: 'Bridge' });
    return { ...over, headroom };
  };
  it('the body strikes, or people’s heads', () => {
    expect(told({ structures: [roof(CAR.height - 0.01)] })).toEqual(['strikes-structure forbids']);
    expect(told({ structures: [roof(CAR.height + 0.03)] })).toEqual(['little-room-beside limits']);
    expect(told({ structures: [roof(CAR.height + 0.1)] })).toEqual([]);
    const { head } = beside({}).assumed.person;
    const ridden = (headroom: number) => told({ structures: [roof(headroom)], ridden: true });
    expect(ridden(CAR.seat + head.value - 0.01)).toEqual(['rider-strikes-structure forbids']);
    expect(ridden(CAR.seat + head.high - 0.01)).toEqual(['rider-strikes-structure limits']);
    expect(ridden(CAR.seat + head.high + 0.01)).toEqual([]);
  });

  it('a sag lifts the middle of its frame toward it', () => {
    // Down and up at 1 in 10: the middle stands 0.08 m over the rail between guides 1.6 m apart.
    const heights = [
      { at: 0, height: 6.2 },
      { at: 62, height: 0 },
      { at: 124, height: 6.2 },
    ];
    const line = { heights, length: 124 };
    expect(told({ structures: [roof(CAR.height + 0.075)], line })).toEqual(['strikes-structure forbids']);
    expect(told({ structures: [roof(CAR.height + 0.14)], line })).toEqual([]);
  });
});

it('a sign at the height of heads strikes people and not the car', () => {
  const sign = post({ distance: HALF - 0.1, bottom: 1 });
  expect(told({ structures: [sign] })).toEqual([]);
  const struck = told({ structures: [sign], ridden: true });
  expect(struck).toContain('rider-strikes-structure forbids');
  expect(struck.filter((word) => word.startsWith('strikes'))).toEqual([]);
  const higher = post({ distance: HALF - 0.1, bottom: 1.25 });
  expect(told({ structures: [higher], ridden: true })).toContain('rider-strikes-structure limits');
});

it('people can touch what is within an arm’s reach, and only they', () => {
  const structures = [post({ distance: HALF + 0.5 })];
  expect(told({ structures })).toEqual([]);
  expect(told({ structures, ridden: true })).toEqual(['within-arms-reach notes']);
  expect(told({ structures: [post({ distance: HALF + 0.8 })], ridden: true })).toEqual([]);
});

it('asks for what nobody measured', () => {
  const { envelope: _none, ...bare } = beside({}).train.vehicles[0];
  const outing = beside({ structures: [post()] });
  const unmeasured = { ...outing, train: { ...outing.train, vehicles: [bare] } };
  expect(besideSays(unmeasured).map((f) => `${f.code} ${f.severity} ${f.measure}`)).toEqual([
    'body-not-measured unknown vehicle.envelope',
  ]);
  const tunnel = { id: 't', name: 'Tunnel', kind: 'tunnel', at: 50, to: 60, stop: false } as const;
  expect(told({ line: { places: [tunnel] } })).toEqual(['structures-not-measured limits']);
  // What stands elsewhere tells nothing of it; what stands at its mouth does.
  const far = post({ from: 20, to: 20 });
  expect(told({ structures: [far], line: { places: [tunnel] } })).toEqual(['structures-not-measured limits']);
  const mouth = post({ from: 62, to: 62 });
  expect(told({ structures: [mouth], line: { places: [tunnel] } })).toEqual([]);
});

it('what is promised to clear it clears it', () => {
  for (const structure of [
    post({ distance: HALF - 0.03 }),
    { ...post(), distance: undefined, headroom: 0.5 },
  ]) {
    const { distance, ...rest } = structure;
    const outing = beside({ structures: [distance === undefined ? rest : { ...rest, distance }] });
    const [finding] = besideSays(outing);
    const [{ changes }] = clearanceRemedies[finding.code]?.(outing, finding) ?? [];
    const clears = changes.find((c) => besideSays(applyChange(outing, c)).length === 0);
    expect(clears, finding.code).toBeDefined();
  }
});

it('an engine that strikes is not left behind, nor the last of its cars before it', () => {
  const outing = beside({ structures: [post({ distance: HALF - 0.03 })] });
  const [car] = outing.train.vehicles;
  const engine = { ...car, id: 'engine', role: 'engine' as const };
  const leaves = (vehicles: readonly (typeof car)[], vehicle: string) => {
    const train = { ...outing, train: { ...outing.train, vehicles } };
    const [finding] = besideSays(train);
    const struck = { ...finding, where: { ...finding.where, vehicle } };
    const families = clearanceRemedies['strikes-structure']?.(train, struck) ?? [];
    return families.flatMap(({ changes }) => changes).filter((c) => c.kind === 'fewer-cars');
  };
  expect(leaves([engine, car], engine.id)).toEqual([]);
  expect(leaves([engine, car], car.id)).toEqual([{ kind: 'fewer-cars', leave: [car.id] }]);
  expect(leaves([car], car.id)).toEqual([]);
});

describe('what must be kept clear', () => {
  const clear = (of: Case) => keptClear(openOuting(beside(of)));
  it('on straight track is half the width and the play, on either side alike', () => {
    const kept = clear({});
    expect(kept?.at.length).toBeGreaterThan(10);
    for (const side of ['left', 'right'] as const)
      for (const reach of kept?.[side] ?? []) {
        expect(reach).toBeGreaterThan(HALF + play.high / 2 - 1e-9);
        // Aslant in its play its ends stand out by twice their overhang over the guides at most.
        expect(reach).toBeLessThan(HALF + (play.high / 2) * (1 + (2 * CAR.overhang) / CAR.guides) + 1e-3);
      }
    expect(kept?.without).toEqual([]);
  });
  it('in a curve is more, inside by its middle and outside by its ends', () => {
    const kept = clear({ line: arc(8, 100, 140) });
    const most = (of: readonly number[] = []): number => Math.max(...of);
    const axis = Math.sqrt(8 ** 2 - (CAR.guides / 2) ** 2);
    expect(most(kept?.left)).toBeGreaterThan(8 - axis + HALF);
    expect(most(kept?.right)).toBeGreaterThan(Math.hypot(axis + HALF, CAR.length / 2) - 8);
    expect(most(kept?.left)).toBeLessThan(8 - axis + HALF + 2 * play.high);
  });
  it('is not known of a vehicle that nobody measured, nor where a frame cannot stand', () => {
    const { envelope: _, ...bare } = beside({}).train.vehicles[0];
    const outing = beside({});
    expect(
      keptClear(openOuting({ ...outing, train: { ...outing.train, vehicles: [bare] } })),
    ).toBeUndefined();
    const two = [...outing.train.vehicles, { ...bare, id: 'bare', name: 'bare' }];
    expect(keptClear(openOuting({ ...outing, train: { ...outing.train, vehicles: two } }))?.without).toEqual([
      'bare',
    ]);
    expect(clear({ line: arc(0.78) })).toBeUndefined();
  });
});
