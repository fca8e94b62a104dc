/**
 * Grade C: partings against independent code. 320 random halves, with brakes that come on by themselves and
 * without any, on loops and on lines with ends, against a plain vehicle-by-vehicle run by `ode-rk4` in time
 * (tests/support/plain-roll.ts shares only input types with the engine).
 */
import { describe, expect, it } from 'vitest';
import { likely } from '../../../engine/motion/scenario.ts';
import { basisOf } from '../../../engine/questions/part/basis.ts';
import { halvesAt } from '../../../engine/questions/part/map.ts';
import { emptyRoll, noTraffic, roll } from '../../../engine/questions/part/roll.ts';
import { beside } from '../../support/measured.ts';
import { plainRoll } from '../../support/plain-roll.ts';
import { drawer, randomOuting } from '../../support/random-outings.ts';
import { ready } from '../../support/ready.ts';
import { runs } from '../../support/tier.ts';

const CASES = runs(80, 320);

interface Compared {
  readonly seed: number;
  readonly nearBalance: boolean;
  readonly sameEnd: boolean;
  /** m, s, m/s */
  readonly rest: number;
  readonly time: number;
  readonly top: number;
  /** m/s, of the speed once it has rolled off again */
  readonly off: number;
  readonly turns: number;
  readonly braked: boolean;
}

function compare(seed: number): Compared {
  const whole = randomOuting(seed + 70_000, 2 + (seed % 7));
  // Every second train has no pipe behind the engine: its tail has no brake at all.
  const outing = seed % 2 ? whole : { ...whole, train: { ...whole.train, pipeBrokenAfter: [0] } };
  const { context } = ready(outing);
  const { line, loaded } = context;
  const draw = drawer(seed);
  const basis = basisOf(context, Math.ceil(line.length / 0.5), { rolling: [], grounds: [] });
  const gap = Math.floor(draw(0, loaded.vehicles.length - 1));
  const { tail, tailLeft } = halvesAt(basis, gap, likely, false);
  const node = Math.ceil((loaded.length + draw(0, line.length - loaded.length - 2)) / basis.grid.step);
  const speed = draw(0.5, 5);
  const out = emptyRoll();
  roll(tail, node, speed, noTraffic, out);
  const plain = plainRoll(
    {
      line,
      vehicles: loaded.vehicles.slice(gap + 1),
      groups: tailLeft.groups,
      assumed: outing.assumed,
      adhesion: outing.assumed.adhesion.dry.value,
    },
    node * basis.grid.step,
    speed,
  );
  const rests = out.outcome === 'stands' || out.outcome === 'rolls';
  return {
    seed,
    nearBalance: out.nearBalance,
    sameEnd: rests ? plain.how === 'rests' : plain.how === out.outcome,
    rest: rests && plain.how === 'rests' ? Math.abs(out.at - plain.at) : 0,
    time: rests ? Math.abs(out.time - plain.time) / Math.max(plain.time, 1) : 0,
    top: Math.abs(out.topSpeed - plain.topSpeed) / plain.topSpeed,
    off: Math.abs(out.rollsOff - plain.rollsOff),
    turns: out.turns,
    braked: tailLeft.groups.length > 0,
  };
}

describe('partings against ode-rk4 on a plain right-hand side', () => {
  const all = Array.from({ length: CASES }, (_, i) => compare(i + 1));
  const firm = all.filter((c) => !c.nearBalance);
  const beyond = (limit: number, of: (c: Compared) => number): string[] =>
    firm.filter((c) => of(c) > limit).map((c) => `seed ${c.seed}: ${of(c)} (${c.turns} turns)`);

  it('looks at tails with and without brakes, and few near balance', () => {
    expect(firm.length).toBeGreaterThanOrEqual((300 / 320) * CASES);
    expect(firm.filter((c) => c.braked).length).toBeGreaterThan(CASES / 3.2);
    expect(firm.filter((c) => !c.braked && c.turns > 0).length).toBeGreaterThan(CASES / 6.4);
  });
  const told = (what: string, of: (c: Compared) => number, unit?: string): void =>
    beside(import.meta.url, what, '`ode-rk4` on a plain right-hand side', firm.map(of), unit);
  told('halves of a parted train: where they rest', (c) => c.rest, 'm');
  told('halves of a parted train: time until they rest', (c) => c.time);
  told('halves of a parted train: greatest speed', (c) => c.top);
  told('halves of a parted train: speed once rolled off again', (c) => c.off, 'm/s');

  it('ends the same way', () => expect(firm.filter((c) => !c.sameEnd)).toEqual([]));
  it('rests within 5 cm', () => expect(beyond(0.05, (c) => c.rest)).toEqual([]));
  it('takes the same time to 1 %', () => expect(beyond(0.01, (c) => c.time)).toEqual([]));
  it('runs as fast to 0.5 %', () => expect(beyond(0.005, (c) => c.top)).toEqual([]));
  it('and once it has stood, to 2 cm/s', () => expect(beyond(0.02, (c) => c.off)).toEqual([]));
});
