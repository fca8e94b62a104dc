/** heedway leave and arrive: a departure recorded with the answer it left by, and its arrival; replay: the answer again. */

import { recorded, withShown } from '../../desk/due/shown.ts';
import {
  asWritten,
  departureContent,
  hindrances,
  type Ready,
  readyToLeave,
  replay,
  stands,
} from '../../desk/leave/depart.ts';
import type { Json } from '../../desk/leave/nameless.ts';
import { tellAsked, tellHindrances, tellReplay, tellTrip } from '../../desk/leave/tell.ts';
import { type Check, checks } from '../../papers/record/fields.ts';
import { personNamed } from '../../records/names.ts';
import type { Entry } from '../../records/record.ts';
import { stillOut, trips } from '../../records/service.ts';
import { shortHash } from '../../words/records/record.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault } from '../command.ts';
import { type DayFlags, dayFlags, otherDay } from '../day.ts';
import { refusal } from '../open.ts';
import { openAsked } from '../open-asked.ts';
import { entryNamed, inStore, lookAt, record, type StoreOptions, storeOption, timeSaid } from '../records.ts';
import { wrap } from '../screen.ts';
import { program as version } from '../versions.ts';

interface LeaveOptions extends Options, StoreOptions, DayFlags {
  readonly done?: string;
  readonly said?: string;
  readonly against?: string;
}

export const leaveCommand: Command = {
  name: 'leave',
  declare: (program, run) => {
    dayFlags(storeOption(common(program.command('leave <outing>'))))
      .description('Records that it leaves: the answer as told, the crew, the riders, what was seen to.')
      .option('--done <checks>', `what was seen to: ${checks.join(',')}`)
      .option('--said <time>', 'when it left, as 2026-05-31T10:05; now, if nothing is said')
      .option('--against <why>', 'why it leaves although something is in the way')
      .action((path: string, options: LeaveOptions) => run(() => leave(path, options), options));
  },
};

/** @param show puts what is in date into the paper */
async function readied(path: string, options: LeaveOptions, show: (paper: Json) => Json): Promise<Ready> {
  const asked = await openAsked(path);
  const day = await otherDay(asked, options);
  const speech = { system: options.units, wording: options.wording };
  const paper = asWritten(day?.asked ?? asked);
  const ready = await readyToLeave(show(paper), speech);
  if ('problems' in ready) throw refusal(ready.problems.map((p) => ({ ...p, file: path })));
  return ready;
}

/** It leaves now, if it was to leave later or nobody said: what the driver will have driven is reckoned from then on. */
const leavingAt = (paper: Json, said: string): Json => {
  const now = said.slice(0, 16);
  const { back, leaves = now } = paper as { readonly back?: string; readonly leaves?: string };
  return back === undefined || (paper['leaves'] !== undefined && leaves <= now)
    ? paper
    : { ...paper, leaves: now };
};

function checksDone(done: string | undefined): readonly Check[] {
  const list = (done ?? '')
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const odd = list.find((word) => !checks.includes(word as Check));
  if (odd !== undefined) throw new UsageFault(`--done: found ${odd}; expected ${checks.join(', ')}`);
  return list as Check[];
}

async function leave(path: string, options: LeaveOptions): Promise<Outcome> {
  const done = checksDone(options.done);
  const said = timeSaid(options.said);
  const today = said.slice(0, 10);
  return inStore(options, async (store) => {
    const { entries, faults } = await lookAt(store);
    const names = await store.names();
    const shown = recorded(entries, names, today);
    const ready = await readied(path, options, (paper) => withShown(leavingAt(paper, said), shown));
    const { outing, answer } = ready.answered;
    const vehicles = outing.train.vehicles.map(({ name }) => name);
    const out = stillOut(trips(entries), vehicles);
    const inTheWay = hindrances(
      stands(ready),
      done,
      today,
      out.map(({ departure }) => departure.first.row.hash),
      faults.length,
    );
    const told = tellHindrances(inTheWay);
    if (inTheWay.length > 0 && options.against === undefined)
      return {
        text: [
          `${outing.name}: ${tellVerdict(answer.verdict).toUpperCase()}. Nothing was recorded: it has not left.`,
          ...told.flatMap((line) => wrap(`  - ${line}`, '    ')),
          'To be seen to, and said with --done:',
          ...tellAsked(ready.asked).flatMap((line) => wrap(`  ${line}`, '    ')),
        ].join('\n'),
        json: { left: false, answer: tellVerdict(answer.verdict), hindrances: inTheWay, asked: ready.asked },
        exit: exitOf.hold,
      };
    const person = async (name: string): Promise<string> => (await personNamed(store, name)).person;
    const against = inTheWay.length > 0 ? options.against : undefined;
    const content = await departureContent(ready, done, today, person, against);
    const { row } = await record(store, { kind: 'departure', content, said }, options);
    return {
      text: [
        `${outing.name} left: ${tellVerdict(answer.verdict).toUpperCase()}. Recorded as ${shortHash(row.hash)}.`,
        ...(against === undefined
          ? []
          : [`Against the word: ${against}`, ...told.map((line) => `  - ${line}`)]),
        `On arrival: heedway arrive ${shortHash(row.hash)}`,
      ].join('\n'),
      json: { left: true, record: row.hash, answer: tellVerdict(answer.verdict), hindrances: inTheWay },
      exit: exitOf[answer.verdict],
    };
  });
}

// ---- arriving

interface ArriveOptions extends Options, StoreOptions {
  readonly distance?: string;
  readonly carried?: string;
  readonly events?: string;
  readonly said?: string;
}

export const arriveCommand: Command = {
  name: 'arrive',
  declare: (program, run) => {
    storeOption(common(program.command('arrive [departure]')))
      .description('Records that it has arrived; said again, the later stands and the earlier stays.')
      .option('--distance <distance>', 'how far it ran, all laps together, as "2.5 mile"')
      .option('--carried <riders>', 'riders carried, all laps together')
      .option('--events <text>', 'what happened on the way; facts only')
      .option('--said <time>', 'when it arrived; now, if nothing is said')
      .action((letters: string | undefined, options: ArriveOptions) =>
        run(() => arrive(letters, options), options),
      );
  },
};

/** By its hash; where nothing is said, the one of which there is one. */
function departureIn(entries: readonly Entry[], letters: string | undefined, which: 'out' | 'newest'): Entry {
  if (letters !== undefined) {
    const entry = entryNamed(entries, letters);
    if (entry.body.kind === 'departure') return entry;
    throw new UsageFault(`${letters}: found a record of kind ${entry.body.kind}; expected a departure`);
  }
  const all = trips(entries).filter(({ arrival }) => which === 'newest' || !arrival);
  const one = which === 'newest' ? all.at(-1) : all.length === 1 ? all[0] : undefined;
  if (one) return one.departure.first;
  const told = all
    .map((trip) => `\n  ${shortHash(trip.departure.first.row.hash)} ${tellTrip(trip)}`)
    .join('');
  throw new UsageFault(
    `found ${all.length === 0 ? 'no train' : `${all.length} trains`} out; expected the departure${told}`,
  );
}

const arrive = (letters: string | undefined, options: ArriveOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const { body, row } = departureIn(entries, letters, 'out');
    const before = trips(entries).find(({ departure }) => departure.first.row.hash === row.hash)?.arrival;
    // Said anew without another time it arrived when it did.
    const was = (before?.amendments.at(-1) ?? before?.first)?.body.said;
    const said = options.said === undefined && was !== undefined ? was : timeSaid(options.said);
    if (Date.parse(said) < Date.parse(body.said))
      throw new UsageFault(`--said: found ${said}, before it left; expected a time after ${body.said}`);
    const { distance, carried, events } = options;
    if (carried !== undefined && !/^\d{1,5}$/.test(carried))
      throw new UsageFault(`--carried: found ${carried}; expected how many riders`);
    const content = {
      departure: row.hash,
      ...(distance === undefined ? {} : { distance }),
      ...(carried === undefined ? {} : { carried: Number(carried) }),
      ...(events === undefined ? {} : { events }),
    };
    const amends = before ? { amends: before.first.row.hash } : {};
    const arrived = await record(store, { kind: 'arrival', content, said, ...amends }, options);
    const trip = trips([...entries, arrived]).find(({ departure }) => departure.first.row.hash === row.hash);
    return {
      text: `${trip ? tellTrip(trip) : ''}. Recorded as ${shortHash(arrived.row.hash)}${before ? ', said anew' : ''}.`,
      json: { record: arrived.row.hash, departure: row.hash },
      exit: 0,
    };
  });

// ---- again

export const replayCommand: Command = {
  name: 'replay',
  declare: (program, run) => {
    storeOption(common(program.command('replay [departure]')))
      .description('The answer that a train left by, reckoned again from its record, and what differs.')
      .action((letters: string | undefined, options: Options & StoreOptions) =>
        run(() => again(letters, options), options),
      );
  },
};

const again = (letters: string | undefined, options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const entry = departureIn((await lookAt(store)).entries, letters, 'newest');
    const replayed = await replay(entry, version);
    if ('problems' in replayed) throw refusal(replayed.problems);
    return {
      text: tellReplay(replayed)
        .flatMap((line) => wrap(line, '  '))
        .join('\n'),
      json: replayed,
      exit: replayed.same && replayed.inputs ? 0 : exitOf.hold,
    };
  });
