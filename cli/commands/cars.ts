/** heedway cars: how many cars can be pulled, stopped, held and are allowed, for every rail state. */
import {
  countWays,
  countWords,
  engineBrakeNote,
  heldNote,
  leastReason,
  leastWords,
  limitLines,
  mostWords,
} from '../../desk/count-ways.ts';
import { countCars } from '../../desk/stops.ts';
import type { CarCount } from '../../engine/answer/types.ts';
import { tellRail } from '../../words/rails.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, type Options, voiceOf } from '../command.ts';
import { asksRecords } from '../gate.ts';
import { table } from '../text.ts';

export const carsCommand: Command = {
  name: 'cars',
  declare: (program, run) => {
    asksRecords(common(program.command('cars <outing>')))
      .description('How many cars: pulled, stopped, held, allowed by the host; the least counts.')
      .action((path: string, options: Options) =>
        run(async (gate) => {
          const outing = await gate.outing(path);
          const cars = countCars(outing);
          return { text: countsText(cars, voiceOf(options, outing)), json: countsJson(cars), exit: 0 };
        }, options),
      );
  },
};

/** Counts for every rail, and what sets each on today's. */
export function countsText(cars: readonly CarCount[], voice: Voice): string {
  const ways = countWays(cars, voice);
  const rows = cars.map((c) => [
    tellRail(c.railState),
    ...ways.map(([way]) => countWords(c, way, (n) => `${n} or more`)),
    leastWords(c),
    c.by ?? '',
  ]);
  const note = engineBrakeNote(voice.outing);
  return [
    table([['rail', ...ways.map(([, words]) => words), 'least', 'by'], ...rows]),
    heldNote,
    ...(note === '' ? [] : [note]),
    ...countLines(cars, voice),
  ].join('\n');
}

/** Today's counts: the most that may leave and what sets it, then what sets each count. */
export function countLines(cars: readonly CarCount[], voice: Voice): string[] {
  const rail = voice.outing.conditions.railState;
  const today = cars.find((c) => c.railState === rail);
  if (!today) return [];
  const reason = leastReason(today, voice);
  return [
    `On ${tellRail(rail)} rail, ${mostWords(today)}${reason === '' ? '' : `: ${reason}`}.`,
    ...limitLines(today, cars, voice).map((line) => `  ${line}`),
  ];
}

export const countsJson = (cars: readonly CarCount[]): unknown => cars;
