/** heedway records: the store of what was done, by whom, when; and heedway verify: whether it is as it was written. */
import type { Command as Program } from 'commander';
import { serviceHead, tellCarried, tellService, tellTrip } from '../../desk/leave/tell.ts';
import { allNamed, typedIn } from '../../records/about.ts';
import { standing } from '../../records/amended.ts';
import { bringIn, keyLetters } from '../../records/bring.ts';
import { isStoreFile, readStoreFile, type StoreFile, storeFile } from '../../records/file.ts';
import { look, photosFor } from '../../records/ledger.ts';
import { personNamed } from '../../records/names.ts';
import { photosNamed } from '../../records/photos.ts';
import { carried, service, trips } from '../../records/service.ts';
import type { Depth } from '../../records/verify.ts';
import { tellAuthors, tellBrought } from '../../words/records/brought.ts';
import { shortHash, tellContent, tellStanding } from '../../words/records/record.ts';
import { IN_PAPERS, tellTyped } from '../../words/records/striking.ts';
import { tellFault, tellFork, tellWhole } from '../../words/records/verified.ts';
import { type Command, common, type Options, type Outcome, UsageFault } from '../command.ts';
import { contentOf } from '../file.ts';
import {
  authorHere,
  beginStore,
  entryNamed,
  inStore,
  lookAt,
  record,
  type StoreOptions,
  storeOption,
} from '../records.ts';
import { table } from '../text.ts';
import { writeOut } from '../write.ts';
import { declareKept } from './records-kept.ts';

interface BeginOptions extends Options, StoreOptions {
  readonly name: string;
}
interface NoteOptions extends Options, StoreOptions {
  readonly amends?: string;
}
interface ImportOptions extends Options, StoreOptions {
  readonly accept?: string;
}
interface VerifyOptions extends Options, StoreOptions {
  readonly each?: boolean;
}
interface FileOptions extends Options, StoreOptions {
  readonly out?: string;
  readonly names?: boolean;
}

/** Exit: something is amiss, or it is not as it was asked for. */
const AMISS = 20;

export const recordsCommand: Command = {
  name: 'records',
  declare: (program, run) => {
    const records = program
      .command('records')
      .description('What was done, by whom and when: kept so that nothing is changed unseen.');
    const sub = (call: string, description: string): Program =>
      storeOption(common(records.command(call)).description(description));

    sub('begin', 'A new store, or a key of this machine to write into one that was copied here.')
      .requiredOption(
        '--name <name>',
        'who writes on this machine; the name stands apart and can be struck out',
      )
      .action((options: BeginOptions) => run(() => begin(options), options));
    sub('list', 'All records, newest last.').action((options: Options & StoreOptions) =>
      run(() => list(options), options),
    );
    sub('show <record>', 'One record, whole, by the first letters of its hash.').action(
      (letters: string, options: Options & StoreOptions) => run(() => show(letters, options), options),
    );
    sub('note <text>', 'A note; with --amends it says another one anew, which stays.')
      .option('--amends <record>', 'the note that this one says anew')
      .action((text: string, options: NoteOptions) => run(() => note(text, options), options));
    sub('export', 'The store as one file, the same byte for byte for the same records.')
      .requiredOption('-o, --out <file>', 'write it here')
      .option('--names', 'with the names of persons, which stay at home otherwise')
      .action((options: FileOptions) => run(() => exported(options), options));
    sub('import <file>', 'Records of another device’s file, beside those that are here.')
      .option(
        '--accept <keys>',
        'keys that nothing here vouches for, as their owners read them out; with commas between',
      )
      .action((file: string, options: ImportOptions) => run(() => imported(file, options), options));
    sub('authors', 'Who wrote what is here, with the letters of their keys.').action(
      (options: Options & StoreOptions) => run(() => authors(options), options),
    );
    sub('service', 'Service days, runs and distance of every vehicle, and riders carried.').action(
      (options: Options & StoreOptions) => run(() => ran(options), options),
    );
    sub('names', 'The persons whose names stand beside the records.').action(
      (options: Options & StoreOptions) => run(() => named(options), options),
    );
    sub('photo <letters>', 'A photo that a record names, by the first letters of its hash.')
      .requiredOption('-o, --out <file>', 'write it here')
      .action((letters: string, options: FileOptions) => run(() => photo(letters, options), options));
    declareKept(sub, run);
    sub('strike <name>', 'Strikes a name out for good; the records of that person stay, and verify.').action(
      (name: string, options: Options & StoreOptions) => run(() => strike(name, options), options),
    );
  },
};

async function begin(options: BeginOptions): Promise<Outcome> {
  const author = await beginStore(options);
  return inStore(options, async (store) => {
    const { person } = await personNamed(store, options.name);
    const { row } = await record(store, { kind: 'author', content: { person } }, options);
    const signed = author.keys
      ? 'Every record is signed with a key that was made on this machine.'
      : 'This platform has no Ed25519: records are unsigned.';
    return {
      text: `${options.name} writes into ${options.records} here. ${signed} Keep ${options.records}.key to yourself.`,
      json: {
        records: options.records,
        author: author.name,
        record: row.hash,
        signed: author.keys !== undefined,
      },
      exit: 0,
    };
  });
}

const list = (options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries, faults } = await lookAt(store);
    const names = await store.names();
    const all = standing(entries).map((one) => tellStanding(one, entries, names));
    const rows = all.map(({ hash, when, what, by }) => [hash, when, what, by]);
    const amiss = faults.length === 0 ? [] : ['', 'Not all is as it was written: heedway verify tells what.'];
    return {
      text: [table([['record', 'when', 'what', 'by'], ...rows]), ...amiss].join('\n'),
      json: { records: all, faults: faults.length },
      exit: 0,
    };
  });

const show = (letters: string, options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const { body, row } = entryNamed(entries, letters);
    return {
      text: JSON.stringify({ ...row, text: JSON.parse(row.text) }, undefined, 2),
      json: { ...row, body },
      exit: 0,
    };
  });

const note = (text: string, options: NoteOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const amended =
      options.amends === undefined ? undefined : entryNamed((await lookAt(store)).entries, options.amends);
    if (amended && amended.body.kind !== 'note')
      throw new UsageFault(`--amends: found a record of kind ${amended.body.kind}; expected a note`);
    const said = {
      kind: 'note',
      content: { text },
      ...(amended ? { amends: amended.row.hash } : {}),
    } as const;
    const { body, row } = await record(store, said, options);
    return {
      text: `Recorded as ${shortHash(row.hash)}: ${tellContent(body, [])}`,
      json: { record: row.hash },
      exit: 0,
    };
  });

const exported = (options: FileOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const looked = await look(store);
    if (looked.faults.length > 0)
      throw new UsageFault(
        `${options.records}: found ${looked.faults.length} things amiss (heedway verify tells them); expected a store that is as it was written`,
      );
    const out = options.out ?? '';
    const photos = await photosFor(store, looked.entries);
    await writeOut(out, await storeFile(looked, options.names ? await store.names() : [], photos));
    const { length } = looked.entries;
    return { text: `${length} records written into ${out}`, json: { records: length, file: out }, exit: 0 };
  });

const MOST = 512 * 1024 * 1024;

async function fileOf(path: string): Promise<Uint8Array> {
  const content = await contentOf(path, MOST);
  if ('bytes' in content) return content.bytes;
  throw new UsageFault(`${path}: found ${content.unread}; expected ${content.expected}`);
}

const imported = (path: string, options: ImportOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const file = await readStoreFile(await fileOf(path));
    const brought = await bringIn(store, file, keysIn(options.accept));
    const { entries, forks } = await lookAt(store);
    const lines = tellBrought(brought, file, { entries, names: await store.names() });
    if (brought.how === 'altered')
      throw new UsageFault(`${path}: nothing was taken.\n${lines.slice(1).join('\n')}`, brought.faults);
    const known = { entries: file.verified.entries, names: file.names };
    const asked = brought.how === 'unknown' ? brought.strangers : brought.accepted;
    return {
      text: [
        ...lines,
        ...(brought.how === 'unknown' ? [`--accept ${asked.map(keyOf).join(',')}`] : []),
        ...forks.map((fork) => tellFork(fork, known)),
      ].join('\n'),
      json: {
        ...(brought.how === 'taken' ? brought.taken : { added: 0 }),
        [brought.how === 'taken' ? 'accepted' : 'unknown']: asked.map(({ author }) => author),
        names: file.names.length,
        forks,
      },
      exit: brought.how === 'taken' ? 0 : AMISS,
    };
  });

const keyOf = ({ author }: { readonly author: string }): string => keyLetters(author);

/** As they are written or read out: in fours too. */
function keysIn(accept = ''): ReadonlySet<string> {
  const keys = accept.split(',').map((key) => key.replace(/\s/g, '').toLowerCase());
  return new Set(keys);
}

const authors = (options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const me = await authorHere(options).catch(() => undefined);
    const lines = tellAuthors({ entries, names: await store.names() }, me?.name);
    return {
      text: lines.join('\n') || 'Nobody has written here.',
      json: [...new Set(entries.map(({ body }) => body.author))],
      exit: 0,
    };
  });

const ran = (options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const all = trips((await lookAt(store)).entries);
    const vehicles = service(all);
    const riders = carried(all);
    const out = all.filter(({ arrival }) => !arrival);
    const rows = vehicles.map((one) => tellService(one, { system: options.units }));
    return {
      text: [
        table([serviceHead, ...rows]),
        tellCarried(riders),
        ...out.map((trip) => `Not arrived, as far as anybody said: ${tellTrip(trip)}`),
      ].join('\n'),
      json: { vehicles, riders, out: out.map(({ departure }) => departure.first.row.hash) },
      exit: 0,
    };
  });

const photo = (letters: string, options: FileOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const all = [...photosNamed((await lookAt(store)).entries).keys()];
    const found = /^[0-9a-f]{4,64}$/.test(letters) ? all.filter((hash) => hash.startsWith(letters)) : [];
    const bytes = found.length === 1 ? await store.photo(found[0]) : undefined;
    if (!bytes)
      throw new UsageFault(
        `found ${found.length === 1 ? 'none of its bytes here' : `${found.length} photos`}; expected the first letters of one photo that a record names`,
      );
    const out = options.out ?? '';
    await writeOut(out, bytes);
    return { text: `Written into ${out}.`, json: { photo: found[0], file: out }, exit: 0 };
  });

const named = (options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const names = [...(await store.names())].sort((a, b) => (a.name < b.name ? -1 : 1));
    return {
      text: names.map(({ name, person }) => `${shortHash(person)}  ${name}`).join('\n'),
      json: names.map(({ name, person }) => ({ name, person })),
      exit: 0,
    };
  });

const strike = (name: string, options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const found = allNamed(name, await store.names());
    if (found.length === 0)
      throw new UsageFault(`found no ${name}; expected a name of heedway records names`);
    const typed = typedIn(name, (await lookAt(store)).entries);
    for (const { person } of found) await store.strike(person);
    return {
      text: [
        `${name} is struck out here. Files that were exported with names before still have it, and so do papers: ${IN_PAPERS}.`,
        ...tellTyped(name, typed),
      ].join('\n'),
      json: { struck: found.map(({ person }) => person), typed: typed.map(({ row }) => row.hash) },
      exit: 0,
    };
  });

// ---- verify

export const verifyCommand: Command = {
  name: 'verify',
  declare: (program, run) => {
    storeOption(common(program.command('verify [file]')))
      .description('Whether records are as they were written: a file of them, or the store on this machine.')
      .option('--each', 'every signature by itself, also of what the record behind it vouches for')
      .action((file: string | undefined, options: VerifyOptions) =>
        run(() => (file === undefined ? ofStore(options) : ofFile(file, options)), options),
      );
  },
};

const depthOf = ({ each }: VerifyOptions): Depth => (each ? 'each' : 'whole');

const ofStore = (options: VerifyOptions): Promise<Outcome> =>
  inStore(options, async (store) => toldVerified(await look(store, depthOf(options)), await store.names()));

async function ofFile(path: string, options: VerifyOptions): Promise<Outcome> {
  const bytes = await fileOf(path);
  // A store by its name is looked at as one.
  if (!isStoreFile(bytes)) return ofStore({ ...options, records: path });
  const { verified, names, faults } = await readStoreFile(bytes, depthOf(options));
  return toldVerified({ ...verified, faults }, names, (row) => row + 2);
}

function toldVerified(
  verified: StoreFile['verified'] & Pick<StoreFile, 'faults'>,
  names: StoreFile['names'],
  line?: (row: number) => number,
): Outcome {
  const { entries, faults, forks } = verified;
  const known = { entries, names };
  return {
    text: [
      ...tellWhole(verified, faults.length),
      ...faults.map((fault) => `- ${tellFault(fault, known, line)}`),
      ...forks.map((fork) => `- ${tellFork(fork, known)}`),
    ].join('\n'),
    json: {
      records: entries.length,
      faults,
      forks,
      unsigned: verified.unsigned,
      unchecked: verified.unchecked,
      vouched: verified.vouched,
    },
    exit: faults.length > 0 ? AMISS : 0,
  };
}
