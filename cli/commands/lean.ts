/** heedway lean: how far riders may lean, and what would help. */
import {
  type BalanceView,
  lookAtBalance,
  sectionOf,
  underAt,
  whatIf,
  worstNode,
} from '../../desk/balance.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import { sectionScene } from '../../views/section.ts';
import type { Scene } from '../../views/strip/scene.ts';
import { balanceTables, whatIfWords } from '../../views/tables/balance.ts';
import { type Voice, vehicleName } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { quantityOf } from '../open.ts';
import { drawInto, tableText } from '../text.ts';
import { vehicleIndex } from './balance.ts';

interface LeanOptions extends Options {
  readonly car?: string;
  readonly by: string;
  readonly ballastAt: string;
  readonly svg?: string;
}

export const leanCommand: Command = {
  name: 'lean',
  declare: (program, run) => {
    asksRecords(common(program.command('lean <outing>')))
      .description('How far one, two or all riders may lean before a wheel lifts; ballast and lower seats.')
      .option('--car <id>', 'one vehicle only, with what would help it')
      .option('--by <distance>', 'sideways shift of the heaviest rider’s centre of gravity', '6 in')
      .option('--svg <file>', 'with --car: draw it from behind, leaning, at its worst place')
      .option('--ballast-at <height>', 'height of ballast above the rail', '3 in')
      .action((path: string, options: LeanOptions) => run((gate) => lean(gate, path, options), options));
  },
};

async function lean(gate: Gate, path: string, options: LeanOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const view = lookAtBalance(outing);
  const by = quantityOf(options.by, 'length', '--by');
  const height = quantityOf(options.ballastAt, 'length', '--ballast-at');
  const only = options.car === undefined ? undefined : vehicleIndex(voice, options.car);
  const shown = data(view).filter((v) => only === undefined || v.index === only);
  const tables = balanceTables({ ...view, data: { ...view.data, vehicles: shown } }, voice);
  const what = shown.map((v) => ({ vehicle: v.vehicle, what: whatIf(view, v.index, by, height) }));
  const words = what.flatMap(({ vehicle, what: w }) =>
    w ? [`${vehicleName(voice, vehicle)}: ${whatIfWords(w, by, height, voice).join(' ')}`] : [],
  );
  if (options.svg !== undefined) {
    if (only === undefined) throw new UsageFault('--svg: found no --car; expected the vehicle to draw');
    words.push(await drawInto(options.svg, sectionDrawing(view, only, by, voice)));
  }
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
    exit: exitOf[verdictOf(view.findings)],
  };
}

/** The vehicle at its worst place and the speed run there, its heaviest rider leaning outward. */
function sectionDrawing(view: BalanceView, index: number, by: number, voice: Voice): Scene {
  const { context, data: known } = view;
  const found = known.rolling.findIndex((r) => r.index === index);
  const vehicle = context.loaded.vehicles[index];
  if (found < 0) throw new UsageFault(`--svg: the centre of gravity of ${vehicle.vehicle.name} is not known`);
  const { speed } = known.vehicles[found].running;
  const under = underAt(view, found, worstNode(view, found));
  const heaviest = [...vehicle.riders].sort((a, b) => b.rider.mass.value - a.rider.mass.value)[0];
  const outward = under.curvature > 0 ? -by : by;
  const ask = { index, speed, under, lean: heaviest ? { [heaviest.rider.id]: outward } : {} };
  const section = sectionOf(context, ask);
  if (!section) throw new UsageFault(`--svg: the centre of gravity of ${vehicle.vehicle.name} is not known`);
  const { contactWidth } = context.line;
  const centre = context.outing.assumed.riderCentre.value;
  const frame = { width: 560, height: 480, textSize: 14 };
  return sectionScene(vehicle, section, ask, contactWidth, centre, frame, voice);
}

const data = ({ data: { vehicles } }: ReturnType<typeof lookAtBalance>) => vehicles;
