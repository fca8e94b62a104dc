/** heedway balance: loads, leans, curves, flange climb; a tilt test. */
import { type BalanceView, lookAtBalance, tiltTest } from '../../desk/balance.ts';
import { verdictOf } from '../../engine/answer/verdict.ts';
import type { Quantity } from '../../engine/base/quantity.ts';
import { balanceTables, twistTable } from '../../views/tables/balance.ts';
import { say, type Voice, vehicleAt } from '../../words/voice.ts';
import { type Command, common, exitOf, finite, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { quantityOf } from '../open.ts';
import { findingsText, paragraphs, tableText, tellFully } from '../text.ts';

interface BalanceOptions extends Options {
  readonly car?: string;
  readonly tilt?: string;
  readonly base?: string;
  readonly loaded?: boolean;
}

export const balanceCommand: Command = {
  name: 'balance',
  declare: (program, run) => {
    asksRecords(common(program.command('balance <outing>')))
      .description(
        'Do the cars stay up: loads on wheels, leaning, curves, flange climb; or judge a tilt test.',
      )
      .option('--car <id>', 'the vehicle of the tilt test')
      .option('--tilt <angle>', 'angle at which its first wheel lifted')
      .option('--base <width>', 'between rail contacts on the tilt bench; else the line’s')
      .option('--loaded', 'it was tilted with its riders (or sand bags) on')
      .action((path: string, options: BalanceOptions) =>
        run((gate) => balance(gate, path, options), options),
      );
  },
};

/** Index of a vehicle named on the command line. */
export function vehicleIndex({ outing }: Voice, id: string | undefined): number {
  const index = outing.train.vehicles.findIndex((v) => v.id === id);
  if (index >= 0) return index;
  const known = outing.train.vehicles.map((v) => v.id).join(', ');
  throw new UsageFault(`--car: found ${id ?? 'nothing'}; expected one of ${known}`);
}

async function balance(gate: Gate, path: string, options: BalanceOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const view = lookAtBalance(outing);
  if (options.tilt !== undefined) return tilt(view, voice, options, options.tilt);
  return {
    text: paragraphs([
      ...balanceTables(view, voice).map(tableText),
      tableText(twistTable(view, voice)),
      findingsText(view.findings, voice),
    ]),
    json: balanceJson(view, voice),
    exit: exitOf[verdictOf(view.findings)],
  };
}

function tilt(view: BalanceView, voice: Voice, options: BalanceOptions, text: string) {
  const index = vehicleIndex(voice, options.car);
  const angle = quantityOf(text, 'angle', '--tilt');
  const base =
    options.base === undefined
      ? voice.outing.line.contactWidth
      : quantityOf(options.base, 'length', '--base');
  const result = tiltTest(view, index, asRead(angle), base, options.loaded ?? false);
  if (!result) throw new UsageFault(`--tilt: found ${text}; expected an angle between 0 and 90°`);
  const height = (q: Quantity): string =>
    `${say(voice, { si: q.value, kind: 'length' }, 'up')} (${say(voice, { si: q.low, kind: 'length' }, 'down')} to ${say(voice, { si: q.high, kind: 'length' }, 'up')})`;
  return {
    text: [
      `${vehicleAt(voice, index)}: centre of gravity ${height(result.centre)} above the rail${options.loaded ? ' as loaded' : ''}.`,
      ...(options.loaded ? [`Empty: ${height(result.tareCentre)}.`] : []),
      ...(result.tareCentre.low > 0
        ? []
        : ['That is below the rail: check the angle, the base and the weights of who was aboard.']),
      'The bounds allow half a degree either way in the reading. Write the empty figure into "centreHeight".',
    ].join('\n'),
    json: { vehicle: options.car, ...result },
    exit: 0,
  };
}

const HALF_DEGREE = Math.PI / 360;

const asRead = (angle: number): Quantity => ({
  value: angle,
  low: angle - HALF_DEGREE,
  high: angle + HALF_DEGREE,
  how: 'measured',
});

function balanceJson({ findings, data, at, context }: BalanceView, voice: Voice): unknown {
  const id = (index: number): string => context.loaded.vehicles[index].vehicle.id;
  return {
    required: data.required,
    trackTwist: data.trackTwist ?? null,
    vehicles: data.vehicles.map(({ running, standing, ...v }) => ({
      ...v,
      running: { ...running, at: at(running.at) },
      standing: { ...standing, at: at(standing.at) },
    })),
    curves: data.curves.map((c) => ({
      ...c,
      vehicle: id(c.index),
      from: Math.min(at(c.from), at(c.to)),
      to: Math.max(at(c.from), at(c.to)),
      at: at(c.at),
      permitted: finite(c.permitted),
      lift: finite(c.lift),
      over: finite(c.over),
      liftLeaning: finite(c.liftLeaning),
    })),
    flanges: Object.fromEntries(
      Object.entries(data.flanges.nearest).map(([way, climb]) => [
        way,
        climb ? { ...climb, vehicle: id(climb.index), at: at(climb.at), found: finite(climb.found) } : null,
      ]),
    ),
    findings: findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
  };
}
