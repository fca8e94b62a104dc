/** Stops, starts, stands and partings where a stretch of the rail is not like the rest. */
import { beforeAll, describe, expect, it } from 'vitest';
import { leastBrake } from '../../../engine/motion/held.ts';
import { type Prepared, potentialOf, prepare } from '../../../engine/motion/prepare.ts';
import { sampleStops } from '../../../engine/motion/sample.ts';
import { likely } from '../../../engine/motion/scenario.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askSliding, howHard } from '../../../engine/questions/brakes/how-hard.ts';
import { askChains } from '../../../engine/questions/chains/ask.ts';
import { casesOf } from '../../../engine/questions/failures/left.ts';
import { pullsAlong } from '../../../engine/questions/haul/draws.ts';
import { carefulStart } from '../../../engine/questions/haul/start.ts';
import { standsOn } from '../../../engine/questions/hold/hold.ts';
import { basisOf } from '../../../engine/questions/part/basis.ts';
import { halvesAt } from '../../../engine/questions/part/map.ts';
import { partOf } from '../../../engine/questions/part/part.ts';
import { emptyRoll, noTraffic, roll } from '../../../engine/questions/part/roll.ts';
import { fastestAllowed, hardestPull, holdsFall, overcomes } from '../../../engine/questions/speed/holds.ts';
import type { Place, RailStretch } from '../../../engine/things/line/types.ts';
import type { RailState } from '../../../engine/things/rail.ts';
import { tellFinding } from '../../../words/finding.ts';
import { changedExample } from '../../support/changed-examples.ts';

let base: Outing;
beforeAll(async () => {
  base = await changedExample('steam-light', () => {});
});

const on = (railState: RailState, railStretches: readonly RailStretch[] = []): Outing => ({
  ...base,
  conditions: { ...base.conditions, railState, railStretches },
});
const ready = (outing: Outing, samples = 0): Prepared => prepare(openOuting(outing), 1, samples);
const stop = (outing: Outing, at: number, speed: number): number =>
  stopDistance(ready(outing).models(outing.conditions.railState).likely, at, speed);

const AT = 120;
const SPEED = 2.7;

describe('a stop', () => {
  it('wholly on a bad stretch is that of a bad day', () => {
    const all = stop(on('dry', [{ from: 0, to: base.line.length, state: 'greasy' }]), AT, SPEED);
    expect(all / stop(on('greasy'), AT, SPEED)).toBeCloseTo(1, 2);
    expect(all).toBeGreaterThan(1.3 * stop(on('dry'), AT, SPEED));
  });

  it('that meets no stretch is what it was', () => {
    const away = on('dry', [{ from: AT + 100, to: AT + 150, state: 'greasy' }]);
    expect(stop(away, AT, SPEED)).toBe(stop(on('dry'), AT, SPEED));
  });

  it('is the longer the longer the stretch, without a leap', () => {
    const stops = Array.from({ length: 25 }, (_, i) =>
      stop(on('dry', [{ from: AT + 2, to: AT + 2 + 0.02 + i, state: 'greasy' }]), AT, SPEED),
    );
    const [dry, greasy] = [stop(on('dry'), AT, SPEED), stop(on('greasy'), AT, SPEED)];
    expect(stops[0] / dry).toBeLessThan(1.02);
    stops.forEach((s, i) => {
      if (i === 0) return;
      expect(s).toBeGreaterThan(stops[i - 1] - 0.01);
      expect(s - stops[i - 1]).toBeLessThan(0.35 * (greasy - dry));
    });
  });

  it('on a stretch that was seen dry is shorter than on the greasy rest, not as short as on a dry day', () => {
    const shade = stop(on('greasy', [{ from: 0, to: AT + 200, state: 'dry' }]), AT, SPEED);
    expect(shade).toBeLessThan(0.85 * stop(on('greasy'), AT, SPEED));
    // Its blocks stay wet.
    expect(shade).toBeGreaterThan(1.01 * stop(on('dry'), AT, SPEED));
  });

  it('from a stretch passes its cautious figure about once in a hundred draws', async () => {
    const vacuum = await changedExample('battery-vacuum', () => {});
    const railStretches: RailStretch[] = [{ from: AT, to: AT + 40, state: 'greasy' }];
    const conditions = { ...vacuum.conditions, railState: 'dry' as const, railStretches };
    const leaves = ready({ ...vacuum, conditions }, 1000);
    const cautious = stopDistance(leaves.models('dry').cautious, AT + 15, SPEED);
    const drawn = sampleStops(leaves.inputs('dry'), AT + 15, SPEED, 2000, 7);
    expect(drawn.filter((d) => d > cautious).length / drawn.length).toBeLessThan(0.02);
    expect(drawn.filter((d) => d > 0.85 * cautious).length / drawn.length).toBeGreaterThan(0.01);
  });
});

describe('a fall that greasy rail does not hold', () => {
  const hardest = (railStretches: readonly RailStretch[]) => {
    const outing = on('dry', railStretches);
    const steep = {
      ...outing,
      line: {
        ...outing.line,
        heights: outing.line.heights.map((k) => ({ at: k.at, height: -0.012 * k.at })),
        loop: false,
      },
    };
    const { cautious } = ready(steep).models('dry');
    const brake = leastBrake(cautious, fastestAllowed([], 0));
    stopDistance(cautious, AT, SPEED);
    return {
      holds: holdsFall(cautious, brake, AT),
      there: overcomes(hardestPull(cautious, AT, AT + 5), brake),
    };
  };
  it('is found where the rail is greasy, and nowhere else', () => {
    expect(hardest([])).toEqual({ holds: true, there: false });
    expect(hardest([{ from: AT - 40, to: AT + 40, state: 'greasy' }])).toEqual({ holds: false, there: true });
    expect(hardest([{ from: AT + 150, to: AT + 170, state: 'greasy' }])).toEqual({
      holds: true,
      there: false,
    });
  });
});

describe('a start', () => {
  const startOn = (railStretches: readonly RailStretch[]) => {
    const context = openOuting(on('dry', railStretches));
    return carefulStart(context, pullsAlong(context, 1), 'dry', 100)!;
  };
  it('is made on the rail under the driven wheels', () => {
    const oiled = startOn([{ from: AT - 5, to: AT, state: 'greasy' }]);
    expect(oiled.rail).toBe('greasy');
    expect(oiled.at).toBeGreaterThan(AT - 5);
    expect(oiled.at).toBeLessThan(AT + 4);
    expect(oiled.pull).toBeLessThan(0.6 * startOn([]).pull);
  });
  it('on a short oily spot of a climb does not stall the train that runs over it; on a long one it does', () => {
    const steep = (railStretches: readonly RailStretch[]) => {
      const outing = on('dry', railStretches);
      const heights = outing.line.heights.map((k) => ({ at: k.at, height: 0.03 * k.at }));
      const context = openOuting({ ...outing, line: { ...outing.line, heights, loop: false } });
      return carefulStart(context, pullsAlong(context, 1), 'dry', 100)!;
    };
    const spot = steep([{ from: AT - 1, to: AT, state: 'greasy' }]);
    expect(spot.likelyPull).toBeLessThan(spot.crawlNeed);
    expect(spot.stalls).toBe(false);
    expect(steep([{ from: AT - 100, to: AT, state: 'greasy' }]).stalls).toBe(true);
    expect(startOn([{ from: 0, to: base.line.length, state: 'greasy' }]).stalls).toBe(
      carefulStart(openOuting(on('greasy')), pullsAlong(openOuting(on('greasy')), 1), 'greasy', 100)!.stalls,
    );
  });
});

describe('a standing train', () => {
  it('is asked about on each rail that it may stand on', () => {
    const context = openOuting(on('dry', [{ from: AT, to: AT + 30, state: 'greasy' }]));
    const { line, loaded } = context;
    const stands = standsOn(context, potentialOf(line, loaded, 0, 1, 0), 'dry');
    expect(stands.map((s) => s.rail)).toEqual(['dry', 'greasy']);
    expect(stands[1].at).toBeGreaterThanOrEqual(AT);
    expect(stands[1].at).toBeLessThanOrEqual(AT + 30 + loaded.length);
  });
});

describe('a parted tail', () => {
  /** Two automatic gears behind the gap: the tail brakes by itself. */
  const endOf = (
    outing: Outing,
    railStretches: readonly RailStretch[],
    railState: RailState = 'dry',
    speed = SPEED,
  ): number => {
    const context = openOuting({ ...outing, conditions: { ...outing.conditions, railState, railStretches } });
    const basis = basisOf(context, Math.ceil(context.line.length / 0.5), { rolling: [], grounds: [] });
    const { tail } = halvesAt(basis, 0, likely, false);
    const out = emptyRoll();
    roll(tail, Math.round(AT / basis.grid.step), speed, noTraffic, out);
    return out.at;
  };
  let vacuum: Outing;
  beforeAll(async () => {
    vacuum = await changedExample('battery-vacuum', () => {});
  });
  const greasy = (from: number, to: number): RailStretch[] => [{ from, to, state: 'greasy' }];

  it('wholly on greasy rail rolls as on a greasy day; where none is near, as on a dry one', () => {
    const all = endOf(vacuum, greasy(0, vacuum.line.length));
    const day = endOf(vacuum, [], 'greasy');
    expect(all - AT).toBeGreaterThan(1.2 * (endOf(vacuum, []) - AT));
    expect((all - AT) / (day - AT)).toBeCloseTo(1, 2);
    expect(endOf(vacuum, greasy(AT + 150, AT + 160))).toBe(endOf(vacuum, []));
  });

  it('goes the farther the longer the spot, without a leap: an inch of oil is not a greasy line', () => {
    const [dry, all] = [endOf(vacuum, []), endOf(vacuum, greasy(0, vacuum.line.length))];
    const ends = Array.from({ length: 25 }, (_, i) => endOf(vacuum, greasy(AT - 14, AT - 14 + 0.025 + i)));
    expect(ends[0] - dry).toBeLessThan(0.25 * (all - dry));
    ends.forEach((end, i) => {
      expect(end).toBeGreaterThan((ends[i - 1] ?? dry) - 0.02);
      expect(end - (ends[i - 1] ?? dry)).toBeLessThan(0.35 * (all - dry));
    });
    expect(ends[24]).toBeCloseTo(all, 1);
  });

  it('whose wheels a spot has locked rolls on with them locked', () => {
    // At a run sliding wheels give less on dry rail than this brake asks for, rolling ones more; slower they hold again.
    const way = (stretches: RailStretch[]): number => endOf(vacuum, stretches, 'dry', 7) - AT;
    const spot = way(greasy(AT + 8, AT + 8.2));
    expect(spot / way([])).toBeGreaterThan(1.01);
    expect(spot / way([])).toBeLessThan(1.1);
  });
});

describe('a train that somebody brakes in a failure', () => {
  it('eases on bad rail as in a stop: no shorter by more than 3 %, nor longer by more than 5 %', () => {
    const ratio = (long: number): number => {
      const outing = on('dry', long > 0 ? [{ from: AT + 1, to: AT + 1 + long, state: 'greasy' }] : []);
      const context = openOuting(outing);
      const basis = basisOf(context, Math.ceil(context.line.length / 0.5), { rolling: [], grounds: [] });
      const [{ left }] = casesOf(context);
      const whole = partOf(basis, 0, context.loaded.vehicles.length - 1, left.groups, likely, false);
      const out = emptyRoll();
      roll(whole, Math.round(AT / basis.grid.step), SPEED, noTraffic, out);
      return (out.at - AT) / stop(outing, AT, SPEED);
    };
    // Until the driver acts a stop counts on no resistance.
    const usual = ratio(0);
    for (const long of [0.5, 4, 12, 40]) {
      expect(ratio(long) / usual, `${long} m`).toBeGreaterThan(0.97);
      expect(ratio(long) / usual, `${long} m`).toBeLessThan(1.05);
    }
  });
});

describe('pulls on couplers and chains', () => {
  it('are those of the best rail on the way', () => {
    const parting = (railState: RailState, stretches: readonly RailStretch[] = []): number[] => {
      const context = openOuting(on(railState, stretches));
      return askChains(context, ready(on(railState)).brakes.groups).data.map((r) => r.parting);
    };
    const shade = [{ from: AT, to: AT + 20, state: 'dry' }] as const;
    expect(parting('greasy', shade)).toEqual(parting('dry'));
    expect(parting('greasy')[0]).toBeLessThan(parting('dry')[0]);
  });
});

describe('how hard one may brake', () => {
  it('is told of the day, and of the stretch that bears less, by name', () => {
    const { line } = base;
    const tunnel: Place = {
      id: 'hollow',
      name: 'Hollow Tunnel',
      kind: 'tunnel',
      at: AT,
      to: AT + 20,
      stop: false,
    };
    const outing = {
      ...on('damp', [{ from: AT, to: AT + 22, state: 'greasy' }]),
      line: { ...line, places: [...line.places, tunnel] },
    };
    const [told] = howHard(ready(outing));
    expect(told.day.share).toBe(howHard(ready(on('damp')))[0].share);
    expect(told.share).toBe(howHard(ready(on('greasy')))[0].share);
    const [finding] = askSliding(ready(outing), { howHard: [told], heldOn: null });
    const voice = { system: 'imperial', wording: 'us', outing } as const;
    expect(tellFinding(finding, voice).what).toMatch(
      /Brake no harder than .* on a damp rail, .* in Hollow Tunnel \(greasy, \d+ ft to \d+ ft\): /,
    );
    const [own] = askSliding(ready(on('damp')), { howHard: howHard(ready(on('damp'))), heldOn: null });
    expect(tellFinding(own, voice).what).not.toMatch(/ ft to /);
  });
});
