/** heedway twist: what twisted track takes off the wheels; the block-under-one-wheel test judged. */
import { blockTest, lookAtBalance } from '../../desk/balance.ts';
import { GRAVITY } from '../../engine/base/constants.ts';
import type { BlockTest } from '../../engine/questions/balance/twist.ts';
import { blockWords, twistTable } from '../../views/tables/balance.ts';
import { vehicleAt } from '../../words/voice.ts';
import { type Command, common, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { quantityOf } from '../open.ts';
import { tableText } from '../text.ts';
import { vehicleIndex } from './balance.ts';

interface TwistOptions extends Options {
  readonly car?: string;
  readonly block?: string;
  readonly lifts?: boolean;
  readonly before?: string;
  readonly with?: string;
}

export const twistCommand: Command = {
  name: 'twist',
  declare: (program, run) => {
    asksRecords(common(program.command('twist <outing>')))
      .description('Twisted track against each vehicle; with --block, accept or reject a block test.')
      .option('--car <id>', 'the vehicle of the block test')
      .option('--block <height>', 'height of the block under one wheel')
      .option('--lifts', 'another wheel could be turned by hand')
      .option('--before <load>', 'load of the lightest other wheel without the block')
      .option('--with <load>', 'its load with the block')
      .action((path: string, options: TwistOptions) => run((gate) => twist(gate, path, options), options));
  },
};

async function twist(gate: Gate, path: string, options: TwistOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const view = lookAtBalance(outing);
  if (options.block === undefined) {
    const codes = ['wheel-unloads-on-twist', 'twist-unknown'];
    const severe = view.findings.find((f) => codes.includes(f.code));
    return {
      text: tableText(twistTable(view, voice)),
      json: {
        trackTwist: view.data.trackTwist ?? null,
        vehicles: view.data.vehicles.map((v) => ({ vehicle: v.vehicle, twist: v.twist ?? null })),
      },
      exit: severe?.severity === 'forbids' ? 20 : severe?.severity === 'limits' ? 10 : 0,
    };
  }
  const index = vehicleIndex(voice, options.car);
  const test = readTest(options, options.block);
  const answer = blockTest(view, index, test);
  return {
    text: [vehicleAt(voice, index), ...blockWords(answer, test, voice)].join('\n'),
    json: { vehicle: options.car, test, ...answer },
    exit: answer.accepted ? 0 : answer.why === 'block-too-low' || answer.why === 'block-too-high' ? 30 : 20,
  };
}

function readTest(options: TwistOptions, text: string): BlockTest {
  const block = quantityOf(text, 'length', '--block');
  if (block <= 0) throw new UsageFault(`--block: found ${text}; expected a height above 0`);
  if ((options.before === undefined) !== (options.with === undefined)) {
    throw new UsageFault('--before and --with: found one of them; expected both or neither');
  }
  const load = (value: string | undefined, name: string): number | undefined =>
    value === undefined ? undefined : quantityOf(value, 'mass', name) * GRAVITY;
  const before = load(options.before, '--before');
  const loaded = load(options.with, '--with');
  return {
    block,
    otherWheelLifted: options.lifts ?? false,
    ...(before === undefined || loaded === undefined ? {} : { before, with: loaded }),
  };
}
