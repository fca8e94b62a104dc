/** heedway seating: who should sit where, proven. */

import type { Asked } from '../../desk/asked.ts';
import { lookAtPlatform } from '../../desk/platform.ts';
import { seatOuting } from '../../desk/seating.ts';
import { writeFile as writeText } from '../../papers/index.ts';
import { seatingTable } from '../../views/tables/balance.ts';
import { refusalOfSeating, tellPlatform } from '../../words/seating.ts';
import { type Command, common, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { tableText } from '../text.ts';
import { writeOut } from '../write.ts';

interface SeatingCommandOptions extends Options {
  readonly afresh?: boolean;
  readonly child: string;
  readonly out?: string;
}

export const seatingCommand: Command = {
  name: 'seating',
  declare: (program, run) => {
    asksRecords(common(program.command('seating <outing>')))
      .description('Seat the riders so that the worst car is as well off as can be; few moves.')
      .option('--afresh', 'without regard to where people sit now')
      .option('--child <where>', 'a held child sits in-front or behind its adult', 'in-front')
      .option('--out <file>', 'write the outing with these seats')
      .action((path: string, options: SeatingCommandOptions) =>
        run((gate) => seating(gate, path, options), options),
      );
  },
};

async function seating(gate: Gate, path: string, options: SeatingCommandOptions) {
  const { child } = options;
  if (child !== 'in-front' && child !== 'behind') {
    throw new UsageFault(`--child: found ${child}; expected in-front or behind`);
  }
  const { paper, outing } = await gate.untried(path);
  const found = await seatOuting(outing, { heldChild: child, afresh: options.afresh ?? false });
  if (!('seating' in found)) {
    return { text: refusalOfSeating(found), json: { seated: false, why: found.why }, exit: 20 };
  }
  const voice = voiceOf(options, outing);
  const now = lookAtPlatform(outing);
  const { lines, move } = tellPlatform(now, voice);
  const asTheySit = [...lines, ...(move === '' ? [] : [`Move just one: ${move}.`])];
  const text = [`As they sit: ${asTheySit.join(' ')}`, tableText(seatingTable(found.seating, voice))];
  if (options.out) {
    await writeSeats(paper, options.out, found.outing.riders);
    text.push(`Written: ${options.out}`);
  }
  return { text: text.join('\n\n'), json: { seated: true, now, ...found.seating }, exit: 0 };
}

/** A person's place as the outing's file says it. */
interface Entry {
  readonly vehicle?: string;
  readonly seat?: string;
}

/** The outing in one file with the seats changed; everything else as it was written. */
async function writeSeats(paper: Asked['paper'], out: string, seated: readonly Entry[]): Promise<void> {
  const file = paper as { readonly riders?: readonly object[] };
  const riders = file.riders?.map((rider, i) => {
    const { vehicle, seat } = seated[i];
    return {
      ...rider,
      ...(vehicle === undefined ? {} : { vehicle }),
      ...(seat === undefined ? {} : { seat }),
    };
  });
  await writeOut(out, writeText({ ...file, ...(riders ? { riders } : {}) }));
}
