/** heedway records keep, kept, remove, person: how long records are kept, taking out what has ended, all about one person. */
import type { Command as Program } from 'commander';
import { removableKinds } from '../../papers/record/kept-fields.ts';
import { about, allNamed, withPhotos } from '../../records/about.ts';
import { ended, rules } from '../../records/ended.ts';
import { photosFor } from '../../records/ledger.ts';
import { remove } from '../../records/remove.ts';
import { tellEnded, tellRules } from '../../words/records/kept.ts';
import { kindWords, shortHash, tellContent } from '../../words/records/record.ts';
import { type Options, type Outcome, type Run, UsageFault } from '../command.ts';
import { authorHere, clock, inStore, lookAt, record, type StoreOptions } from '../records.ts';
import { wrap } from '../screen.ts';
import { writeOut } from '../write.ts';

type Stored = Options & StoreOptions;

export function declareKept(sub: (call: string, description: string) => Program, run: Run): void {
  sub('keep <kind> <span>', `How long records are kept, as "3 years": ${removableKinds.join(', ')}.`)
    .requiredOption('--source <rule>', 'the rule or law that says so')
    .action((kind: string, keep: string, options: Stored & { source: string }) =>
      run(() => keepFor(kind, keep, options), options),
    );
  sub(
    'ended',
    'How long each kind is kept, and what has reached its end; exit 10 where something has.',
  ).action((options: Stored) => run(() => shown(options), options));
  sub('remove', 'Takes out for good what has reached its end; its hashes stay, and all verifies.').action(
    (options: Stored) => run(() => taken(options), options),
  );
  sub('person <name>', 'All that is kept about one person, as one file.')
    .option('-o, --out <file>', 'write it here')
    .action((name: string, options: Stored & { out?: string }) => run(() => person(name, options), options));
}

const keepFor = (kind: string, keep: string, options: Stored & { source: string }): Promise<Outcome> =>
  inStore(options, async (store) => {
    const content = { kind, keep, source: options.source };
    const { body, row } = await record(store, { kind: 'retention', content }, options);
    return {
      text: `${tellContent(body, [])}. Recorded as ${shortHash(row.hash)}. Nothing goes before heedway records remove is said.`,
      json: { record: row.hash, ...content },
      exit: 0,
    };
  });

const shown = (options: Stored): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const gone = ended(entries, clock.now().slice(0, 10));
    return {
      text: [...tellRules(rules(entries)), ...tellEnded(gone)].flatMap((line) => wrap(line, '  ')).join('\n'),
      json: { rules: [...rules(entries).values()], ended: gone },
      exit: gone.length > 0 ? 10 : 0,
    };
  });

const taken = (options: Stored): Promise<Outcome> =>
  inStore(options, async (store) => {
    const done = await remove(store, await authorHere(options), clock);
    if (!done.ok)
      throw new UsageFault(
        `${options.records}: nothing was removed: found ${done.faults} things amiss (heedway verify tells them); expected a store that is as it was written`,
      );
    const { gone, entries } = done;
    const by = entries.map(({ row }) => shortHash(row.hash)).join(', ');
    return {
      text:
        gone.length === 0
          ? 'Nothing has reached its end.'
          : `${gone.length} removed for good${by === '' ? '' : `, as ${by} says`}. Files that were exported before still have them.`,
      json: { removed: gone, records: entries.map(({ row }) => row.hash) },
      exit: 0,
    };
  });

const photosTold = (count: number): string =>
  count === 0 ? '' : `, with ${count} photo${count === 1 ? '' : 's'} of them`;

const person = (name: string, options: Stored & { out?: string }): Promise<Outcome> =>
  inStore(options, async (store) => {
    const named = allNamed(name, await store.names());
    if (named.length === 0)
      throw new UsageFault(`found no ${name}; expected a name of heedway records names`);
    const { entries } = await lookAt(store);
    const all = withPhotos(about(named, entries), entries, await photosFor(store, entries));
    if (options.out !== undefined) await writeOut(options.out, `${JSON.stringify(all, undefined, 2)}\n`);
    const lines = all.records.map(
      ({ record: hash, said, kind, why }) =>
        `${shortHash(hash)}  ${said.slice(0, 16).replace('T', ' ')}  ${kindWords[kind as keyof typeof kindWords]}, ${why}`,
    );
    return {
      text: [
        `${all.records.length} record${all.records.length === 1 ? '' : 's'} about ${name}${photosTold(all.photos.length)}${options.out === undefined ? '' : `, written into ${options.out}`}:`,
        ...lines,
      ].join('\n'),
      json: all,
      exit: 0,
    };
  });
