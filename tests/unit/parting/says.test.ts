/**
 * How it weighs what becomes of what has parted. A train of an engine and three cars on 400 m without a loop; the
 * tail without any brake, of which nobody measured nothing: on made-up profiles one knows where it ends.
 */
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { ChainRow } from '../../../engine/questions/chains/row.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { askParting, endingOf } from '../../../engine/questions/part/ask.ts';
import { outcomes } from '../../../engine/questions/part/types.ts';
import type { Vehicle } from '../../../engine/things/vehicle/types.ts';
import { braked } from '../../support/brakes-left.ts';
import { rider } from '../../support/rules.ts';

type Height = readonly [at: number, height: number];
const FLAT: readonly Height[] = [
  [0, 0],
  [400, 0],
];
/** Up 3 in 100 all the way. */
const HILL: readonly Height[] = [
  [0, 0],
  [400, 12],
];
/** Down 3 in 100 and up again. */
const BOWL: readonly Height[] = [
  [0, 6],
  [200, 0],
  [400, 6],
];

function onLine(heights: readonly Height[], of: Outing = braked({ kind: 'mechanical' })): Outing {
  const { line } = of;
  return {
    ...of,
    plannedSpeed: 2,
    line: {
      ...line,
      loop: false,
      length: 400,
      curves: [],
      places: [],
      heights: heights.map(([at, height]) => ({ at, height })),
    },
  };
}
const chainless = [0, 1, 2].map((gap) => ({ gap, verdict: 'no chain' }) as ChainRow);
function said(outing: Outing, chains: readonly ChainRow[] = chainless, speed = 2): readonly Finding[] {
  const context = openOuting(outing);
  const { careful } = prepare(context, 1, 0);
  const speeds = new Float64Array(401).fill(speed);
  return askParting({ context, chains, careful, speeds, bodies: { rolling: [], grounds: [] }, spacing: 20 })
    .findings;
}
const words = (...of: Parameters<typeof said>): string[] =>
  said(...of).map((f) => `${f.severity}: ${f.code}`);

it('of endings but standing and rolling all are a runaway', () => {
  const of = outcomes.map((o) => [o, endingOf(o)]);
  expect(of.filter(([, e]) => e === 'stands').map(([o]) => o)).toEqual(['stands']);
  expect(of.filter(([, e]) => e === 'rolls').map(([o]) => o)).toEqual(['rolls']);
  expect(of.filter(([, e]) => e === 'runs-away')).toHaveLength(outcomes.length - 2);
});

describe('a tail without brakes', () => {
  it('at a stand on the level stays there: a note', () =>
    expect(words(onLine(FLAT), chainless, 0)).toEqual(['notes: tail-stands']));
  it('rolls to and fro in a bowl: limits', () => {
    const [only] = said(onLine(BOWL), chainless, 1);
    expect(`${only.severity}: ${only.code}`).toBe('limits: tail-rolls-back');
    // Everywhere of it, or nearly.
    expect(only.margin).toBeLessThan(-0.9);
  });
  it('runs off the foot of a hill: forbids, at its greatest speed', () => {
    const [only, ...more] = said(onLine(HILL));
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      code: 'tail-runs-away',
      severity: 'forbids',
      facts: { outcome: 'leaves-line', side: 'back', gaps: 3, leaks: false },
    });
    // From the top all the way down: no faster than by the fall alone; rolling and air take more than half of it.
    const fastest = Math.sqrt(2 * 9.80665 * 12);
    expect(only.found?.si).toBeLessThan(fastest);
    expect(only.found?.si).toBeGreaterThan(fastest / 3);
    expect(only.where.from).toBeGreaterThan(350);
  });
  it('tells how many gaps end so, and of which places', () => {
    const one = chainless.slice(1, 2);
    expect(said(onLine(HILL), one)[0]).toMatchObject({
      where: { gap: 1, vehicle: 'car1' },
      facts: { gaps: 1 },
    });
    expect(said(onLine(HILL), one)[0].margin).toBe(-1);
  });
  it('runs through where people stand: forbids, and names it', () => {
    const station = { id: 's', name: 'Halt', kind: 'station' as const, at: 150, stop: true };
    const bowl = onLine(BOWL);
    const found = said({ ...bowl, line: { ...bowl.line, places: [station] } }, chainless, 1);
    expect(found[0]).toMatchObject({
      code: 'tail-runs-away',
      severity: 'forbids',
      facts: { outcome: 'rolls-through-place', place: 'Halt' },
    });
  });
  it('meets the train that follows: forbids', () => {
    const following = { after: 10, speed: 2 };
    expect(said({ ...onLine(BOWL), following }, chainless, 1)[0]).toMatchObject({
      severity: 'forbids',
      facts: { outcome: 'meets-following' },
    });
  });
});

describe('a chain', () => {
  const hung = (outing: Outing, fastened?: boolean): Outing => {
    const chain = { count: 1, slack: 0.02 };
    const vehicles = outing.train.vehicles.map(
      (v): Vehicle => ({ ...v, front: { type: 'link', chain }, rear: { type: 'link', chain } }),
    );
    const { chainsFastened: _, ...train } = outing.train;
    return {
      ...outing,
      train: { ...train, vehicles, ...(fastened === undefined ? {} : { chainsFastened: fastened }) },
    };
  };
  it('that hangs there may be fastened: asked for where the tail would run away, and nowhere else', () => {
    expect(said(hung(onLine(HILL)))[0]).toMatchObject({
      code: 'tail-runs-away',
      severity: 'unknown',
      measure: 'train.chainsFastened',
    });
    expect(said(hung(onLine(HILL), false))[0]).toMatchObject({ severity: 'forbids' });
    expect(words(hung(onLine(BOWL)), chainless, 1)[0]).toBe('limits: tail-rolls-back');
  });
  it('that holds leaves no tail, and a train of which nothing is lost', () => {
    const holds = chainless.map((row) => ({ ...row, verdict: 'holds' }) as ChainRow);
    expect(words(onLine(HILL), holds)).toEqual([]);
    const replaced = chainless.map((row) => ({ ...row, verdict: 'holds, then replace' }) as ChainRow);
    expect(words(onLine(HILL), replaced)).toEqual([]);
    for (const verdict of ['too weak', 'cannot tell'] as const) {
      const weak = chainless.map((row) => ({ ...row, verdict }));
      expect(words(onLine(HILL), weak)).toEqual(['forbids: tail-runs-away']);
    }
  });
  it('that holds a train whose brake is lost with the hose, does not hold it on a hill', () => {
    const holds = chainless.map((row) => ({ ...row, verdict: 'holds' }) as ChainRow);
    const straight = onLine(HILL, braked({ kind: 'straight-air' }));
    expect(said(straight, holds)[0]).toMatchObject({ code: 'held-train-runs-away', severity: 'forbids' });
    const bowl = onLine(BOWL, braked({ kind: 'straight-air' }));
    expect(words(bowl, holds, 1)[0]).toBe('limits: held-train-rolls-back');
    expect(words(onLine(FLAT, braked({ kind: 'straight-air' })), holds, 0)).toEqual([]);
    expect(words(onLine(HILL, braked({ kind: 'automatic-air' })), holds)).toEqual([]);
  });
});

it('a tail that brakes by itself stands on a hill', () => {
  const [only] = said(onLine(HILL, braked({ kind: 'automatic-vacuum' })));
  expect(only).toMatchObject({ code: 'tail-stands', severity: 'notes', facts: { leaks: true } });
});

it('an electric brake of which nobody said what it does is asked for', () => {
  const [only] = said(onLine(HILL, braked({ kind: 'electric' })));
  expect(only).toMatchObject({ severity: 'forbids', measure: 'vehicle.brakes.brake.onSupplyLoss' });
});

it('a driver behind the gap leaves the head to itself: limits', () => {
  const outing = onLine(FLAT);
  const last = { ...outing, riders: [rider('d', '1', { vehicle: 'car2', duty: 'driver' })] };
  const found = said(last).filter((f) => f.code === 'head-unmanned');
  expect(found).toMatchObject([{ severity: 'limits', where: { gap: 0 } }]);
  expect(words(outing)).not.toContain('limits: head-unmanned');
});
