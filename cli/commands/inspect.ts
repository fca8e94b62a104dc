/** heedway inspect: lists gone through and recorded, what is amiss, and what was mended. */
import type { Command as Program } from 'commander';
import { exampleLists } from '../../data/inspection-lists/index.ts';
import { inspectionContent, type Lacking, type Looked, lackingIn } from '../../desk/inspect/inspection.ts';
import type { InspectionList } from '../../papers/inspection/fields.ts';
import { type Result, readList } from '../../papers/inspection/read.ts';
import { printPath } from '../../papers/problem.ts';
import { type Derailed, derailed } from '../../records/incidents.ts';
import { type OpenDefect, openDefects } from '../../records/inspections.ts';
import { MOST_BYTES, type Photo, photoOf } from '../../records/photos.ts';
import { inspectionDrawing } from '../../views/inspection-drawings.ts';
import { tellInvented } from '../../words/invented-limit.ts';
import { tellBands } from '../../words/records/bands.ts';
import { offTheRails } from '../../words/records/incident.ts';
import { NOTHING_OPEN, tellMended } from '../../words/records/mended.ts';
import { resultWords, shortHash, tellContent } from '../../words/records/record.ts';
import { type Command, common, exitOf, type Options, type Outcome, UsageFault } from '../command.ts';
import { contentOf } from '../file.ts';
import { jsonIn } from '../open.ts';
import { entryNamed, inStore, lookAt, record, type StoreOptions, storeOption } from '../records.ts';
import { wrap } from '../screen.ts';
import { drawInto, table } from '../text.ts';

interface RecordOptions extends Options, StoreOptions {
  readonly of: string;
  readonly right?: string;
  readonly limit?: readonly string[];
  readonly reject?: readonly string[];
  readonly value?: readonly string[];
  readonly photo?: readonly string[];
}

export const inspectCommand: Command = {
  name: 'inspect',
  declare: (program, run) => {
    const inspect = program
      .command('inspect')
      .description('Lists of what is looked at before use: gone through, recorded, and what is amiss.');
    const sub = (call: string, description: string): Program =>
      common(inspect.command(call)).description(description);

    sub('lists', 'The lists that come along, all of them examples: the host’s own win.').action(
      (options: Options) => run(async () => lists(), options),
    );
    sub('show <list>', 'What a list asks: one that comes along, or a file of the host’s own.')
      .option('--svg <item=file...>', 'the drawing of an item: how it is looked at or measured')
      .action((list: string, options: Options & { svg?: readonly string[] }) =>
        run(async () => shown(await listNamed(list), options.svg), options),
      );
    storeOption(sub('record <list>', 'A list gone through: every item is said, or nothing is recorded.'))
      .requiredOption('--of <name>', 'which vehicle or line, by its name')
      .option('--right <items>', 'what is right: ids with commas, or "rest" for all not said otherwise')
      .option('--limit <item=what...>', 'what is to be mended and usable so')
      .option('--reject <item=what...>', 'what is rejected: it may not be used so')
      .option('--value <item=figure...>', 'what was measured')
      .option(
        '--photo <item=file...>',
        `a photo (.jpg, at most ${MOST_BYTES / 1024} kB), kept without place and time`,
      )
      .action((list: string, options: RecordOptions) => run(() => recordList(list, options), options));
    storeOption(sub('defects', 'What is amiss and not mended, rejected first.')).action(
      (options: Options & StoreOptions) => run(() => defects(options), options),
    );
    storeOption(sub('mend <record> <item> <what>', 'What was mended: the defect is closed.')).action(
      (letters: string, item: string, what: string, options: Options & StoreOptions) =>
        run(() => mend(letters, item, what, options), options),
    );
  },
};

async function listNamed(name: string): Promise<InspectionList> {
  const known = Object.hasOwn(exampleLists, name);
  if (!known && !name.endsWith('.json'))
    throw new UsageFault(
      `found the list ${name}; expected ${Object.keys(exampleLists).join(', ')}, or a file of one's own`,
    );
  const read = readList(known ? exampleLists[name] : await jsonIn(name));
  if (read.ok) return read.value;
  throw new UsageFault(
    read.troubles
      .map(({ path, found, expected }) => `${name}: ${printPath(path)}: found ${found}; expected ${expected}`)
      .join('\n'),
    read.troubles,
  );
}

async function lists(): Promise<Outcome> {
  const all = await Promise.all(
    Object.keys(exampleLists).map(async (id) => ({ id, list: await listNamed(id) })),
  );
  const rows = all.map(({ id, list }) => [id, list.name, `${list.items.length} items`]);
  return {
    text: [table([['list', 'what it is', ''], ...rows]), 'All are examples: the host’s own lists win.'].join(
      '\n',
    ),
    json: all.map(({ id, list }) => ({ id, name: list.name, when: list.when, of: list.of })),
    exit: 0,
  };
}

async function drawn(list: InspectionList, svg: readonly string[] | undefined): Promise<readonly string[]> {
  const done: string[] = [];
  for (const [id, file] of pairs('--svg', list, svg)) {
    const { ask, drawing } = list.items.find((item) => item.id === id) ?? {};
    if (!drawing)
      throw new UsageFault(
        `--svg: found ${id}; expected an item with a drawing: ${list.items.flatMap((item) => (item.drawing ? item.id : [])).join(', ') || 'none of this list has one'}`,
      );
    done.push(await drawInto(file, inspectionDrawing(drawing, `Drawing: ${ask}`)));
  }
  return done;
}

async function shown(list: InspectionList, svg?: readonly string[]): Promise<Outcome> {
  const { name, example, source, items } = list;
  const files = await drawn(list, svg);
  return {
    text: [
      `${name}${example === true ? ' (an example: the host’s own list wins)' : ''}`,
      ...items.flatMap(({ id, ask, how, by, drawing, measured }) =>
        wrap(
          `${id}: ${ask}.${how === undefined ? '' : ` ${how}`}${measured === undefined ? '' : ` By its figure: ${tellBands(measured)}.`}${by === undefined ? '' : ` To be judged by: ${by}.`}${drawing === undefined ? '' : ' (With a drawing.)'}`,
          '    ',
        ),
      ),
      ...wrap(`Source: ${source}.`, '    '),
      ...files,
    ].join('\n'),
    json: list,
    exit: 0,
  };
}

/** "water-glass=blows by" */
function pairs(
  flag: string,
  list: InspectionList,
  given: readonly string[] = [],
): (readonly [string, string])[] {
  return given.map((text) => {
    const at = text.indexOf('=');
    const [id, what] = [text.slice(0, at), text.slice(at + 1).trim()];
    if (at > 0 && what !== '' && list.items.some((item) => item.id === id)) return [id, what];
    throw new UsageFault(
      `${flag}: found ${text}; expected one of ${list.items.map((item) => item.id).join(', ')}, "=", and what is so`,
    );
  });
}

function saidOf(list: InspectionList, options: RecordOptions): Record<string, Looked> {
  const said: Record<string, Looked> = {};
  const say = (id: string, more: Looked): void => {
    said[id] = { ...said[id], ...more };
  };
  for (const [id, value] of pairs('--value', list, options.value)) say(id, { value });
  for (const result of ['limit', 'reject'] as const satisfies readonly Result[])
    for (const [id, note] of pairs(`--${result}`, list, options[result])) {
      if (said[id]?.result !== undefined) throw new UsageFault(`${id}: found two results; expected one`);
      say(id, { result, note });
    }
  const right = (options.right ?? '')
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  for (const { id } of list.items)
    if (right.includes(id) || (right.includes('rest') && said[id]?.result === undefined)) {
      if (said[id]?.result !== undefined) throw new UsageFault(`${id}: found two results; expected one`);
      say(id, { result: 'right' });
    }
  const odd = right.find((id) => id !== 'rest' && !list.items.some((item) => item.id === id));
  if (odd !== undefined) throw new UsageFault(`--right: found ${odd}; expected ids of the list, or rest`);
  return said;
}

const lackWords: Readonly<Record<Lacking['why'], string>> = {
  'not-said': 'not said',
  'no-figure': 'its figure is none of its kind',
  'no-note': 'nobody said what is amiss',
};

/** Photos of items, each read and made bare before anything is kept. */
async function photosOf(
  list: InspectionList,
  given: readonly string[] | undefined,
): Promise<ReadonlyMap<string, Photo>> {
  const read = await Promise.all(
    pairs('--photo', list, given).map(async ([id, path]) => {
      const content = await contentOf(path, MOST_FILE);
      if (!('bytes' in content))
        throw new UsageFault(`${path}: found ${content.unread}; expected ${content.expected}`);
      const photo = await photoOf(content.bytes);
      if (typeof photo === 'string') throw new UsageFault(`${path}: ${photo}`);
      return [id, photo] as const;
    }),
  );
  return new Map(read);
}

/** What a camera writes may be far larger than what is kept; beyond that it is no photo. */
const MOST_FILE = 32 * 1024 * 1024;

async function recordList(name: string, options: RecordOptions): Promise<Outcome> {
  const list = await listNamed(name);
  const photos = await photosOf(list, options.photo);
  const said = saidOf(list, options);
  for (const [id, { hash }] of photos) said[id] = { ...said[id], photo: hash };
  const lacking = lackingIn(list, said);
  if (lacking.length > 0)
    throw new UsageFault(
      `Nothing was recorded:\n${lacking.map(({ item, why }) => `  ${item.id}: ${lackWords[why]} (${item.ask})`).join('\n')}`,
      lacking,
    );
  return inStore(options, async (store) => {
    const content = await inspectionContent(list, options.of.trim(), said);
    for (const photo of photos.values()) await store.keepPhoto(photo);
    const { body, row } = await record(store, { kind: 'inspection', content }, options);
    const rejected = content.looked.some(({ result }) => result === 'reject');
    return {
      text: `${tellContent(body, [])}. Recorded as ${shortHash(row.hash)}.`,
      json: { record: row.hash, ...content },
      exit: rejected
        ? exitOf.hold
        : content.looked.some(({ result }) => result === 'limit')
          ? exitOf.limits
          : 0,
    };
  });
}

const tellDefect = ({
  inspection,
  of,
  item,
  what,
  rejects,
  invented,
  since,
  photo,
}: OpenDefect): readonly string[] => [
  shortHash(inspection.first.row.hash),
  item,
  rejects ? resultWords.reject : resultWords.limit,
  of,
  since,
  `${what}${tellInvented(invented)}${photo === undefined ? '' : ` [photo ${shortHash(photo)}]`}`,
];

const tellDerailed = (one: Derailed): string[] => [
  shortHash(one.incident.from.first.row.hash),
  '',
  resultWords.reject,
  one.of,
  one.since,
  offTheRails(one),
];

const defects = (options: Options & StoreOptions): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const open = [...openDefects(entries)].sort((a, b) => Number(b.rejects) - Number(a.rejects));
    const off = derailed(entries);
    return {
      text:
        open.length + off.length === 0
          ? NOTHING_OPEN
          : table([
              ['record', 'item', 'result', 'of', 'since', 'what'],
              ...off.map(tellDerailed),
              ...open.map(tellDefect),
            ]),
      json: [
        ...off.map((one) => ({
          record: one.incident.from.first.row.hash,
          of: one.of,
          what: offTheRails(one),
          rejects: true,
          since: one.since,
        })),
        ...open.map(({ inspection, ...rest }) => ({ record: inspection.first.row.hash, ...rest })),
      ],
      exit: off.length > 0 || open.some(({ rejects }) => rejects) ? exitOf.hold : 0,
    };
  });

const mend = (
  letters: string,
  item: string,
  what: string,
  options: Options & StoreOptions,
): Promise<Outcome> =>
  inStore(options, async (store) => {
    const { entries } = await lookAt(store);
    const { row } = entryNamed(entries, letters);
    const open = openDefects(entries).filter((one) => one.inspection.first.row.hash === row.hash);
    const defect = open.find((one) => one.item === item);
    if (!defect)
      throw new UsageFault(
        `found no open defect ${item} of ${letters}; expected ${open.map((one) => one.item).join(', ') || 'a record of heedway inspect defects'}`,
      );
    const content = { inspection: row.hash, item, what };
    const done = await record(store, { kind: 'mended', content }, options);
    return {
      text: tellMended(defect.of, defect.what, done.row.hash),
      json: { record: done.row.hash, ...content },
      exit: 0,
    };
  });
