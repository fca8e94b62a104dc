/** heedway stop: how far to stop from a place and speed. */

import { stopFrom } from '../../desk/stops.ts';
import type { StopFigure } from '../../engine/motion/stop-result.ts';
import { onlyParks } from '../../engine/things/brake/system.ts';
import { tellRails } from '../../words/rails.ts';
import { chainage, distance, say } from '../../words/voice.ts';
import { type Command, common, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { placeOf, quantityOf } from '../open.ts';
import { table } from '../text.ts';

interface StopOptions extends Options {
  readonly at: string;
  readonly speed: string;
}

export const stopCommand: Command = {
  name: 'stop',
  declare: (program, run) => {
    asksRecords(common(program.command('stop <outing>')))
      .description('How far to stop from a place and speed: likely, and cautious.')
      .requiredOption('--at <chainage>', 'place of the train\'s head along the line, such as "620 ft"')
      .requiredOption('--speed <speed>', 'speed when the need arises, such as "7 mph"')
      .action((path: string, options: StopOptions) => run((gate) => stop(gate, path, options), options));
  },
};

async function stop(gate: Gate, path: string, options: StopOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const at = placeOf(options.at, '--at', voice);
  const speed = quantityOf(options.speed, 'speed', '--speed');
  if (speed <= 0 || speed > 20)
    throw new UsageFault(`--speed: found ${options.speed}; expected more than 0 and at most 44 mph`);
  const unknown = outing.train.vehicles.some((v) =>
    v.brakes.some(
      (b) => b.workedBy === 'driver' && !onlyParks(b) && !b.force && !b.rigging && !b.hand && !b.surge,
    ),
  );
  const result = stopFrom(outing, at, speed);
  const row = (name: string, f: StopFigure): string[] => [
    name,
    distance(voice, f.distance, 'up'),
    Number.isFinite(f.time) ? say(voice, { si: f.time, kind: 'time' }, 'up') : 'does not stop',
    distance(voice, f.beforeFullBrake, 'up'),
  ];
  const { sampled } = result;
  const text = [
    `From ${say(voice, { si: speed, kind: 'speed' })} at ${chainage(voice, at)}, rail ${tellRails(voice)}`,
    table([
      ['', 'to stop', 'time', 'before full brake'],
      row('likely', result.likely),
      row('cautious', result.cautious),
    ]),
    `Of ${sampled.n} sampled stops half take ${distance(voice, sampled.p50, 'up')}, 90 % ${distance(voice, sampled.p90, 'up')}, 99 % ${distance(voice, sampled.p99, 'up')}.`,
    ...(sampled.neverStops > 0
      ? [`${(sampled.neverStops * 100).toFixed(1)} % of them do not stop at all.`]
      : []),
    ...(unknown ? ['A brake of the train has no known force and is left out: measure it.'] : []),
  ].join('\n');
  return { text, json: { ...result, railState: outing.conditions.railState }, exit: unknown ? 30 : 0 };
}
