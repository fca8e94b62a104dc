/** A measured value that is too old, or of a part that was worked on since, counts as assumed again, and it is said. */
import { describe, expect, it } from 'vitest';
import type { Outing } from '../../../engine/outing/types.ts';
import { readOuting } from '../../../papers/index.ts';
import { examplePaper } from '../../support/papers.ts';

type Json = Readonly<Record<string, unknown>>;

const paper = (await examplePaper('battery-vacuum')) as Json;
const measured = (
  unit: string | undefined,
  value: number,
  low: number,
  high: number,
  date = '2026-03-01',
) => ({
  value,
  low,
  high,
  ...(unit === undefined ? {} : { unit }),
  how: 'measured',
  source: 'a test',
  date,
  fit: { id: 'a', factors: [1] },
});

interface Case {
  readonly days?: number;
  readonly date?: string | undefined;
  readonly worked?: readonly Json[];
  readonly tested?: string;
}

/** The example with its engine's bearings and brake tested, and the reaction of its driver. */
async function asked({ days, date = '2026-05-17', worked, tested = '2026-03-01' }: Case): Promise<Outing> {
  const train = paper['train'] as { vehicles: Json[] };
  const [engine, ...cars] = train.vehicles;
  const body = engine['vehicle'] as Json;
  const [motor, ...brakes] = body['brakes'] as Json[];
  const vehicle = {
    ...body,
    resistance: { rolling: measured('N/N', 0.0061, 0.006, 0.0062, tested) },
    brakes: [
      {
        ...motor,
        force: measured('N', 400, 390, 410, tested),
        deadTime: measured('s', 0.3, 0.29, 0.31, tested),
      },
      ...brakes,
    ],
    ...(worked ? { worked } : {}),
  };
  const { date: _date, ...rest } = paper;
  const content = JSON.stringify({
    ...rest,
    ...(date === '' ? {} : { date }),
    train: { ...train, vehicles: [{ ...engine, vehicle }, ...cars] },
    conditions: { ...(paper['conditions'] as Json), reaction: measured('s', 1, 0.9, 1.1, tested) },
    ...(days === undefined
      ? {}
      : { host: { ...(paper['host'] as Json), measuredLasts: { value: days, source: 'Rule 9' } } }),
  });
  const read = await readOuting({ path: 'o', content }, async () => undefined);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const rolling = (o: Outing) => o.train.vehicles[0].resistance.rolling;
const brake = (o: Outing) => o.train.vehicles[0].brakes[0];
const said = (o: Outing) => o.assumptions.filter((a) => a.key === 'measured/expired');

describe('by age', () => {
  it('without a rule it lasts', async () => {
    const o = await asked({ date: '2066-05-17' });
    expect(rolling(o)).toMatchObject({ value: 0.0061, low: 0.006, how: 'measured' });
    expect(said(o)).toEqual([]);
  });

  it.each([
    ['the last day that counts', '2026-05-30', false],
    ['the day after', '2026-05-31', true],
    ['before it was measured', '2026-02-28', true],
    ['of no day', '', true],
  ])('with one of 90 days: %s', async (_, date, gone) => {
    const o = await asked({ days: 90, date });
    expect(rolling(o).how).toBe(gone ? 'assumed' : 'measured');
    expect(o.conditions.reaction.how).toBe(gone ? 'assumed' : 'measured');
    const [{ where, source }] = said(o);
    // Of what day the example's hand lever was pulled nobody said.
    expect(where).toContain('force of hand lever of Bracken (no day stated)');
    if (!gone) return expect(where).not.toContain('rolling');
    expect(source).toBe('Rule 9');
    for (const of of [
      'rolling resistance of Bracken (2026-03-01)',
      'dead time',
      'force of motor brake',
      "driver's reaction",
    ])
      expect(where).toContain(of);
  });
});

describe('what stands in its place', () => {
  it('is what is assumed, with what was measured still within it', async () => {
    const o = await asked({ days: 1 });
    expect(rolling(o).low).toBeLessThan(0.006);
    expect(rolling(o).high).toBeGreaterThan(0.0062);
    expect(rolling(o)).not.toHaveProperty('fit');
    expect(brake(o).force?.low).toBeCloseTo(320, 6);
    expect(brake(o).force?.high).toBeCloseTo(460, 6);
    expect(brake(o).deadTime?.high).toBeGreaterThan(0.31);
  });
});

describe('by work on the part', () => {
  it.each([
    ['brakes', 'assumed', 'measured'],
    ['wheels', 'measured', 'assumed'],
    ['couplers', 'measured', 'measured'],
  ])('%s', async (part, force, roll) => {
    const o = await asked({ worked: [{ date: '2026-04-01', part }] });
    expect(brake(o).force?.how).toBe(force);
    expect(rolling(o).how).toBe(roll);
    expect(said(o)).toHaveLength(part === 'couplers' ? 0 : 1);
  });

  it('tested on that day or later it counts', async () => {
    for (const tested of ['2026-04-01', '2026-04-20']) {
      const o = await asked({ worked: [{ date: '2026-04-01', part: 'brakes' }], tested });
      expect(brake(o).force?.how).toBe('measured');
    }
  });
});
