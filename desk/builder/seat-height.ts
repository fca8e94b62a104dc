/** How high may the seat be? One car of the outing, with its people leaning as asked. */

import { wordOf } from '../../engine/answer/answer.ts';
import { turnFindings, turnOf } from '../../engine/answer/chainage.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { INCH } from '../../engine/base/constants.ts';
import { speedMeant, speedNamed } from '../../engine/motion/prepare.ts';
import type { Outing } from '../../engine/outing/types.ts';
import {
  HIGHEST,
  type SeatAsk,
  type SeatHeight,
  type SeatLimit,
  seatHeight,
} from '../../engine/questions/balance/seat-height.ts';
import type { Verdict } from '../../engine/questions/finding.ts';
import { isCar } from '../../engine/things/train/cars.ts';
import type { Vehicle } from '../../engine/things/vehicle/types.ts';
import { parseQuantity, printQuantity, type System, type Toward } from '../../units/index.ts';
import { tellFinding } from '../../words/finding.ts';
import type { WordTable } from '../../words/table.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { chainage, say, type Voice, vehicleName } from '../../words/voice.ts';
import { type FieldProblem, type Task, unstatedSpeed } from './task.ts';

/** As written. */
export interface WrittenSeat {
  /** Id of the vehicle. */
  readonly car: string;
  readonly lean: string;
  readonly who: string;
  /** Empty: as the outing is run. */
  readonly speed: string;
}

/** Vehicles with somebody on a seat. */
export const riddenCars = ({ train, riders }: Outing): readonly Vehicle[] =>
  train.vehicles.filter((v) => v.seats.length > 0 && isCar(v) && riders.some((r) => r.vehicle === v.id));

/** Half of what a seated grown person easily leans, by all of a car at once (common practice, no source). */
export const usualSeat = (outing: Outing, system: System): WrittenSeat => ({
  car: riddenCars(outing)[0]?.id ?? '',
  lean: system === 'imperial' ? '3 in' : '75 mm',
  who: 'all',
  speed: '',
});

type ReadSeat =
  | { readonly ok: true; readonly ask: SeatAsk; readonly outing: Outing }
  | { readonly ok: false; readonly problems: readonly FieldProblem<keyof WrittenSeat>[] };

export function readSeat(written: WrittenSeat, outing: Outing): ReadSeat {
  const problems: FieldProblem<keyof WrittenSeat>[] = [];
  const read = (field: 'lean' | 'speed', kind: 'length' | 'speed', least: number, most: number): number => {
    const parsed = parseQuantity(written[field], kind, field);
    if (!parsed.ok) problems.push({ field, message: parsed.problem.message });
    else if (parsed.si >= least && parsed.si <= most) return parsed.si;
    else problems.push({ field, message: `${field}: found ${written[field]}, which is out of range` });
    return Number.NaN;
  };
  const known = outing.train.vehicles.map((v) => v.id);
  if (!known.includes(written.car))
    problems.push({
      field: 'car',
      message: `car: found ${written.car || 'nothing'}; expected one of ${known.join(', ')}`,
    });
  const { who } = written;
  if (who !== 'all' && who !== 'one')
    problems.push({ field: 'who', message: `who: found ${who}; expected all or one` });
  const lean = read('lean', 'length', 0, 1);
  const speed = written.speed === '' ? undefined : read('speed', 'speed', 0.1, 20);
  if (problems.length > 0 || (who !== 'all' && who !== 'one')) return { ok: false, problems };
  return {
    ok: true,
    ask: { vehicle: written.car, lean, who },
    outing: speed === undefined ? outing : { ...outing, plannedSpeed: speed },
  };
}

const CENTIMETRE = 0.01;
/** Leans of the table, m. */
const leansIn = (system: System): number[] =>
  system === 'imperial'
    ? [1, 2, 3, 4, 5, 6].map((n) => n * INCH)
    : [2.5, 5, 7.5, 10, 12.5, 15].map((n) => n * CENTIMETRE);

export interface SeatAnswer extends Task {
  readonly found: SeatHeight | undefined;
  /** Of the whole outing with the seats so high. */
  readonly verdict?: Verdict;
}

export function askSeat(outing: Outing, ask: SeatAsk, voice: Voice): SeatAnswer {
  const found = seatHeight(outing, ask, leansIn(voice.system));
  const name = vehicleName(voice, ask.vehicle);
  if (!found) {
    return {
      found,
      said: [
        `Cannot tell how high the seats of ${name} may be: seat its people on it, and measure how high its centre of gravity lies (by the tilt test, empty).`,
      ],
      tables: [],
    };
  }
  const verdict = found.outing && wordOf(inquire(found.outing));
  return {
    found,
    ...(verdict === undefined ? {} : { verdict }),
    said: [
      ...answerWords(found, ask, outing, voice),
      ...wordWords(outing, verdict),
      ...cautions(found),
      ...(speedNamed(outing) === undefined
        ? [unstatedSpeed(say(voice, { si: speedMeant(outing), kind: 'speed' }))]
        : []),
    ],
    tables: [reasonTable(found, ask, outing, voice), leanTable(found, voice)],
  };
}

/** Where the car can be built at all is not asked: a seat below this is told as none, m. */
const NO_SEAT = 0.05;

/** A height of a seat, always in inches or millimetres up to a metre or so. */
const heightWords = (voice: Voice, si: number, toward: Toward): string =>
  voice.system === 'metric'
    ? printQuantity(si, 'length', { system: 'metric', unit: 'mm', digits: 0, toward })
    : say(voice, { si, kind: 'length' }, toward);

const seatWords = (voice: Voice, { height }: Pick<SeatLimit, 'height'>): string =>
  height === null || height < NO_SEAT
    ? 'no height'
    : height === Infinity
      ? `over ${heightWords(voice, HIGHEST, 'down')}`
      : heightWords(voice, height, 'down');

function answerWords(found: SeatHeight, ask: SeatAsk, outing: Outing, voice: Voice): string[] {
  const name = vehicleName(voice, ask.vehicle);
  const now = heightWords(voice, found.now, 'nearest');
  const { height, setBy } = found;
  if (!setBy) return [`Seats of ${name}: nothing asked here sets a height. Now ${now} above the rail.`];
  const why = limitWords(setBy, ask, outing, voice);
  if (height === null || height < NO_SEAT)
    return [
      `No seat of ${name} is low enough: ${why} even with seats at the rail. A heavier car, fewer people, less cant, less speed and people who sit still help; a lower seat does not.`,
    ];
  const by = height - found.now;
  const gap = heightWords(voice, Math.abs(by), by < 0 ? 'up' : 'down');
  const room =
    Math.abs(by) < 0.001 ? 'as now' : `now ${now}: ${by < 0 ? `lower them by ${gap}` : `room for ${gap}`}`;
  return [
    `Seats of ${name} may be ${seatWords(voice, { height })} above the rail (${room}).`,
    `What sets it: above that, ${why}.`,
  ];
}

function wordWords(outing: Outing, verdict: Verdict | undefined): string[] {
  if (verdict === undefined) return [];
  const now = wordOf(inquire(outing));
  return [
    `With the seats at that height the outing's word is: ${tellVerdict(verdict)}${verdict === now ? ', as now' : ` (now: ${tellVerdict(now)})`}.`,
  ];
}

const cautions = ({ centreKnown }: SeatHeight): string[] => [
  centreKnown
    ? 'What carries the seat is taken to weigh and lie as before: tilt the car again once it is built.'
    : 'Nobody measured how high its centre of gravity lies: it is taken as high as the seat. Tilt the empty car.',
];

function limitWords(limit: SeatLimit, ask: SeatAsk, outing: Outing, voice: Voice): string {
  const { speed } = limit;
  const at = limit.at === undefined ? '' : ` at ${chainage(voice, turnOf(outing)(limit.at))}`;
  const how =
    speed === undefined
      ? ''
      : speed > 0
        ? `, run at ${say(voice, { si: speed, kind: 'speed' })}`
        : ', standing';
  const lean = say(voice, { si: ask.lean, kind: 'length' }, 'up');
  const { host } = outing;
  switch (limit.reason) {
    case 'curve':
      return `a wheel keeps less of its load than it must in the curve${at}${how}`;
    case 'standing':
      return `it stands too light on one side${at}`;
    case 'all':
      return `it goes over if all its people lean ${lean} to one side${at}${how}`;
    case 'one':
      return `one rider who leans ${lean} lifts a wheel${at}${how}`;
    case 'host':
      return `the host forbids it (${host.seatHeight?.source ?? 'no rule'})`;
    case 'other': {
      const [turned] = limit.finding ? turnFindings(outing, [limit.finding]) : [];
      return turned ? tellFinding(turned, voice).what.replace(/\.$/, '') : 'another finding stands';
    }
  }
}

function reasonTable(found: SeatHeight, ask: SeatAsk, outing: Outing, voice: Voice): WordTable {
  const aside = ask.who === 'all' ? 'one' : 'all';
  const rows = found.limits
    .filter((l) => l.reason !== 'host' || outing.host.seatHeight)
    .toSorted((a, b) => (a.height ?? -1) - (b.height ?? -1) || 0);
  return {
    title: 'What sets the height',
    head: ['highest seat', 'above that', ''],
    rows: rows.map((l) => [
      seatWords(voice, l),
      l.height === Infinity
        ? `${kept[l.reason]}: kept as high as was looked`
        : limitWords(l, ask, outing, voice),
      l === found.setBy ? 'sets it' : l.reason === aside ? 'told only' : '',
    ]),
  };
}

const kept: Readonly<Record<SeatLimit['reason'], string>> = {
  curve: 'load of the wheels in curves',
  standing: 'standing on cant',
  all: 'all its people lean',
  one: 'one rider leans',
  host: "the host's rule",
  other: 'all else',
};

const leanTable = ({ byLean }: SeatHeight, voice: Voice): WordTable => ({
  title: 'How high by how far people lean',
  head: ['they lean', 'all together: it does not go over', 'one alone: no wheel lifts'],
  rows: byLean.map(({ lean, all, one }) => [
    say(voice, { si: lean, kind: 'length' }),
    seatWords(voice, all),
    seatWords(voice, one),
  ]),
  note: 'A seated grown person easily leans 6 in, 150 mm (common practice, no source). Leaning is behaviour: these are margins, not promises.',
});
