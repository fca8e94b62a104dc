/**
 * How each kind of record stands in a pack: its heading and, where a table says it in a line each, that table. A kind that
 * has no description here is printed all the same, record by record, field by field.
 */
import type { Content, Kind } from '../../papers/record/fields.ts';
import { contentOf, type Standing } from '../../records/amended.ts';
import { nameIn } from '../../records/names.ts';
import { trips } from '../../records/service.ts';
import { shownTime } from '../../records/time.ts';
import { tellInDate } from '../../words/in-date.ts';
import { tellInvented } from '../../words/invented-limit.ts';
import { holderOf } from '../../words/records/due.ts';
import { checkWords } from '../../words/records/leaving.ts';
import { resultWords, shortHash, tellContent } from '../../words/records/record.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { type Block, heading, list, tableOf, text } from './blocks.ts';
import type { Packed } from './pick.ts';

export interface KindPage {
  readonly title: string;
  readonly blocks: (all: readonly Standing[], packed: Packed) => readonly Block[];
}

const when = ({ first }: Standing): string => shownTime(first.body.said);
const id = ({ first }: Standing): string => shortHash(first.row.hash);

/** A line of a table for each; what its kind does not read is told so, never left out. */
const lines = <K extends Kind>(
  kind: K,
  title: string,
  head: readonly string[],
  cells: (content: Content<K>, one: Standing, packed: Packed) => readonly string[],
): KindPage => ({
  title,
  blocks: (all, packed) => [
    tableOf(
      ['record', 'when', ...head],
      all.map((one) => {
        const content = contentOf(one, kind);
        return [
          id(one),
          when(one),
          ...(content ? cells(content, one, packed) : head.map(() => 'cannot be read')),
        ];
      }),
      'None in this span.',
    ),
  ],
});

const inspections: KindPage = {
  title: 'Inspections',
  blocks: (all) => {
    const read = all.flatMap((one) => {
      const said = contentOf(one, 'inspection');
      return said ? [{ one, said }] : [];
    });
    const lists = new Map(read.map(({ said }) => [said.listHash, said]));
    return [
      tableOf(
        ['record', 'when', 'list', 'of', 'found'],
        read.map(({ one, said }) => {
          const amiss = said.looked.filter(({ result }) => result !== 'right');
          const found = amiss.map(
            ({ item, ask, note, value, result, invented, photo }) =>
              `${resultWords[result]}: ${item}, ${note ?? ask}${value === undefined ? '' : ` (${value})`}${tellInvented(invented)}${photo === undefined ? '' : `, photo ${shortHash(photo)}`}`,
          );
          const measured = said.looked
            .filter(({ value, result }) => value !== undefined && result === 'right')
            .map(({ item, value }) => `${item} ${value}`);
          const right = said.looked.length - amiss.length;
          return [
            id(one),
            when(one),
            said.list,
            said.of,
            [`${right} right`, ...found, ...measured].join('; '),
          ];
        }),
        'None in this span.',
      ),
      ...[...lists.values()].flatMap((said) => [
        heading(`What was looked at: ${said.list} (${shortHash(said.listHash)})`),
        ...list(said.looked.map(({ item, ask }) => `${item}: ${ask}`)),
      ]),
    ];
  },
};

const departures: KindPage = {
  title: 'Departures',
  blocks: (all, { entries, reading }) => {
    const closed = new Map(trips(entries).map((trip) => [trip.departure.first.row.hash, trip]));
    const read = all.flatMap((one) => {
      const left = contentOf(one, 'departure');
      return left ? [{ one, left, trip: closed.get(one.first.row.hash) }] : [];
    });
    return [
      tableOf(
        ['record', 'left', 'train', 'word', 'rail', 'arrived', 'carried'],
        read.map(({ one, left, trip }) => [
          id(one),
          when(one),
          left.train,
          tellVerdict(left.word),
          left.rail,
          trip?.arrival ? when(trip.arrival) : 'not said',
          trip?.arrived?.carried === undefined ? 'not said' : `${trip.arrived.carried}`,
        ]),
        'None in this span.',
      ),
      ...read.flatMap(({ one, left }): Block[] => [
        heading(`${left.outing}, ${when(one)} (${id(one)})`),
        text(
          `${left.line}; ${left.vehicles.join(', ')}. Answer ${shortHash(left.answer)}…, inputs ${shortHash(left.inputs)}….`,
        ),
        ...list(left.told),
        text(
          `Crew: ${left.crew.map(({ duty, person }) => `${duty} ${nameIn(reading.names, person)}`).join(', ') || 'not said'}. Riders: ${ridersOf(left)}.`,
        ),
        ...list([
          ...left.done.map((check) => `Seen to: ${checkWords[check]}`),
          ...left.notDone.map((check) => `NOT seen to: ${checkWords[check]}`),
          ...(left.against === undefined ? [] : [`Against the word: ${left.against}`]),
        ]),
      ]),
    ];
  },
};

function ridersOf({ riders }: Content<'departure'>): string {
  const groups = new Map<string, number>();
  for (const { group } of riders) groups.set(group, (groups.get(group) ?? 0) + 1);
  return (
    [...groups]
      .map(([group, count]) => `${count} ${group === 'not said' ? 'of an age not said' : group}`)
      .join(', ') || 'none'
  );
}

/** In the order in which they stand in a pack; kinds without a page follow. */
export const kindPages: Readonly<Partial<Record<Kind, KindPage>>> = {
  inspection: inspections,
  mended: lines('mended', 'Mended', ['of', 'item', 'what was done'], ({ inspection, item, what }) => [
    shortHash(inspection),
    item,
    what,
  ]),
  certificate: lines(
    'certificate',
    'Certificates',
    ['what', 'of', 'done', 'stands', 'by', 'details'],
    ({ what, of, person, on, until, interval, by, details }, _one, { reading }) => [
      tellInDate(what),
      holderOf({ of, person }, reading.names),
      on,
      [interval, until === undefined ? undefined : `to ${until}`].filter(Boolean).join(', ') || 'no end said',
      by,
      details ?? '',
    ],
  ),
  departure: departures,
  arrival: lines(
    'arrival',
    'Arrivals',
    ['of departure', 'carried', 'distance', 'what happened'],
    ({ departure, carried, events }, { content }) => [
      shortHash(departure),
      carried === undefined ? 'not said' : `${carried}`,
      `${content['distance'] ?? 'not said'}`,
      events ?? '',
    ],
  ),
  note: lines('note', 'Notes', ['text'], ({ text: words }) => [words]),
  author: lines('author', 'Who wrote', ['who'], (content, _one, { reading }) => [
    tellContent({ kind: 'author', content }, reading.names),
  ]),
};
