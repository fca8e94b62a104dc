/** heedway seat-height: how high the seats of a car may be, and what sets it. */
import { askSeat, readSeat, riddenCars, usualSeat } from '../../desk/builder/seat-height.ts';
import { type Command, common, exitOf, finite, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { taskText } from '../text.ts';

interface SeatOptions extends Options {
  readonly car?: string;
  readonly lean?: string;
  readonly who: string;
  readonly speed?: string;
}

export const seatHeightCommand: Command = {
  name: 'seat-height',
  declare: (program, run) => {
    asksRecords(common(program.command('seat-height <outing>')))
      .description(
        'How high may the seats of a car be, with its people leaning as asked, on this line at its speed; what sets it, and the answer with it.',
      )
      .option('--car <id>', 'the car; the first with people on it where left out')
      .option('--lean <distance>', 'how far people lean; 3 in or 75 mm where left out')
      .option('--who <who>', 'all: all of the car together; one: one alone', 'all')
      .option('--speed <speed>', 'run at; as the outing is run where left out')
      .action((path: string, options: SeatOptions) => run((gate) => seat(gate, path, options), options));
  },
};

async function seat(gate: Gate, path: string, options: SeatOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const usual = usualSeat(outing, options.units);
  const { who, car = usual.car, lean = usual.lean, speed = usual.speed } = options;
  if (car === '' && riddenCars(outing).length === 0)
    throw new UsageFault('nobody sits on a car of this outing: seat its people first');
  const read = readSeat({ who, car, lean, speed }, outing);
  if (!read.ok) throw new UsageFault(read.problems.map((p) => `--${p.message}`).join('\n'), read.problems);
  const answer = askSeat(read.outing, read.ask, voice);
  const { found, verdict } = answer;
  return {
    text: taskText(answer),
    json: found && {
      vehicle: read.ask.vehicle,
      now: found.now,
      highest: finite(found.height ?? undefined),
      setBy: found.setBy?.reason ?? null,
      limits: found.limits.map((l) => ({ ...l, height: finite(l.height ?? undefined) })),
      byLean: found.byLean.map(({ lean: by, all, one }) => ({
        lean: by,
        all: finite(all.height ?? undefined),
        one: finite(one.height ?? undefined),
      })),
      verdict: verdict ?? null,
      said: answer.said,
    },
    exit: found ? (found.height === null ? exitOf.hold : exitOf.go) : exitOf.unknown,
  };
}
