/**
 * How each single failure weighs. An engine without a brake and three braked cars on 400 m; the train runs at
 * 2 m/s for its first 300 and creeps on the last 100, so that with everything in order it stops on the line.
 */
import { describe, expect, it } from 'vitest';
import { exact } from '../../../engine/base/quantity.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askFailures } from '../../../engine/questions/failures/ask.ts';
import { singleFailures } from '../../../engine/questions/failures/question.ts';
import { braked } from '../../support/brakes-left.ts';

type Of = Parameters<typeof braked>[0];
/** Heights at every 100 m. */
const DOWN = [6, 4.5, 3, 1.5, 0];
const BOWL = [3, 0, 1.5, 3, 3];
const FLAT = [0, 0, 0, 0, 0];

function onLine(heights: readonly number[], of: Of): Outing {
  const outing = braked(of);
  return {
    ...outing,
    plannedSpeed: 2,
    line: {
      ...outing.line,
      loop: false,
      length: 400,
      curves: [],
      places: [],
      heights: heights.map((height, i) => ({ at: 100 * i, height })),
    },
  };
}
function asked(heights: readonly number[], of: Of, speed = 2) {
  const context = openOuting(onLine(heights, of));
  const { careful } = prepare(context, 1, 0);
  const speeds = Float64Array.from({ length: 401 }, (_, s) => (s < 300 ? speed : Math.min(speed, 0.3)));
  return askFailures({ context, careful, speeds, bodies: { rolling: [], grounds: [] }, spacing: 20 });
}
const words = (...of: Parameters<typeof asked>): string[] =>
  asked(...of).findings.flatMap((f) =>
    'failure' in f.facts ? [`${f.facts.failure} ${f.severity}: ${f.code.replace('failure-', '')}`] : [],
  );

describe('on a fall', () => {
  it('a train brake lost with hose or supply forbids; a driver who drops is a note; a cock limits', () =>
    expect(words(DOWN, { kind: 'straight-air' })).toEqual([
      'hose forbids: runs-away',
      'supply forbids: runs-away',
      'driver notes: runs-away',
      'pipe limits: runs-away',
    ]));
  it('one that comes on by itself leaves the driver and the cock', () =>
    expect(words(DOWN, { kind: 'automatic-air' })).toEqual([
      'driver notes: runs-away',
      'pipe limits: runs-away',
    ]));
  it('is told where and how fast, and what is lost', () => {
    const [hose, , driver, pipe] = asked(DOWN, { kind: 'straight-air' }).findings;
    expect(hose).toMatchObject({
      where: { gap: 0, vehicle: 'engine' },
      facts: { outcome: 'leaves-line', side: 'on', lost: 'straight-air' },
    });
    // No faster than by the fall of 6 m alone from 2 m/s.
    expect(hose.found?.si).toBeLessThan(Math.sqrt(2 * 9.80665 * 6 + 4));
    expect(hose.found?.si).toBeGreaterThan(2);
    expect(driver.where.vehicle).toBeUndefined();
    expect(pipe.where).toMatchObject({ gap: 0, vehicle: 'engine' });
  });
});

describe('in a bowl', () => {
  it('the train rolls to and fro, and what would forbid limits', () =>
    expect(words(BOWL, { kind: 'straight-air' })).toEqual([
      'hose limits: rolls-back',
      'supply limits: rolls-back',
      'driver notes: rolls-back',
      'pipe limits: rolls-back',
    ]));
});

describe('where the train stops all the same', () => {
  it('it is a note that a cock makes it stop late, and no word where it hardly does', () => {
    const { practice } = onLine(FLAT, { kind: 'straight-air' }).assumed;
    const found = asked(FLAT, { kind: 'straight-air' });
    const late = found.findings.filter((f) => f.code === 'failure-stops-late');
    expect(late).toMatchObject([{ severity: 'notes', facts: { failure: 'pipe' } }]);
    const [{ found: way, required: usual }] = late;
    expect((way?.si ?? 0) / (usual?.si ?? 1)).toBeGreaterThan(practice.late.value);
    expect(words(FLAT, { kind: 'straight-air' })).toEqual(['pipe notes: stops-late']);
    expect(words(FLAT, { kind: 'mechanical', gear: { workedBy: 'rider' } }, 1)).toEqual([]);
  });
});

it('a train that does not stop with everything in order is told of elsewhere', () => {
  const weak = asked(DOWN, { kind: 'straight-air', gear: { force: exact(1) } });
  expect(weak.data.map((row) => row.outcome)[0]).toBe('leaves-line');
  expect(weak.findings).toEqual([]);
});

it('that a guard sees in time that nobody drives is said to be assumed', () => {
  const keys = (of: Of): string[] =>
    asked(FLAT, of).findings.flatMap((f) =>
      f.code === 'assumed' && 'key' in f.facts ? [String(f.facts.key)] : [],
    );
  expect(keys({ kind: 'mechanical', gear: { workedBy: 'guard' }, guardOn: 'car2' })).toContain(
    'guard-notice',
  );
  expect(keys({ kind: 'automatic-air' })).not.toContain('guard-notice');
});

describe('a hose that comes off', () => {
  // What the question is told by those whose data it needs.
  const said = (code: string, outcome: string): string[] => {
    const outing = onLine(DOWN, { kind: 'straight-air' });
    const context = openOuting(outing);
    const running = Float64Array.from({ length: 401 }, (_, s) => (s < 300 ? 2 : s < 380 ? 0.3 : 0.1));
    const tells = {
      speed: { findings: [], data: { running } },
      balance: { findings: [], data: { data: { rolling: [], grounds: [] } } },
      part: { findings: [{ code, facts: { outcome } }], data: null },
    };
    const of = ({ id }: { readonly id: keyof typeof tells }) => tells[id];
    const asked = { context, ready: prepare(context, 1, 0), care: {}, of } as never;
    return singleFailures.ask(asked).findings.flatMap((f) => ('failure' in f.facts ? [f.facts.failure] : []));
  };
  const all = ['hose', 'supply', 'driver', 'pipe'];
  it('is said once, where the question of parting has said that a train held by its chains ends so', () => {
    expect(said('held-train-runs-away', 'leaves-line')).toEqual(all.slice(1));
    expect(said('held-train-rolls-back', 'leaves-line')).toEqual(all.slice(1));
  });
  it('is said where that ends otherwise, or speaks of a tail', () => {
    expect(said('held-train-runs-away', 'rolls-through')).toEqual(all);
    expect(said('tail-runs-away', 'leaves-line')).toEqual(all);
  });
});

describe('of the cocks', () => {
  it('the one that leaves the least brake is followed, by what blocks do at a stand', () => {
    // A weaker third car: shut off, it is missed least.
    const outing = onLine(FLAT, { kind: 'electric', gear: { force: exact(200) } });
    const [engine, one, two, three] = outing.train.vehicles;
    const strong = { ...two, brakes: [{ ...two.brakes[0], force: exact(600) }] };
    const context = openOuting({
      ...outing,
      train: { ...outing.train, vehicles: [engine, one, strong, three] },
    });
    const { careful } = prepare(context, 1, 0);
    const speeds = Float64Array.from({ length: 401 }, (_, s) => (s < 300 ? 2 : 0.3));
    const bodies = { rolling: [], grounds: [] };
    const { data } = askFailures({ context, careful, speeds, bodies, spacing: 20 });
    expect(data.find((row) => row.failure === 'cock')?.vehicle).toBe(2);
    expect(data.find((row) => row.failure === 'pipe')?.vehicle).toBe(0);
  });
});
