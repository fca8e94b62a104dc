/** heedway incident: what happened, what is done about it, where the line is slow or shut, and whether it gathers somewhere. */
import type { Command as Program } from 'commander';
import {
  incidentContent,
  NoSuch,
  restrictionContent,
  type Written,
  type WrittenLimit,
} from '../../desk/incident/content.ts';
import { dutiesFor, dutyCountries } from '../../desk/incident/duties.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { Kind } from '../../papers/record/fields.ts';
import { incidentKinds } from '../../papers/record/incident-fields.ts';
import { type Incident, incidents, openMeasures } from '../../records/incidents.ts';
import { nameIn, personNamed } from '../../records/names.ts';
import type { Entry, Json } from '../../records/record.ts';
import { openRestrictions } from '../../records/restrictions.ts';
import type { Named } from '../../records/store.ts';
import type { SqliteStore } from '../../records/stores/sqlite.ts';
import { incidentMarks, incidentStrip } from '../../views/incident-strip.ts';
import { blameIn, speedOrShut } from '../../words/records/incident.ts';
import { shortHash, tellContent } from '../../words/records/record.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { entryNamed, inStore, lookAt, record, type StoreOptions, storeOption, timeSaid } from '../records.ts';
import { wrap } from '../screen.ts';
import { drawInto, table } from '../text.ts';
import { duties, hurtOf, kindOf, type PatternOptions, told } from './incident-told.ts';

type Stored = Options & StoreOptions;

interface RecordOptions extends Stored, Omit<Written, 'what' | 'facts' | 'axle'> {
  readonly outing?: string;
  readonly axle?: string;
  readonly saw?: readonly string[];
  readonly said?: string;
  readonly asItIs?: boolean;
  readonly amends?: string;
}
interface MeasureOptions extends Stored {
  readonly by?: string;
  readonly person?: string;
}
interface LimitOptions extends Stored, Omit<WrittenLimit, 'line'> {
  readonly line?: string;
  readonly outing?: string;
  readonly closed?: boolean;
}
export const incidentCommand: Command = {
  name: 'incident',
  declare: (program, run) => {
    const incident = program
      .command('incident')
      .description('What happened, what is done about it, and where the line is slow or shut.');
    const sub = (call: string, description: string): Program =>
      storeOption(common(incident.command(call)).description(description));

    sub('record <kind> <facts>', `What happened, facts only: ${incidentKinds.join(', ')}.`)
      .option('--outing <file>', 'the outing it was on: line, way and place of a landmark come from it')
      .option('--line <name>', 'on which line')
      .option('--at <chainage>', 'where along the line, as "380 ft"')
      .option('--place <name>', 'near which station, signal, crossing or tree')
      .option('--direction <way>', 'forward or reverse')
      .option('--vehicle <name>', 'which vehicle it was first')
      .option('--axle <number>', 'which of its axles, from the front')
      .option('--side <side>', 'left or right, facing the way it ran')
      .option('--speed <speed>', 'how fast')
      .option('--rail <state>', 'the rail as it was there')
      .option('--hurt <worst>', 'nobody, "first aid", doctor, hospital or death')
      .option('--departure <record>', 'the record of the train’s leaving')
      .option('--saw <name...>', 'who saw it; the names stand apart')
      .option('--said <time>', 'when it was; now, if nothing is said')
      .option('--as-it-is', 'keep words that say whose doing it was')
      .option('--amends <record>', 'the incident that this one says anew')
      .action((kind: string, facts: string, options: RecordOptions) =>
        run(() => recordIncident(kind, facts, options), options),
      );
    sub('list', 'All incidents with what is done about them; exit 10 where something is open.')
      .option('--outing <file>', 'of the line of this outing alone')
      .option('--svg <file>', 'with --outing: draw them, and what is slow or shut, on the strip')
      .action((options: Stored & { outing?: string; svg?: string }) => run(() => list(options), options));
    sub('measure <incident> <what>', 'What is to be done about an incident.')
      .option('--by <day>', 'the day by which it is to be done')
      .option('--person <name>', 'who sees to it; the name stands apart')
      .action((letters: string, what: string, options: MeasureOptions) =>
        run(() => measure(letters, what, options), options),
      );
    sub('done <measure> <what>', 'What was done: the measure is closed.').action(
      (letters: string, what: string, options: Stored) => run(() => done(letters, what, options), options),
    );
    sub(
      'limit <why>',
      'The line is slow or shut there until it is lifted: every outing on it heeds that at once.',
    )
      .requiredOption('--from <chainage>', 'where it begins')
      .requiredOption('--to <chainage>', 'where it ends')
      .option('--outing <file>', 'of the line of this outing')
      .option('--line <name>', 'on which line')
      .option('--speed <speed>', 'greatest speed there')
      .option('--closed', 'shut to every train')
      .option('--because <record>', 'the incident or inspection that it comes from')
      .action((why: string, options: LimitOptions) => run(() => limit(why, options), options));
    sub('limits', 'Where lines are slow or shut; exit 20 where one is shut, 10 where one is slow.').action(
      (options: Stored) => run(() => limits(options), options),
    );
    sub('lift <limit> <why>', 'Trains run there as before, and why.')
      .option('--by <name>', 'who lifted it, where another records it')
      .action((letters: string, why: string, options: Stored & { by?: string }) =>
        run(() => lift(letters, why, options), options),
      );
    sub(
      'patterns',
      'Do they gather somewhere more than chance has it? Exact odds, told times all that is looked at.',
    )
      .option('--kind <kind>', 'of this kind', 'derailment')
      .option('--within <length>', 'stretch that is one place; 100 ft or 30 m, if nothing is said')
      .option('--first-days <days>', 'days that a driver counts as new', '10')
      .action((options: PatternOptions) => run(() => told(options), options));
    common(incident.command('duties [kind]'))
      .description('Duties to report, as laws print them: examples, not advice.')
      .option('--country <name>', dutyCountries.join(' or '))
      .option('--hurt <worst>', 'the worst that came to anybody')
      .action((kind: string | undefined, options: Options & { country?: string; hurt?: string }) =>
        run(async () => duties(kind, options), options),
      );
  },
};

const outingAt = (path: string | undefined): Promise<Outing | undefined> =>
  path === undefined ? Promise.resolve(undefined) : openOutingFile(path);

/** What does not fit its outing is refused before it is a record. */
function fitting<T>(make: () => T): T {
  try {
    return make();
  } catch (fault) {
    throw fault instanceof NoSuch ? new UsageFault(`Nothing was recorded: ${fault.message}.`) : fault;
  }
}

/** A record of one of these kinds. */
function named(entries: readonly Entry[], letters: string, ...kinds: readonly Kind[]): Entry {
  const entry = entryNamed(entries, letters);
  if (kinds.includes(entry.body.kind)) return entry;
  throw new UsageFault(
    `${letters}: found a record of kind ${entry.body.kind}; expected ${kinds.join(' or ')}`,
  );
}

async function keep(
  store: SqliteStore,
  kind: Kind,
  content: Json,
  options: StoreOptions,
  more: {
    readonly said?: string;
    readonly amends?: string;
    readonly exit?: number;
    readonly after?: string;
  } = {},
): Promise<Outcome> {
  const { exit = 0, after, ...rest } = more;
  const { body, row } = await record(store, { kind, content, ...rest }, options);
  const text = `${tellContent(body, await store.names())}. Recorded as ${shortHash(row.hash)}.`;
  return {
    text: [...wrap(text, '  '), ...(after === undefined ? [] : wrap(after, '  '))].join('\n'),
    json: { record: row.hash, ...content },
    exit,
  };
}

async function recordIncident(kind: string, facts: string, options: RecordOptions): Promise<Outcome> {
  const what = kindOf(kind);
  const blame = blameIn(what, facts);
  if (blame !== undefined && options.asItIs !== true)
    throw new UsageFault(
      `Nothing was recorded: found “${blame}”; expected what was seen, not whose doing it was (--as-it-is keeps it)`,
    );
  if (options.axle !== undefined && !/^\d{1,2}$/.test(options.axle))
    throw new UsageFault(`--axle: found ${options.axle}; expected its number from the front`);
  const outing = await outingAt(options.outing);
  const { line, at, place, direction, vehicle, axle, side, speed, rail, hurt, departure, saw = [] } = options;
  const given = { line, at, place, direction, vehicle, side, speed, rail, hurt };
  const written = {
    what,
    facts,
    ...given,
    ...(axle === undefined ? {} : { axle: Number(axle) }),
  } as Written;
  return inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const left =
      departure === undefined ? {} : { departure: named(entries, departure, 'departure').row.hash };
    const amends =
      options.amends === undefined ? {} : { amends: named(entries, options.amends, 'incident').row.hash };
    const base = fitting(() => incidentContent({ ...written, ...left }, outing, options.units));
    const seen = [];
    for (const name of saw) seen.push((await personNamed(store, name)).person);
    const said = { said: timeSaid(options.said) };
    const content = { ...base, ...(seen.length === 0 ? {} : { saw: seen }) };
    const worst = hurt === undefined ? {} : { hurt: hurtOf(hurt) };
    const after =
      dutiesFor({ what, ...worst }).length === 0
        ? {}
        : { after: 'Laws may ask for a report: heedway incident duties shows examples; ask your authority.' };
    return keep(store, 'incident', content, options, { ...said, ...amends, ...after });
  });
}

const measureLine = ({ measures }: Incident, names: readonly Named[]): string[] =>
  measures.map(({ from, said: { what, by, person }, done }) => {
    const who = person === undefined ? '' : `, ${nameIn(names, person)}`;
    return done
      ? `done: ${what} (${done.what})`
      : `OPEN ${shortHash(from.first.row.hash)}: ${what}${by === undefined ? '' : `, by ${by}`}${who}`;
  });

const list = (options: Stored & { outing?: string; svg?: string }): Promise<Outcome> =>
  inStore(options, async (store) => {
    const outing = await outingAt(options.outing);
    if (options.svg !== undefined && !outing)
      throw new UsageFault('--svg: found no --outing; expected the outing whose line is drawn');
    const { entries } = await lookAt(store);
    const names = await store.names();
    const all = incidents(entries).filter(({ said }) => !outing || said.line === outing.line.name);
    const slow = openRestrictions(entries).filter(({ said }) => !outing || said.line === outing.line.name);
    const lines = all.flatMap((one, i) => [
      ...wrap(
        `${i + 1}. ${one.day} ${shortHash(one.from.first.row.hash)} ${tellContent({ kind: 'incident', content: one.from.content }, names)}`,
        '   ',
      ),
      ...measureLine(one, names).flatMap((line) => wrap(`   - ${line}`, '     ')),
    ]);
    lines.push(
      ...slow.flatMap(({ from }, i) =>
        wrap(
          `${all.length + i + 1}. ${tellContent({ kind: 'restriction', content: from.content }, names)}`,
          '   ',
        ),
      ),
    );
    const drawn: string[] = [];
    if (options.svg !== undefined && outing) {
      const voice = voiceOf(options, outing);
      const size = { width: 1400, height: 480, textSize: 13 };
      const scene = incidentStrip(outing, null, incidentMarks(outing, all, slow, voice), voice, size);
      drawn.push(await drawInto(options.svg, scene));
    }
    const open = openMeasures(all).length;
    return {
      text: [...(lines.length === 0 ? ['No incident is recorded.'] : lines), ...drawn].join('\n'),
      json: all.map(({ from, said, day, measures }) => ({
        record: from.first.row.hash,
        day,
        ...said,
        measures: measures.map((m) => ({
          record: m.from.first.row.hash,
          ...m.said,
          done: m.done?.what ?? null,
        })),
      })),
      exit: open > 0 ? exitOf.limits : 0,
    };
  });

const measure = (letters: string, what: string, options: MeasureOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { row } = named((await lookAt(store)).entries, letters, 'incident');
    const { by, person } = options;
    const content = {
      incident: row.hash,
      what,
      ...(by === undefined ? {} : { by }),
      ...(person === undefined ? {} : { person: (await personNamed(store, person)).person }),
    };
    return keep(store, 'measure', content, options);
  });

const done = (letters: string, what: string, options: Stored): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const { row } = named(entries, letters, 'measure');
    const open = openMeasures(incidents(entries)).map(({ measure }) => measure.from.first.row.hash);
    if (!open.includes(row.hash))
      throw new UsageFault(
        `${letters}: found a measure that is done; expected an open one (heedway incident list)`,
      );
    return keep(store, 'measured', { measure: row.hash, what }, options);
  });

async function limit(why: string, options: LimitOptions): Promise<Outcome> {
  const { from, to, speed, closed, because } = options;
  if ((speed === undefined) !== (closed === true))
    throw new UsageFault(`found ${speed === undefined ? 'neither' : 'both'}; expected --speed or --closed`);
  const outing = await outingAt(options.outing);
  const line = options.line ?? outing?.line.name;
  if (line === undefined) throw new UsageFault('found no line; expected --outing or --line');
  return inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const from1 =
      because === undefined ? {} : { because: named(entries, because, 'incident', 'inspection').row.hash };
    const written = { line, from, to, ...(speed === undefined ? {} : { speed }), why, ...from1 };
    const content = fitting(() => restrictionContent(written, outing, options.units));
    return keep(store, 'restriction', content, options, {
      exit: speed === undefined ? exitOf.hold : exitOf.limits,
      after:
        'Every outing on that line heeds it that is asked with these records (those that lie at hand always are), until heedway incident lift says why it need not.',
    });
  });
}

const limits = (options: Stored): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const open = openRestrictions(entries);
    const rows = open.map(({ from, since }) => {
      const { line, from: begins, to, speed, why } = from.content as unknown as WrittenLimit;
      return [shortHash(from.first.row.hash), since, line, `${begins} – ${to}`, speedOrShut(speed), why];
    });
    const shut = open.some(({ said }) => said.speed === undefined);
    return {
      text:
        open.length === 0
          ? 'No line is slow or shut by a record.'
          : table([['record', 'since', 'line', 'where', 'how', 'why'], ...rows]),
      json: open.map(({ from, said, since }) => ({ record: from.first.row.hash, since, ...said })),
      exit: shut ? exitOf.hold : open.length > 0 ? exitOf.limits : 0,
    };
  });

const lift = (letters: string, why: string, options: Stored & { by?: string }): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const { row } = named(entries, letters, 'restriction');
    if (!openRestrictions(entries).some(({ from }) => from.first.row.hash === row.hash))
      throw new UsageFault(
        `${letters}: found a limit that is lifted; expected one of heedway incident limits`,
      );
    const who = options.by === undefined ? {} : { person: (await personNamed(store, options.by)).person };
    return keep(store, 'lifted', { restriction: row.hash, why, ...who }, options);
  });
