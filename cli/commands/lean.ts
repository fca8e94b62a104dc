/** heedway lean: how far riders may lean, and what would help. */
import { lookAtBalance, whatIf } from '../../desk/balance.ts';
import { balanceTables, whatIfWords } from '../../desk/balance-tables.ts';
import { type Command, common, type Options, voiceOf } from '../command.ts';
import { openOutingFile, quantityOf } from '../open.ts';
import { exitOfFindings, vehicleIndex } from './balance.ts';
import { tableText } from './brakes.ts';

interface LeanOptions extends Options {
  readonly car?: string;
  readonly by: string;
  readonly ballastAt: string;
}

export const leanCommand: Command = {
  name: 'lean',
  declare: (program, run) => {
    common(program.command('lean <outing>'))
      .description('How far one, two or all riders may lean before a wheel lifts; ballast and lower seats.')
      .option('--car <id>', 'one vehicle only, with what would help it')
      .option('--by <distance>', 'sideways shift of the heaviest rider’s centre of gravity', '6 in')
      .option('--ballast-at <height>', 'height of ballast above the rail', '3 in')
      .action((path: string, options: LeanOptions) => run(() => lean(path, options), options));
  },
};

async function lean(path: string, options: LeanOptions) {
  const outing = await openOutingFile(path);
  const voice = voiceOf(options, outing);
  const view = lookAtBalance(outing);
  const by = quantityOf(options.by, 'length', '--by');
  const height = quantityOf(options.ballastAt, 'length', '--ballast-at');
  const only = options.car === undefined ? undefined : vehicleIndex(voice, options.car);
  const shown = data(view).filter((v) => only === undefined || v.index === only);
  const tables = balanceTables({ ...view, data: { ...view.data, vehicles: shown } }, voice);
  const what = shown.map((v) => ({ vehicle: v.vehicle, what: whatIf(view, v.index, by, height) }));
  const words = what.flatMap(({ vehicle, what: w }) =>
    w
      ? [
          `${outing.train.vehicles.find((v) => v.id === vehicle)?.name}: ${whatIfWords(w, by, height, voice).join(' ')}`,
        ]
      : [],
  );
  return {
    text: [
      ...tables.filter((t) => t.title === 'How little lifts a wheel').map(tableText),
      ...(only === undefined ? [] : words),
    ].join('\n\n'),
    json: {
      by,
      vehicles: shown.map((v) => ({
        vehicle: v.vehicle,
        lift: v.lift,
        over: v.over,
        running: { ...v.running, at: view.at(v.running.at) },
        standing: { ...v.standing, at: view.at(v.standing.at) },
        whatIf: what.find((w) => w.vehicle === v.vehicle)?.what ?? null,
      })),
    },
    exit: exitOfFindings(view),
  };
}

const data = ({ data: { vehicles } }: ReturnType<typeof lookAtBalance>) => vehicles;
