/** How far the driver sees and from where, on a map laid by hand: 100 m of level line, a point every 10 m. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../engine/motion/prepare.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askSight } from '../../../engine/questions/sight/ask.ts';
import { askDriving } from '../../../engine/questions/sight/driving.ts';
import { sightRemedies } from '../../../engine/questions/sight/remedies.ts';
import type { SpeedMap } from '../../../engine/questions/speed/types.ts';
import { gearOf } from '../../support/brakes-left.ts';
import { altered, plain, rider } from '../../support/rules.ts';

const base = plain(2);
const heights = [
  { at: 0, height: 0 },
  { at: 100, height: 0 },
];
type Place = Outing['line']['places'][number];
const place = (id: string, kind: Place['kind'], more: Partial<Place> = {}): Place => ({
  id,
  name: id,
  kind,
  at: 50,
  stop: false,
  ...more,
});
const outing = (line: Partial<Outing['line']> = {}): Outing => ({
  ...base,
  line: { ...base.line, loop: false, length: 100, heights, places: [], sights: [], ...line },
});

describe('how far the driver sees', () => {
  const limited = (what: string, at: Record<number, number>): SpeedMap => ({
    railState: 'dry',
    step: 10,
    at: Float64Array.from({ length: 11 }, (_, j) => 10 * j),
    limit: Float64Array.from({ length: 11 }, (_, j) => at[j] ?? 3),
    reason: Uint16Array.from({ length: 11 }, (_, j) => (at[j] === undefined ? 0 : 1)),
    reasons: [
      { kind: 'host-line', what: 'host', source: '' },
      { kind: 'stopping-assumed-sight', what, source: '' },
    ],
    likelyStop: new Float64Array(11),
    cautiousStop: new Float64Array(11),
    gap: new Float64Array(11),
  });
  const said = (of: Outing, map = limited('assumed sight', {})) =>
    askSight(prepare(openOuting(of), 1, 0), map, new Float64Array(11).fill(3));
  const seen = { from: 0, to: 20, distance: 40, direction: 'both' as const };

  it('where nobody has said so, is a note if the train stops within what is assumed', () =>
    expect(said(outing())).toMatchObject([
      { code: 'sight-unknown', severity: 'notes', where: {}, measure: 'line.sights' },
    ]));
  it('is not made up for by meaning to creep: nobody drives slower than 2 mph', () => {
    const creeps = askSight(
      prepare(openOuting(outing()), 1, 0),
      limited('assumed sight', { 3: 0.8 }),
      new Float64Array(11).fill(0.7),
    );
    expect(creeps).toMatchObject([{ severity: 'unknown', found: { si: 0.8 }, required: { si: 0.89408 } }]);
    const walks = askSight(
      prepare(openOuting(outing()), 1, 0),
      limited('assumed sight', { 3: 0.9 }),
      new Float64Array(11).fill(0.7),
    );
    expect(walks).toMatchObject([{ severity: 'notes' }]);
  });
  it('cannot be told where it does not, at the place that is slowest', () => {
    const [only] = said(outing(), limited('assumed sight', { 3: 2, 4: 1.5, 7: 2 }));
    expect(only).toMatchObject({
      severity: 'unknown',
      where: { from: 30, to: 70 },
      found: { si: 1.5 },
      required: { si: 3 },
      margin: -0.5,
      facts: { at: { si: 40 }, sight: { si: base.assumed.sight } },
    });
    // The stop from 3 m/s and what must be kept; the eyes are behind the train's head.
    const { stop, behind } = only.facts as { stop: { si: number }; behind: { si: number } };
    expect(stop.si).toBeGreaterThan(base.assumed.stopMargin + (3 * 3) / (2 * 0.25 * 9.80665));
    expect(behind.si).toBeGreaterThan(0);
  });
  it('a speed as high as is wanted asks for nothing more', () =>
    expect(said(outing(), limited('assumed sight', { 3: 3, 4: 2.9995 }))).toMatchObject([
      { severity: 'notes' },
    ]));
  it('stated for running the other way is not stated', () => {
    expect(said(outing({ sights: [seen] }))).toEqual([]);
    expect(said(outing({ sights: [{ ...seen, direction: 'forward' }] }))).toEqual([]);
    expect(said(outing({ sights: [{ ...seen, direction: 'reverse' }] }))).toHaveLength(1);
  });
  it('of each place that may ask for a stop, where the others are stated', () => {
    const places = [
      place('signal', 'signal'),
      place('crossing', 'crossing'),
      place('points', 'switch'),
      place('halt', 'station'),
      place('stated', 'signal', { sight: 30 }),
      place('within', 'signal', { at: 20 }),
    ];
    const found = said(outing({ sights: [seen], places }), limited('points', { 4: 2 }));
    expect(found.map((f) => [f.where.place, f.severity, f.measure])).toEqual([
      ['signal', 'notes', 'line.places.signal.sight'],
      ['crossing', 'notes', 'line.places.crossing.sight'],
      ['points', 'unknown', 'line.places.points.sight'],
    ]);
    expect(found[2].where).toEqual({ place: 'points', from: 50, to: 50 });
  });

  describe('where a line states its short sights alone', () => {
    const needing = (stops: Record<number, number>): SpeedMap => ({
      ...limited('', {}),
      cautiousStop: Float64Array.from({ length: 11 }, (_, j) => stops[j] ?? 5),
    });
    const { sight, stopMargin } = base.assumed;
    const long = sight - stopMargin + 0.01;

    it('asks whether more is seen where a stop takes more than is assumed of lines that state none', () => {
      const stops = { 1: long, 5: long, 6: long + 8, 7: long, 9: long };
      expect(said(outing({ sights: [seen] }), needing(stops))).toMatchObject([
        {
          code: 'sight-taken-as-open',
          severity: 'notes',
          where: { from: 50, to: 70 },
          facts: { at: { si: 60 }, stop: { si: long + 8 + stopMargin }, others: 1 },
          measure: 'line.sights',
        },
      ]);
    });
    it('asks nothing where the stop is as short as that, has no end, or the sight is stated', () => {
      const stops = { 1: long, 5: sight - stopMargin, 7: Infinity };
      expect(said(outing({ sights: [seen] }), needing(stops))).toEqual([]);
    });
    it('what is stated for the other way states nothing for this one', () => {
      const ways = [seen, { ...seen, from: 50, to: 70, direction: 'reverse' as const }];
      expect(said(outing({ sights: ways }), needing({ 6: long }))).toHaveLength(1);
    });
  });
});

describe('who drives', () => {
  const driver = (vehicle: string) => rider('d', '1', { vehicle, duty: 'driver' });
  const guard = (vehicle: string) => rider('g', '4', { vehicle, duty: 'guard' });
  const said = (of: Outing) => askDriving(openOuting(of)).map((f) => [f.code, f.severity]);
  /** Two cars, then the engine. */
  const pushed = (brakes: Outing['train']['vehicles'][number]['brakes'] = []): Outing => {
    const [engine, first, second] = base.train.vehicles;
    return { ...base, train: { ...base.train, vehicles: [{ ...first, brakes }, second, engine] } };
  };
  const limits = [['propelled-without-lookout', 'limits']];

  it('is asked for where nobody is named', () => {
    expect(askDriving(openOuting(base))).toMatchObject([
      { code: 'driver-missing', severity: 'unknown', where: { vehicle: 'engine' }, measure: 'riders.duty' },
    ]);
    expect(said({ ...base, riders: [driver('engine')] })).toEqual([]);
  });
  it('behind cars that hide the track limits, with how many and how far behind', () => {
    const riders = [driver('engine')];
    const [only] = askDriving(openOuting({ ...pushed(), riders }));
    expect(only).toMatchObject({
      code: 'propelled-without-lookout',
      severity: 'limits',
      where: { vehicle: 'car1' },
      facts: { cars: 2, lookout: 'nobody' },
    });
    // Behind two cars of 2.4 m.
    expect(only.found?.si).toBeGreaterThan(4.8);
  });
  it('with a guard in front who can put a brake on does not', () => {
    const riders = [driver('engine'), guard('car1')];
    expect(said({ ...pushed([gearOf('automatic-vacuum')]), riders })).toEqual([]);
    expect(said({ ...pushed([gearOf('mechanical', { workedBy: 'guard' })]), riders })).toEqual([]);
    // The driver's, one that only parks, or none at all.
    expect(said({ ...pushed([gearOf('straight-air')]), riders })).toEqual(limits);
    expect(said({ ...pushed([gearOf('mechanical', { workedBy: 'guard', parking: true })]), riders })).toEqual(
      limits,
    );
    expect(askDriving(openOuting({ ...pushed(), riders }))[0].facts).toMatchObject({ lookout: 'no brake' });
    const behind = [driver('engine'), guard('car2')];
    expect(said({ ...pushed([gearOf('automatic-vacuum')]), riders: behind })).toEqual(limits);
  });

  it('may move to a driver’s seat in front, or the guard to the leading car', () => {
    const riders = [driver('engine'), guard('car2')];
    const { seats } = pushed().train.vehicles[1];
    const cab = altered(pushed(), 1, { seats: [{ ...seats[0], id: 'cab', driver: true }, ...seats] });
    const [finding] = askDriving(openOuting({ ...cab, riders }));
    const moves = (of: Outing) =>
      (sightRemedies['propelled-without-lookout']?.(of, finding) ?? []).flatMap(({ size, changes }) =>
        changes.flatMap((c) =>
          c.kind === 'seat' ? [[size, ...c.moves.map((m) => `${m.rider} ${m.vehicle} ${m.seat}`)]] : [],
        ),
      );
    expect(moves({ ...cab, riders })).toEqual([
      [1, 'd car2 cab'],
      [1, 'g car1 1'],
    ]);
    const taken = [...riders, rider('a', '1'), rider('b', 'cab', { vehicle: 'car2' })];
    expect(moves({ ...cab, riders: taken })).toEqual([[1, 'g car1 2']]);
    expect(moves({ ...cab, riders: [] })).toEqual([]);
  });
});
