/** What is told of what a train strikes, comes near or can touch: figures by hand, each bound from both sides. All made up. */
import { describe, expect, it } from 'vitest';
import { lookAtClear } from '../../../desk/clear.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { keptClear } from '../../../engine/questions/clearance/kept-clear.ts';
import { lookAtClearance } from '../../../engine/questions/clearance/look.ts';
import { clearanceRemedies } from '../../../engine/questions/clearance/remedies.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import type { Line, PlaceKind } from '../../../engine/things/line/types.ts';
import { clearPlot } from '../../../views/clear-plot.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { curvesTable } from '../../../views/tables/clear.ts';
import { tellFinding } from '../../../words/finding.ts';
import { beside, besideSays, CAR, post } from '../../support/beside.ts';

type Case = Parameters<typeof beside>[0];
const HALF = CAR.width / 2;
const base = beside({});
const { play } = base.assumed.coupler;
/** A corner aslant in its play: by half of it times 1.5, as the ends lie 1.2 m from the middle and the guides 0.8 m. */
const most = HALF + (play.high / 2) * 1.5;
const least = HALF + (play.low / 2) * 1.5;
const WANTED = base.assumed.practice['clear-beside'].value;
const find = (of: Case, code: string): Finding | undefined =>
  besideSays(beside(of)).find((f) => f.code === code);
const words = (of: Case): string[] => besideSays(beside(of)).map((f) => `${f.code} ${f.severity}`);

describe('what is struck', () => {
  it('is told with what the vehicle takes, what is left for it, where and on which side', () => {
    const near = post({ id: 'a', name: 'Near', distance: HALF - 0.05, side: 'right', from: 70, to: 70 });
    const finding = find({ structures: [post({ distance: HALF - 0.02 }), near] }, 'strikes-structure');
    expect(finding).toMatchObject({
      severity: 'forbids',
      where: { vehicle: beside({}).train.vehicles[0].id, from: 70, to: 70 },
      facts: { structure: 'Near', side: 'right', others: 1 },
    });
    expect(finding?.found?.si).toBeCloseTo(least, 4);
    expect(finding?.required?.si).toBe(HALF - 0.05);
    expect(finding?.margin).toBeCloseTo((HALF - 0.05 - least) / (HALF - 0.05), 3);
    // On straight track it stands out of itself by its play alone, as likely.
    expect(finding?.facts).toMatchObject({ beyond: { si: expect.closeTo((play.value / 2) * 1.5, 4) } });
  });

  it('is told once for each weight, with as many others as there are structures', () => {
    const structures = [
      post({ id: '1', distance: HALF - 0.01 }),
      post({ id: '2', distance: HALF - 0.02 }),
      post({ id: '3', distance: (least + most) / 2 }),
    ];
    const told = besideSays(beside({ structures })).map((f) => [
      f.severity,
      'others' in f.facts && f.facts.others,
    ]);
    expect(told).toEqual([
      ['forbids', 1],
      ['limits', 0],
    ]);
  });

  it('touching to a micrometre is none', () => {
    expect(words({ structures: [post({ distance: most + 1e-5 })] })).toEqual(['little-room-beside limits']);
    expect(words({ structures: [post({ distance: most - 1e-5 })] })).toEqual(['strikes-structure limits']);
    expect(words({ structures: [post({ distance: least + 1e-5 })] })).toEqual(['strikes-structure limits']);
    expect(words({ structures: [post({ distance: least - 1e-5 })] })).toEqual(['strikes-structure forbids']);
  });

  it('on both sides alike is looked at on both', () => {
    const both = post({ side: 'both', distance: HALF + 0.2 });
    const { passings } = lookAtClearance(openOuting(beside({ structures: [both] })));
    expect(passings.map((p) => p.side)).toEqual(['left', 'right']);
    for (const p of passings) expect(p.body?.high.left).toBeCloseTo(HALF + 0.2 - most, 4);
  });
});

describe('people and what they sit on', () => {
  const slope = 0.02 / 0.2;
  const line = { cants: [{ at: 0, cant: 0.02 }], contactWidth: 0.2 };
  const { shoulder } = base.assumed.person;
  const leaned = (height: number, p: number): number => HALF + slope * height + (p / 2) * 1.5;

  it('are told beside it where they strike surely and it at its most alone', () => {
    const surely = leaned(CAR.seat + shoulder.value, play.value) - 1e-4;
    expect(surely).toBeGreaterThan(leaned(CAR.height, play.low));
    const told = words({ structures: [post({ distance: surely })], line, ridden: true });
    expect(told).toContain('rider-strikes-structure forbids');
    // Where it strikes as well, at its most, that is told too; where both strike alike, the car alone.
    const atMost = leaned(CAR.height, play.high) - 1e-4;
    const both = words({ structures: [post({ distance: Math.min(surely, atMost) })], line, ridden: true });
    expect(both).toEqual(
      expect.arrayContaining(['strikes-structure limits', 'rider-strikes-structure forbids']),
    );
    expect(both).not.toContain('rider-strikes-structure limits');
  });

  it('under a roof are looked at where they stand out above it, and not where it stands higher', () => {
    const { distance: _, ...over } = post({ from: 60, to: 64 });
    const head = base.assumed.person.head.high + CAR.seat;
    const people = (height: number): boolean => {
      const outing = beside({
        structures: [{ ...over, headroom: 2 }],
        ridden: true,
        vehicle: { envelope: { width: CAR.width, height } },
      });
      return lookAtClearance(openOuting(outing)).passings[0].people !== null;
    };
    expect([people(head - 0.001), people(head + 0.001)]).toEqual([true, false]);
  });
});

it('a head under a roof is told by the tape, not by the foot; the drawing names what stands by its number and what strikes', () => {
  const { distance: _, ...over } = post({ id: 'roof', name: 'Roof', from: 60, to: 64 });
  const seats = beside({}).train.vehicles[0].seats.map((s) => ({ ...s, height: 0.7 }));
  const outing = beside({
    structures: [
      { ...over, headroom: 1.61 },
      post({ id: 'b', name: 'Far fence', distance: 9 }),
      post({ id: 'c', name: 'Post', distance: HALF - 0.02 }),
      post({ id: 'd', name: 'Gate', distance: HALF + 0.05 }),
    ],
    ridden: true,
    vehicle: { seats },
  });
  const voice = { system: 'metric', wording: 'us', outing } as const;
  const head = besideSays(outing).find(
    (f) => f.code === 'rider-strikes-structure' && f.facts.side === 'over',
  );
  const high = Math.ceil(1000 * (head?.found?.si ?? Number.NaN));
  expect(high).toBeGreaterThan(1610);
  expect(head && tellFinding(head, voice).what).toContain(`${high} mm above the rail`);
  expect(head && tellFinding(head, voice).what).toContain('1610 mm');
  const scene = clearPlot(lookAtClear(outing), voice);
  const svg = scene ? sceneToSvg(scene) : '';
  expect(svg).toContain('3 Post: strikes · 4 Gate');
  expect(svg).not.toContain('Far fence');
});

describe('what comes near', () => {
  it('is told with what is left, of what is wanted', () => {
    const finding = find({ structures: [post({ distance: most + 0.02 })] }, 'little-room-beside');
    expect(finding?.found?.si).toBeCloseTo(0.02, 4);
    expect(finding?.required?.si).toBe(WANTED);
    expect(finding?.margin).toBeCloseTo((0.02 - WANTED) / WANTED, 2);
    expect(words({ structures: [post({ distance: most + WANTED - 1e-4 })] })).toHaveLength(1);
    expect(words({ structures: [post({ distance: most + WANTED + 1e-4 })] })).toEqual([]);
  });

  it('is within reach of an arm to its very end, of whoever sits there', () => {
    const arm = base.assumed.person.arm.high;
    const at = (room: number): string[] =>
      words({ structures: [post({ distance: most + room })], ridden: true });
    expect(at(arm - 1e-3)).toEqual(['within-arms-reach notes']);
    expect(at(arm + 1e-3)).toEqual([]);
    const { distance: _, ...over } = post();
    expect(words({ structures: [{ ...over, headroom: 1.5 }], ridden: true })).toEqual([]);
    const finding = find(
      {
        structures: [post({ distance: most + 0.3 }), post({ id: '2', name: 'Gate', distance: most + 0.2 })],
        ridden: true,
      },
      'within-arms-reach',
    );
    expect(finding?.facts).toEqual({ structure: 'Gate', others: 1 });
    expect(finding?.where).toMatchObject({ from: 60, to: 60 });
  });
});

describe('where something surely stands and nobody measured', () => {
  const place = (kind: PlaceKind, at: number, to?: number) =>
    ({
      id: `${kind}${at}`,
      name: `${kind} ${at}`,
      kind,
      at,
      ...(to === undefined ? {} : { to }),
      stop: false,
    }) as Line['places'][number];
  it('a tunnel, a bridge, a station: the first, with how many there are', () => {
    for (const kind of ['bridge', 'station'] as const)
      expect(words({ line: { places: [place(kind, 50)] } })).toEqual(['structures-not-measured notes']);
    expect(words({ line: { places: [place('tunnel', 50)] } })).toEqual(['structures-not-measured limits']);
    expect(words({ line: { places: [place('crossing' as PlaceKind, 50)] } })).toEqual([]);
    const [finding] = besideSays(
      beside({ line: { places: [place('station', 40), place('tunnel', 50, 60)] } }),
    );
    // The tunnel before the station, which is only noted.
    expect(finding).toMatchObject({ where: { place: 'tunnel 50', from: 50, to: 60 }, facts: { places: 2 } });
    const [long] = besideSays(beside({ line: { places: [place('tunnel', 50, 60)] } }));
    expect(long.where).toMatchObject({ from: 50, to: 60 });
  });

  it('of vehicles that nobody measured each name is told once; nothing beside the line asks for none', () => {
    const outing = beside({ structures: [post()] });
    const { envelope: _, ...bare } = outing.train.vehicles[0];
    const vehicles = ['x', 'y', 'y'].map((name, i) => ({ ...bare, id: `${i}`, name }));
    const train: Outing = { ...outing, train: { ...outing.train, vehicles } };
    const [finding] = besideSays(train);
    expect(finding).toMatchObject({ where: { vehicle: '0' }, facts: { vehicles: 'x, y' } });
    expect(besideSays({ ...train, line: { ...train.line, structures: [] } })).toEqual([]);
  });
});

describe('over the origin of a line that closes', () => {
  it('a wall from before it to beyond it is looked at in one piece', () => {
    const { length } = beside({}).line;
    const loop = { loop: true, length };
    const wall = post({ from: length - 3, to: 4, distance: HALF + 0.2 });
    const [{ body }] = lookAtClearance(openOuting(beside({ structures: [wall], line: loop }))).passings;
    const at = body?.high.at as number;
    expect(at >= length - 3 || at <= 4).toBe(true);
    const roof = { ...wall, headroom: CAR.height + 0.01 };
    expect(words({ structures: [roof], line: loop })).toContain('little-room-beside limits');
  });
});

describe('heights under a roof', () => {
  const roof = (more: Partial<Line>, from = 60, to = 60) => {
    const { distance: _, ...over } = post({ from, to, headroom: 2 });
    const { passings } = lookAtClearance(openOuting(beside({ structures: [over], line: more })));
    return { rise: passings[0].beyond, at: passings[0].body?.high.at };
  };
  const bent = (sign: number, at = 60) => ({
    length: 120,
    heights: [0, at, 120].map((s) => ({ at: s, height: sign * 0.05 * Math.abs(s - at) })),
  });

  it('in a sag the middle of the frame stands over the rail by half the guides times the slope', () => {
    expect(roof(bent(1)).rise).toBeCloseTo(0.05 * 0.8, 3);
  });

  it('over a crest an end does, by the chord of the guides produced', () => {
    // The front end over the crest with both guides behind it: the chord lies along the climb, no higher than the rail there.
    // 0.4 m beyond the crest its rail has fallen by 0.02 m, the climb produced has risen by as much.
    expect(roof(bent(-1), 60.4, 60.4).rise).toBeCloseTo(2 * 0.05 * 0.4, 3);
    expect(roof(bent(-1), 70, 70).rise).toBeCloseTo(0, 9);
  });

  it('is found within a long roof where it is most; canted track adds its higher edge, whichever it is', () => {
    const long = roof(bent(1), 50, 65);
    expect(long.rise).toBeCloseTo(0.05 * 0.8, 3);
    expect(long.at).toBeCloseTo(60, 1);
    for (const cant of [0.02, -0.02]) {
      const even = {
        heights: [0, 100].map((s) => ({ at: s, height: 0 })),
        length: 100,
        cants: [{ at: 0, cant }],
        contactWidth: 0.2,
      };
      expect(roof(even).rise).toBeCloseTo((HALF * 0.02) / 0.2, 12);
    }
  });
});

describe('what must be kept clear', () => {
  const short = { length: 20, heights: [0, 20].map((at) => ({ at, height: 0 })) };
  it('of each vehicle says from which height to which, with the heads of its people', () => {
    const { head } = base.assumed.person;
    const kept = (of: Case) => keptClear(openOuting(beside({ line: short, ...of })))?.bodies[0];
    const raised = { envelope: { width: CAR.width, height: CAR.height, underside: 0.1 } };
    expect(kept({ vehicle: raised })).toMatchObject({ underside: 0.1, top: CAR.height });
    expect(kept({ ridden: true })?.top).toBeCloseTo(CAR.seat + head.high, 12);
    const tall = { envelope: { width: CAR.width, height: 2 } };
    expect(kept({ vehicle: tall, ridden: true })?.top).toBe(2);
    const all = keptClear(openOuting(beside({ line: short })));
    expect(all?.bodies[0].left).toEqual(all?.left);
  });

  it('of a narrow and a wide vehicle is that of the wide one', () => {
    const outing = beside({ line: short });
    const [car] = outing.train.vehicles;
    const vehicles = [car, { ...car, id: 'wide', name: 'wide', envelope: { width: 0.9, height: 0.6 } }];
    const kept = keptClear(openOuting({ ...outing, train: { ...outing.train, vehicles } }));
    expect(kept?.left).toEqual(kept?.bodies[1].left);
    expect((kept?.bodies[1].right[0] ?? 0) - (kept?.bodies[0].right[0] ?? 0)).toBeCloseTo(0.1, 6);
  });
});

it('what stands there is set back, a roof is raised, by steps of 5 mm from what lacks; nothing else is', () => {
  const kinds = (of: Case, code: Finding['code']) => {
    const outing = beside(of);
    const finding = besideSays(outing).find((f) => f.code === code) as Finding;
    return (clearanceRemedies[code]?.(outing, finding) ?? []).map((family) => family.changes[0]?.kind);
  };
  expect(kinds({ structures: [post({ distance: HALF })] }, 'strikes-structure')[0]).toBe('set-back');
  const { distance: _, ...over } = post();
  expect(kinds({ structures: [{ ...over, headroom: 0.5 }] }, 'strikes-structure')[0]).toBe('raised');
  expect(kinds({ structures: [post({ distance: most + 0.01 })] }, 'little-room-beside')[0]).toBe('set-back');
  const sign = post({ distance: HALF - 0.1, bottom: 1 });
  expect(kinds({ structures: [sign], ridden: true }, 'rider-strikes-structure')).toEqual(
    expect.arrayContaining(['set-back', 'fewer-riders']),
  );
});

describe('vehicles without which it cannot be told', () => {
  const voice = { system: 'imperial', wording: 'us' } as const;
  const two = (bare: readonly number[], line: Partial<Line> = {}): Outing => {
    const outing = beside({ line });
    const [one] = outing.train.vehicles;
    const vehicles = [0, 1].map((i) => {
      const { envelope, ...rest } = { ...one, id: `v${i}`, name: `Car ${i}` };
      return bare.includes(i) ? rest : { ...rest, ...(envelope ? { envelope } : {}) };
    });
    return { ...outing, train: { ...outing.train, vehicles }, riders: [] };
  };
  const noteOf = (outing: Outing): string =>
    curvesTable(lookAtClear(outing), { ...voice, outing }).note ?? '';

  it('are named, with what to measure and how, whether some are known or none', () => {
    expect(noteOf(two([]))).not.toContain('measured');
    for (const [bare, names] of [
      [[1], 'Car 1 is: measure'],
      [[0, 1], 'Car 0, Car 1 are: measure of each'],
    ] as const)
      expect(noteOf(two(bare))).toContain(
        `Nobody measured how wide and how high ${names} its width at the widest with people seated, and its height, with a rule held level and plumb`,
      );
    expect(noteOf(two([1]))).toMatch(/Without Car 1, so that it may be too little/);
    expect(noteOf(two([0, 1]))).toMatch(/^Cannot tell\./);
  });

  it('that cannot stand in a curve are told apart from those that nobody measured', () => {
    const k = 1 / 0.5;
    const curves = [{ from: 20, to: 21, startCurvature: k, endCurvature: k, gaugeWidening: 0 }];
    expect(noteOf(two([1], { curves }))).toMatch(
      /^Cannot tell\. Nobody measured .* Car 1 is: .* Car 0 cannot stand in a curve of this line/,
    );
  });
});
