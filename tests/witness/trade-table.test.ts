/** The trade's table against the main job: ordinary files, read and checked as anybody's are. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerOuting } from '../../engine/answer/complete.ts';
import { exact } from '../../engine/base/quantity.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { readOuting } from '../../papers/index.ts';
import { beside } from '../support/measured.ts';
import { runs } from '../support/tier.ts';
import { carsThatStop, given, type Rail, stopInFeet, tradePage, tradeTable } from './trade-table.ts';

/** Of the driver behind the front of the train, ft: the room is counted from there on. */
const SEAT = 3;

const head = (heedway: string, name: string) => ({ heedway, version: 1, name });

/** Everything as the table states it, without a spread; or with what the product assumes where a file is silent. */
type Silent = boolean;

function engineFile(rail: Rail, silent: Silent) {
  const force = given.brake[rail] * (given.engine + given.driver);
  return {
    ...head('vehicle', 'Engine'),
    role: 'engine',
    centreHeight: '12 in',
    gauge: '7-1/4 in',
    length: '6 ft',
    tare: `${given.engine} lb`,
    axleGroups: [
      { name: 'front', at: '1.5 ft', wheelBase: '10 in', driven: true },
      { name: 'rear', at: '4.5 ft', wheelBase: '10 in', driven: true },
    ],
    ...(silent ? {} : { rotatingShare: 0 }),
    resistance: { rolling: `${1000 * given.resistance} N/kN` },
    brakes: [
      {
        name: 'brake',
        kind: 'engine-only',
        // A force that is only stated is taken with a spread; a measured one with its own.
        force: silent
          ? `${force} lbf`
          : { value: force, low: force, high: force, unit: 'lbf', how: 'measured' },
        ...(silent ? {} : { deadTime: '0 s', buildUp: '0 s' }),
      },
    ],
    traction: { kind: 'drawbar', curve: [{ speed: '0 mph', force: '120 lbf' }] },
    seats: [{ name: 'driver', at: `${SEAT} ft`, height: '15 in', driver: true }],
  };
}

const carFile = (silent: Silent) => ({
  ...head('vehicle', 'Car'),
  role: 'car',
  centreHeight: '12 in',
  gauge: '7-1/4 in',
  length: '6 ft',
  tare: `${given.car} lb`,
  axleGroups: [
    { name: 'front', at: '1.2 ft', wheelBase: '10 in' },
    { name: 'rear', at: '4.8 ft', wheelBase: '10 in' },
  ],
  ...(silent ? {} : { rotatingShare: 0 }),
  resistance: { rolling: `${1000 * given.resistance} N/kN` },
});

const outingFile = (rail: Rail, percent: number, cars: number, silent: Silent) => ({
  ...head('outing', 'Trade table'),
  line: {
    ...head('line', 'Fall'),
    gauge: '7-1/4 in',
    shape: 'point-to-point',
    survey: 'levelled',
    profile: [
      { at: '0 ft', height: '0 ft' },
      { at: '2000 ft', height: `${-20 * percent} ft` },
    ],
    sights: [{ from: '0 ft', to: '2000 ft', distance: `${given.room + SEAT} ft` }],
  },
  train: {
    ...head('train', 'Engine and cars'),
    vehicles: [
      { vehicle: engineFile(rail, silent), id: 'engine' },
      ...(cars > 0 ? [{ vehicle: carFile(silent), id: 'car', count: cars }] : []),
    ],
  },
  host: {
    ...head('host', 'Host'),
    speed: { value: `${given.speed} mph`, source: 'made up' },
    stopMargin: { value: '0 ft', source: 'made up' },
  },
  plannedSpeed: `${given.speed} mph`,
  conditions: { railState: rail, ...(silent ? {} : { reaction: `${given.reaction} s` }) },
  riders: [
    { name: 'Driver', weight: `${given.driver} lb`, vehicle: 'engine', seat: 'driver', duty: 'driver' },
  ],
});

const MPH = 0.44704;

/** What no file states, as the table has it: a true fall, a brake that does running what is said of it, wheels that turn. */
function asTheTable(outing: Outing): Outing {
  const { assumed } = outing;
  const same = [{ speed: 0, friction: exact(1) }];
  return {
    ...outing,
    assumed: {
      ...assumed,
      adhesion: { ...assumed.adhesion, dry: exact(0.25), wet: exact(0.25) },
      gradeSpread: { ...assumed.gradeSpread, levelled: exact(0) },
      badSpot: { ...assumed.badSpot, length: exact(0) },
      // Blocks that nobody named fall as cast iron does and are as wet as composition.
      blockFriction: { ...assumed.blockFriction, 'cast-iron': same },
      blockWet: { ...assumed.blockWet, composition: exact(1) },
    },
  };
}

/** May it run at 7 mph where it sees 100 ft, half way down the fall? And how far it then goes, likely, ft. */
async function mainJob(rail: Rail, percent: number, cars: number, silent: Silent) {
  const content = JSON.stringify(outingFile(rail, percent, cars, silent));
  const read = await readOuting({ path: 'trade.json', content }, async () => undefined);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const outing = silent ? read.value : asTheTable(read.value);
  const map = answerOuting(outing, { remedies: false, counts: false }).speeds;
  if (!map) throw new Error('no speeds');
  const j = map.at.findIndex((s) => s >= 1000 * 0.3048);
  return { stops: map.limit[j] > (given.speed - 1e-6) * MPH, likely: map.likelyStop[j] / 0.3048 };
}

describe('the trade table', () => {
  const rows = tradeTable();
  const errors: number[] = [];
  beside(import.meta.url, 'the trade’s sum of unbraked cars: likely stop', 'closed form, by hand', errors);

  it('is done by hand: 2 % dry, four cars', () => {
    // W = 770 + 4·490 = 2730 lb; 115.5/2730 = 4.231 %; less 2 and with 0.3: 2.531 %, 0.8143 ft/s².
    // 7 mph = 10.267 ft/s; 1 s of 1.7 % gains 0.547: 10.540 ft and 10.814 ft/s; 10.814²/(2·0.8143) = 71.80 ft.
    expect(stopInFeet('dry', 2, 4)).toBeCloseTo(82.34, 1);
  });

  it('stands in the page', () => {
    const page = readFileSync(new URL('./README.md', import.meta.url), 'utf8');
    expect(page).toContain(tradePage());
  });

  for (const { rail, percent, cars } of rows) {
    it(`${rail}, ${percent} %: the main job stops ${cars} cars in 100 ft, and not one more`, async () => {
      for (const n of [cars, cars + 1].filter((c) => c >= 0)) {
        const { stops, likely } = await mainJob(rail, percent, n, false);
        const byHand = stopInFeet(rail, percent, n);
        expect(stops, `${n} cars`).toBe(byHand <= given.room);
        // The table of the ground and the steps of the stop: a thousandth.
        if (!stops) continue;
        errors.push(Math.abs(likely / byHand - 1));
        expect(errors[errors.length - 1]).toBeLessThan(2e-3);
      }
    });
  }

  it('what a silent file leaves to assume never adds a car', async () => {
    for (const { rail, percent } of rows.filter((_, i) => i % runs(4, 1) === 0)) {
      const most = carsThatStop(rail, percent);
      const { stops } = await mainJob(rail, percent, most + 1, true);
      expect(stops, `${rail} ${percent} %`).toBe(false);
    }
  });
});
