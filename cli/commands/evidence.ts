/** heedway evidence: what was recorded of a span, with the answer, sheets and measurements, as one PDF that can be checked. */
import type { Command as Program } from 'commander';
import { evidencePack, type OutingInPack } from '../../desk/evidence/pack.ts';
import { tellInvented } from '../../desk/invented.ts';
import { answered } from '../../desk/leave/answered.ts';
import { asWritten } from '../../desk/leave/depart.ts';
import { nameless } from '../../desk/leave/nameless.ts';
import { dayNumber } from '../../papers/due/day.ts';
import { look, photosFor } from '../../records/ledger.ts';
import { type PackPaper, packDocument } from '../../views/evidence/document.ts';
import { packDone } from '../../words/records/evidence.ts';
import { cardPdf } from '../card-pdf.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault } from '../command.ts';
import type { Gate } from '../gate.ts';
import { refusal } from '../open.ts';
import { progressOn } from '../progress.ts';
import { clock, inStore, type StoreOptions, storeOption } from '../records.ts';
import { writeOut } from '../write.ts';

interface EvidenceOptions extends Options, StoreOptions {
  readonly from?: string;
  readonly to?: string;
  readonly of?: readonly string[];
  readonly outing?: string;
  readonly names?: boolean;
  readonly paper: string;
  readonly pdf: string;
}

export const evidenceCommand: Command = {
  name: 'evidence',
  declare: (program, run) => {
    storeOption(common(program.command('evidence') as Program))
      .description('What was recorded, for an insurer, an inspector or a host: one PDF that can be checked.')
      .option('--from <day>', 'first day; from the first record, if nothing is said')
      .option('--to <day>', 'last day; to the last record, if nothing is said')
      .option('--of <name...>', 'of these vehicles, or this line, alone')
      .option(
        '--outing <file>',
        'with its answer, its vehicles’ sheets and measurements; of its vehicles and line',
      )
      .option('--names', 'with the names of persons, which stay at home otherwise')
      .option('--paper <paper>', 'a4 or letter', 'letter')
      .option('--pdf <file>', 'write it here', 'evidence.pdf')
      .action((options: EvidenceOptions) => run((gate) => evidence(gate, options), options));
  },
};

function dayIn(name: string, day: string | undefined): string | undefined {
  if (day === undefined || dayNumber(day) !== undefined) return day;
  throw new UsageFault(`${name}: found ${day}; expected a day such as 2026-05-31`);
}

/** With what is recorded in it: a pack that shows a rejected car must not answer as if nobody had looked. */
async function outingIn(
  gate: Gate,
  { outing, units, wording }: EvidenceOptions,
): Promise<OutingInPack | undefined> {
  if (outing === undefined) return undefined;
  const paper = asWritten(await gate.asked(outing));
  const made = await answered(nameless(paper), { system: units, wording });
  if ('problems' in made) throw refusal(made.problems.map((p) => ({ ...p, file: outing })));
  return { answered: made, paper, invented: tellInvented(paper) };
}

async function evidence(gate: Gate, options: EvidenceOptions): Promise<Outcome> {
  const [from, to] = [dayIn('--from', options.from), dayIn('--to', options.to)];
  if (from !== undefined && to !== undefined && from > to)
    throw new UsageFault(`--from: found ${from}; expected a day not after ${to}`);
  if (options.paper !== 'a4' && options.paper !== 'letter')
    throw new UsageFault(`--paper: found ${options.paper}; expected a4 or letter`);
  const { units: system, wording, pdf } = options;
  const progress = progressOn(process.stderr);
  progress.say('answering');
  const outing = await outingIn(gate, options);
  const pack = await inStore(options, async (store) => {
    progress.say('looking at every record');
    const looked = await look(store);
    const names = options.names ? await store.names() : [];
    return evidencePack({
      looked,
      names,
      photos: await photosFor(store, looked.entries),
      wanted: { from, to, of: options.of },
      speech: { system, wording },
      outing,
      made: { at: clock.now(), program: clock.program },
    });
  });
  progress.say('laying out');
  const bytes = await cardPdf(
    (has) => packDocument(pack, options.paper as PackPaper, has),
    (share) => progress.say(`printing, ${Math.floor(100 * share)} %`),
  );
  progress.end();
  await writeOut(pdf, bytes);
  return {
    text: packDone(pack.count, pdf, pack.faults),
    json: {
      pdf,
      records: pack.count,
      faults: pack.faults,
      sections: pack.sections.map(({ title }) => title),
    },
    exit: pack.faults === 0 ? 0 : exitOf.hold,
  };
}
