/**
 * Tests of a vehicle at a stand: tilted until a wheel lifts, a block put under one wheel, weighed under its axles, level and
 * with one end raised.
 *
 *   tilt      tan θ = (b/2 ± e)/h          h height of the centre (m), b between wheel contacts, e its place to one side
 *   weighing  R = W·(a − g₁ + h·tan α)/L   R load of the rear group with the front raised by α, a centre from the front end,
 *                                          g₁ front group, L between the groups; a vehicle free to roll, scales level
 *
 * Source: moments about a wheel's contact.
 */
import { fitReadings, type Parameter, type Reading, type Values } from '../fit.ts';
import { type Around, errorOf, sharedBy } from '../instruments.ts';
import { refuse } from '../refusal.ts';
import { type Looked, type Outcome, resultsOf } from '../result.ts';
import type { Recorded } from './recorded.ts';

export interface Tilt extends Recorded {
  readonly kind: 'tilt';
  /** Between the points where its wheels bear, across the track, m. */
  readonly contactWidth: number;
  /** The low side rests against a stop so high, its wheel rims stand so high, m. */
  readonly stopHeight: number;
  readonly rimHeight: number;
  /** At which the upper wheels lift, rad; towards which side it would fall. */
  readonly tilts: readonly { readonly side: 'left' | 'right'; readonly angle: number }[];
}

export interface WheelBlock extends Recorded {
  readonly kind: 'wheel-block';
  /** Height of the block under one wheel, m, and whether another wheel lifts. */
  readonly blocks: readonly { readonly height: number; readonly lifts: boolean }[];
}

export interface Weighing extends Recorded {
  readonly kind: 'weighing';
  /** kg under each of its axle groups, in their order, level. */
  readonly level: readonly (readonly number[])[];
  /** The same with the rail of the front group raised by so much, m. */
  readonly raised?: readonly { readonly by: number; readonly loads: readonly number[] }[];
}

/** A stop higher than this share of the rim holds the vehicle up (as bus tilt rules have it). */
const MOST_STOP = 2 / 3;
const LEAST_TILTS = 2;
const LEAST_WEIGHINGS = 2;

export function tilt(test: Tilt, { instruments, vehicle }: Around): Outcome {
  const { tilts, contactWidth } = test;
  if (test.stopHeight > MOST_STOP * test.rimHeight)
    return refuse('stop-too-high', { found: test.stopHeight, most: MOST_STOP * test.rimHeight });
  if (tilts.length < LEAST_TILTS)
    return refuse('too-few-readings', { found: tilts.length, needed: LEAST_TILTS });
  for (const [i, { angle }] of tilts.entries()) {
    if (Math.abs(angle) > Math.PI / 2) return refuse('upside-down', { angle });
    if (!(angle > 0.02))
      return refuse('out-of-range', {
        field: `tilts.${i}.angle`,
        found: angle,
        low: 0.02,
        high: Math.PI / 2,
      });
  }
  const mean = tilts.reduce((sum, t) => sum + t.angle, 0) / tilts.length;
  const before = vehicle?.centreHeight;
  const { low, high } = instruments.aside;
  const made = fitReadings({
    parameters: [
      { key: 'height', start: contactWidth / 2 / Math.tan(mean), law: 'log' },
      sharedBy('aside', { value: 0, low: low * contactWidth, high: high * contactWidth, how: 'assumed' }),
      sharedBy('level', instruments.tilt),
    ],
    readings: tilts.map(({ angle }): Reading => ({ value: angle, error: errorOf(instruments.tilt) })),
    kind: 'angle',
    model: (v) =>
      tilts.map(({ side }) => {
        const to = side === 'left' ? 1 : -1;
        return Math.atan((contactWidth / 2 + to * v['aside']) / v['height']) - to * v['level'];
      }),
  });
  if ('code' in made) return made;
  const height: Looked = {
    key: 'centreHeight',
    kind: 'length',
    of: (v) => v['height'],
    law: 'log',
    ...(before ? { before } : {}),
    belongs: [{ paper: 'vehicle', field: 'centreHeight' }],
  };
  return resultsOf(made, [height], test, 'more-readings');
}

/** No fit: it lies between the highest block that all wheels bore and the lowest that lifted one. */
export function wheelBlock({ blocks, source, date }: WheelBlock, { instruments }: Around): Outcome {
  const borne = Math.max(...blocks.filter((b) => !b.lifts).map((b) => b.height));
  const lifted = Math.min(...blocks.filter((b) => b.lifts).map((b) => b.height));
  if (!Number.isFinite(borne) || !Number.isFinite(lifted))
    return refuse('too-few-readings', { found: blocks.length, needed: 2 });
  const off = instruments.rule.high;
  const wrong = blocks.findIndex((b) => b.lifts && b.height + off < borne);
  if (wrong >= 0)
    return refuse('readings-disagree', {
      reading: wrong + 1,
      found: blocks[wrong].height,
      expected: borne,
      kind: 'length',
    });
  const [low, high] = [Math.max(0, borne - off), Math.max(borne, lifted) + off];
  return {
    ok: true,
    results: [
      {
        key: 'twistFreedom',
        kind: 'length',
        quantity: {
          value: (borne + lifted) / 2,
          low,
          high,
          how: 'measured',
          source,
          ...(date === undefined ? {} : { date }),
        },
        interval: [low, high],
        systematic: 0,
        surer: { by: 'readings' },
        careful: 'low',
        belongs: [{ paper: 'vehicle', field: 'suspension.twistFreedom' }],
      },
    ],
    correlations: [[1]],
    untold: [],
    scatter: 1,
    readings: blocks.length,
  };
}

export function weighing(test: Weighing, { instruments, vehicle }: Around): Outcome {
  if (!vehicle) return refuse('not-stated', { field: 'vehicle' });
  const { groups } = vehicle;
  const all = [...test.level, ...(test.raised ?? []).map((r) => r.loads)];
  if (test.level.length < LEAST_WEIGHINGS)
    return refuse('too-few-readings', { found: test.level.length, needed: LEAST_WEIGHINGS });
  if (all.some((loads) => loads.length !== groups.length || loads.some((l) => !(l > 0))))
    return refuse('not-stated', { field: 'groups' });
  const total = test.level[0].reduce((sum, l) => sum + l, 0);
  const two = groups.length === 2;
  const apart = two ? groups[1].at - groups[0].at : 1;
  const raised = two ? (test.raised ?? []) : [];
  const error = errorOf(instruments.weight);
  const readings = [...test.level, ...raised.map((r) => r.loads)].flatMap((loads) =>
    two
      ? loads.map((value) => ({ value, error: error * value }))
      : [{ value: sumOf(loads), error: error * total }],
  );
  const parameters: Parameter[] = [
    { key: 'tare', start: total, law: 'log' },
    ...(two ? [{ key: 'rear', start: test.level[0][1] / total, law: 'log' } as const] : []),
    ...(raised.length > 0
      ? [{ key: 'height', start: vehicle.centreHeight?.value ?? 0.4, law: 'log' } as const]
      : []),
    sharedBy('scales', instruments.scales),
    ...(two && raised.length > 0 ? [sharedBy('floor', instruments.floor)] : []),
  ];
  const made = fitReadings({
    parameters,
    readings,
    kind: 'mass',
    model: (v) => {
      const loads = (slope: number): number[] => {
        if (!two) return [v['tare'] / v['scales']];
        const rear = v['rear'] + ((v['height'] ?? 0) * slope) / apart;
        return [(v['tare'] * (1 - rear)) / v['scales'], (v['tare'] * rear) / v['scales']];
      };
      const floor = v['floor'] ?? 0;
      return [
        ...test.level.flatMap(() => loads(floor)),
        ...raised.flatMap(({ by }) => loads(floor + by / Math.sqrt(apart * apart - by * by))),
      ];
    },
  });
  if ('code' in made) return made;
  const belongs = (field: string) => [{ paper: 'vehicle', field } as const];
  const looked: Looked[] = [
    {
      key: 'tare',
      kind: 'mass',
      of: (v) => v['tare'],
      law: 'log',
      before: vehicle.tare,
      belongs: belongs('tare'),
    },
  ];
  if (two)
    looked.push({
      key: 'centreAt',
      kind: 'length',
      of: (v: Values) => groups[0].at + v['rear'] * apart,
      law: 'plain',
      belongs: belongs('centreAt'),
    });
  if (raised.length > 0)
    looked.push({
      key: 'centreHeight',
      kind: 'length',
      of: (v: Values) => v['height'],
      law: 'log',
      ...(vehicle.centreHeight ? { before: vehicle.centreHeight } : {}),
      belongs: belongs('centreHeight'),
    });
  return resultsOf(made, looked, test, 'more-readings');
}

const sumOf = (loads: readonly number[]): number => loads.reduce((sum, l) => sum + l, 0);
