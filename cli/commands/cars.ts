/** heedway cars: how many cars can be pulled, stopped, held and are allowed, for every rail state. */
import { countWays, countWords, heldNote } from '../../desk/count-ways.ts';
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

export function countsText(cars: readonly CarCount[]): string {
  const ways = countWays(cars);
  const rows = cars.map((c) => [
    c.railState,
    ...ways.map(([way]) => countWords(c, way, (n) => `${n} or more`)),
    c.least === null ? 'cannot tell' : `${c.least}`,
    c.by ?? '',
  ]);
  return [table([['rail', ...ways.map(([, words]) => words), 'least', 'by'], ...rows]), heldNote].join('\n');
}

export const countsJson = (cars: readonly CarCount[]): unknown => cars;
