/** heedway cars: how many cars can be pulled, stopped, held and are allowed, for every rail state. */
import { countCars } from '../../desk/stops.ts';
import type { CarCount } from '../../engine/answer/types.ts';
import { type Command, common, type Options } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { table } from '../text.ts';

export const carsCommand: Command = {
  name: 'cars',
  declare: (program, run) => {
    common(program.command('cars <outing>'))
      .description('How many cars: pulled, stopped, held, allowed by the host; the least counts.')
      .action((path: string, options: Options) =>
        run(async () => {
          const cars = countCars(await openOutingFile(path));
          return { text: countsText(cars), json: countsJson(cars), exit: 0 };
        }, options),
      );
  },
};

type Way = 'pulled' | 'stopped' | 'held';

const cell = (count: CarCount, way: Way): string =>
  count[way] === null
    ? 'cannot tell'
    : count.unlimited.includes(way)
      ? `${count[way]} or more`
      : `${count[way]}`;

export function countsText(cars: readonly CarCount[]): string {
  return table([
    ['rail', 'pulled', 'stopped', 'held', 'host', 'least', 'by'],
    ...cars.map((c) => [
      c.railState,
      cell(c, 'pulled'),
      cell(c, 'stopped'),
      cell(c, 'held'),
      c.host === null ? 'no rule' : `${c.host}`,
      c.least === null ? 'cannot tell' : `${c.least}`,
      c.by ?? '',
    ]),
  ]);
}

export const countsJson = (cars: readonly CarCount[]): unknown => cars;
