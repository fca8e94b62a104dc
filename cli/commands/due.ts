/** heedway due: what stands, what is due, what is out of date; certificates recorded; a calendar file of the days. */
import type { Command as Program } from 'commander';
import { dueCalendar } from '../../desk/due/calendar.ts';
import { type InDateKind, inDateKinds } from '../../engine/things/in-date.ts';
import { dayNumber } from '../../papers/due/day.ts';
import { type DueItem, dueOn } from '../../records/due.ts';
import { nameIn, personNamed } from '../../records/names.ts';
import type { Named } from '../../records/store.ts';
import type { SqliteStore } from '../../records/stores/sqlite.ts';
import { tellDue } from '../../words/records/due.ts';
import { shortHash, tellContent } from '../../words/records/record.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault } from '../command.ts';
import { clock, entryNamed, inStore, lookAt, record, type StoreOptions, storeOption } from '../records.ts';
import { table } from '../text.ts';
import { writeOut } from '../write.ts';

interface ListOptions extends Options, StoreOptions {
  readonly on?: string;
  readonly of?: string;
  readonly person?: string;
}
interface AddOptions extends ListOptions {
  readonly done: string;
  readonly until?: string;
  readonly interval?: string;
  readonly by: string;
  readonly details?: string;
  readonly runsKeptSince?: string;
  readonly amends?: string;
  readonly powers?: string;
  readonly engines?: string;
  readonly gauge?: string;
  readonly heaviest?: string;
  readonly line?: string;
}
interface CalendarOptions extends ListOptions {
  readonly out: string;
}

const whose = (program: Program): Program =>
  program
    .option('--of <name>', 'of this vehicle or thing alone')
    .option('--person <name>', 'of this person alone')
    .option('--on <day>', 'as it stands on that day; today, if nothing is said');

export const dueCommand: Command = {
  name: 'due',
  declare: (program, run) => {
    const due = program.command('due').description('What stands, what is due and what is out of date.');
    const sub = (call: string, description: string, more: { readonly isDefault?: boolean } = {}): Program =>
      storeOption(common(due.command(call, more)).description(description));

    whose(sub('list', 'All certificates, the worst first.', { isDefault: true })).action(
      (options: ListOptions) => run(() => list(options), options),
    );
    sub('add <what>', `A certificate: ${inDateKinds.join(', ')}.`)
      .requiredOption('--done <day>', 'the day on which it was done, or begins')
      .requiredOption('--by <name>', 'who gave it')
      .option('--of <name>', 'of which vehicle or thing; of the club, if of neither thing nor person')
      .option('--person <name>', 'of which person: the name stands apart')
      .option(
        '--interval <words>',
        'how long it stands, as "annually, not to exceed 14 months" or "31 service days"',
      )
      .option('--until <day>', 'the last day on which it stands, where it says so')
      .option('--details <text>', 'pressure and factor of a test, limits; nothing of anybody’s health')
      .option(
        '--runs-kept-since <day>',
        'for service days: since then every run of it stands in these records, whoever puts it by',
      )
      .option('--powers <kinds>', 'of a competence: for steam, electric, petrol engines alone, with commas')
      .option('--engines <names>', 'of a competence: for these engines alone, with commas')
      .option('--gauge <gauge>', 'of a competence: on this gauge alone')
      .option('--heaviest <weight>', 'of a competence: for engines to this weight')
      .option('--line <name>', 'of a competence: on this line alone')
      .option('--amends <record>', 'the certificate that this one says anew')
      .action((what: string, options: AddOptions) => run(() => add(what, options), options));
    whose(sub('calendar', 'The last days as an iCalendar file, with alarms 30 and 7 days before.'))
      .requiredOption('-o, --out <file>', 'write it here')
      .action((options: CalendarOptions) => run(() => calendarFile(options), options));
  },
};

async function items(
  store: SqliteStore,
  options: ListOptions,
): Promise<{ all: DueItem[]; names: readonly Named[]; day: string }> {
  const day = options.on ?? clock.now().slice(0, 10);
  if (dayNumber(day) === undefined)
    throw new UsageFault(`--on: found ${day}; expected a day such as 2026-05-31`);
  const names = await store.names();
  const { of, person } = options;
  const all = dueOn((await lookAt(store)).entries, day).filter(
    ({ certificate }) =>
      (of === undefined || certificate.of === of) &&
      (person === undefined ||
        (certificate.person !== undefined && nameIn(names, certificate.person) === person)),
  );
  return { all, names, day };
}

const list = (options: ListOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { all, names, day } = await items(store, options);
    const told = all.map((item) => tellDue(item, names));
    const rows = told.map(({ what, of, state, until, by }) => [of, what, state, until, by]);
    return {
      text:
        rows.length === 0
          ? 'No certificates are recorded here: heedway due add records one.'
          : [`On ${day}:`, table([['of', 'what', 'state', 'until', 'by'], ...rows])].join('\n'),
      json: {
        day,
        due: all.map((item, i) => ({
          ...item.certificate,
          ...item,
          from: item.from.first.row.hash,
          words: told[i],
        })),
      },
      exit: all.some(({ state }) => state === 'out') ? exitOf.hold : 0,
    };
  });

const add = (what: string, options: AddOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    if (!inDateKinds.includes(what as InDateKind))
      throw new UsageFault(`found ${what}; expected ${inDateKinds.join(', ')}`);
    const { of, person, done, until, interval, by, details, amends, runsKeptSince } = options;
    for (const [name, day] of [
      ['--done', done],
      ['--until', until],
      ['--runs-kept-since', runsKeptSince],
    ] as const)
      if (day !== undefined && dayNumber(day) === undefined)
        throw new UsageFault(`${name}: found ${day}; expected a day such as 2026-05-31`);
    const amended = amends === undefined ? undefined : entryNamed((await lookAt(store)).entries, amends);
    if (amended && amended.body.kind !== 'certificate')
      throw new UsageFault(`--amends: found a record of kind ${amended.body.kind}; expected a certificate`);
    const content = {
      what,
      ...(of === undefined ? {} : { of }),
      ...(person === undefined ? {} : { person: (await personNamed(store, person)).person }),
      on: done,
      ...(until === undefined ? {} : { until }),
      ...(interval === undefined ? {} : { interval }),
      by,
      ...(runsKeptSince === undefined ? {} : { runsKeptSince }),
      ...signedFor(options),
      ...(details === undefined ? {} : { details }),
    };
    const said = { kind: 'certificate', content, ...(amended ? { amends: amended.row.hash } : {}) } as const;
    const { body, row } = await record(store, said, options);
    return {
      text: `Recorded as ${shortHash(row.hash)}: ${tellContent(body, await store.names())}`,
      json: { record: row.hash },
      exit: 0,
    };
  });

const listed = (text: string): string[] =>
  text
    .split(',')
    .map((one) => one.trim())
    .filter((one) => one !== '');

/** What a competence is limited to, as its paper takes it. */
function signedFor({ powers, engines, gauge, heaviest, line }: AddOptions): { readonly signedFor?: object } {
  const limits = {
    ...(powers === undefined ? {} : { powers: listed(powers) }),
    ...(engines === undefined ? {} : { engines: listed(engines) }),
    ...(gauge === undefined ? {} : { gauge }),
    ...(heaviest === undefined ? {} : { heaviest }),
    ...(line === undefined ? {} : { line }),
  };
  return Object.keys(limits).length === 0 ? {} : { signedFor: limits };
}

const calendarFile = (options: CalendarOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { all, names } = await items(store, options);
    const dated = all.filter(({ last }) => last !== undefined);
    await writeOut(options.out, dueCalendar(options.of ?? options.person ?? 'Due at the club', dated, names));
    const left = all.length - dated.length;
    return {
      text: `${dated.length} days written into ${options.out}${left === 0 ? '' : `; ${left} go by service days or have no end, and are in no calendar`}.`,
      json: { days: dated.length, left, file: options.out },
      exit: 0,
    };
  });
