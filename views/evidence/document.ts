/**
 * An evidence pack on paper: cover, table of contents, sections from a new page each; marked as PDF/A-3b, with the records as a
 * file inside. Letters that the face lacks are said in words.
 */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Block, Picture, Section } from '../../desk/evidence/blocks.ts';
import type { Pack } from '../../desk/evidence/pack.ts';
import type { Letters } from '../../desk/font-letters.ts';
import { printable } from '../../desk/printable.ts';
import { RECORDS_FILE } from '../../words/records/evidence.ts';
import { cardFace } from '../card-paper.ts';

export type PackPaper = 'a4' | 'letter';

/** Points. */
const sizes: Readonly<Record<PackPaper, { readonly width: number; readonly height: number }>> = {
  a4: { width: 595.28, height: 841.89 },
  letter: { width: 612, height: 792 },
};

const MARGIN = 42;
/** Words of more than eighteen letters, and the pieces into which they may be parted. */
const [LONGER, PIECE] = [/\S{19,}/gu, /\S{18}(?=\S)/gu];
/** A hash has room on a line, and is copied whole. */
const HASH = /^[0-9a-f]{64}$/;

type Say = (text: string) => string;

export function packDocument(pack: Pack, paper: PackPaper, has: Letters): TDocumentDefinitions {
  const known = new Map<string, string>();
  // Many cells say the same.
  const say: Say = (text) => {
    const told = known.get(text) ?? broken(printable(text, has));
    known.set(text, told);
    return told;
  };
  const typed: Say = (text) => printable(text, has);
  const at = new Date(pack.made.at);
  return {
    pageSize: sizes[paper],
    pageMargins: [MARGIN, MARGIN, MARGIN, MARGIN],
    version: '1.7',
    subset: 'PDF/A-3b',
    language: 'en',
    info: { title: say(pack.title), creator: 'Heedway', creationDate: at },
    defaultStyle: { font: cardFace.name, fontSize: 9, lineHeight: 1.1 },
    files: {
      records: {
        src: dataUrl(pack.records),
        name: RECORDS_FILE,
        type: 'application/x-ndjson',
        description: 'The records of this pack',
        relationship: 'Source',
        creationDate: at,
        modifiedDate: at,
      },
    } as unknown as NonNullable<TDocumentDefinitions['files']>,
    footer: (page: number, pages: number): Content => ({
      columns: [
        { text: say(`${pack.title} · ${pack.made.at.slice(0, 10)}`), width: '*' },
        { text: `${page} of ${pages}`, alignment: 'right', width: 60 },
      ],
      fontSize: 7.5,
      margin: [MARGIN, 12, MARGIN, 0],
    }),
    content: [
      { text: say(pack.title), fontSize: 22, bold: true, margin: [0, 0, 0, 10] },
      ...pack.cover.map((block) => laid(block, say, typed)),
      { toc: { title: { text: 'Contents', fontSize: 13, bold: true, margin: [0, 14, 0, 4] } } },
      ...pack.sections.flatMap((section) => sectionOf(section, say, typed)),
    ],
  };
}

const sectionOf = ({ title, blocks }: Section, say: Say, typed: Say): Content[] => [
  { text: say(title), fontSize: 16, bold: true, tocItem: true, pageBreak: 'before', margin: [0, 0, 0, 6] },
  ...together(blocks).map((some) =>
    some.length === 1
      ? laid(some[0], say, typed)
      : { stack: some.map((block) => laid(block, say, typed)), unbreakable: true },
  ),
];

/** A heading, and what is written in bold, does not stand at the foot of a page alone. */
function together(blocks: readonly Block[]): Block[][] {
  const groups: Block[][] = [];
  for (const block of blocks) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const leads = before?.is === 'heading' || (before?.is === 'text' && before.strong);
    if (last && leads && staysBy(block)) last.push(block);
    else groups.push([block]);
  }
  return groups;
}

/** Lines of a list that go over to the next page with what leads to it, rather than be parted from it. */
const SHORT_LIST = 20;

const staysBy = (block: Block): boolean =>
  block.is === 'text' || block.is === 'heading' || (block.is === 'list' && block.lines.length <= SHORT_LIST);

const INDENT = 10;

function laid(block: Block, say: Say, typed: Say): Content {
  switch (block.is) {
    case 'heading':
      return {
        text: say(block.text),
        fontSize: 11,
        bold: true,
        margin: [0, 8, 0, 2],
        headlineLevel: 1,
      };
    case 'text':
      return { text: say(block.text), bold: block.strong === true, margin: [0, 2, 0, 2] };
    case 'list':
      return { ul: block.lines.map(say), margin: [0, 1, 0, 3] };
    case 'typed':
      return {
        // Nothing is put into what is copied.
        stack: block.lines.map((line) => ({ text: typed(line), fontSize: 8 })),
        margin: [8, 3, 0, 3],
      };
    case 'pictures':
      return { stack: pairs(block.pictures).map((two) => side(two, say)), margin: [0, 2, 0, 6] };
    case 'table':
      return table(block.head, block.rows, say);
    case 'fields':
      return {
        table: {
          widths: [190, '*'],
          body: block.rows.map(({ label, value, depth }) => [
            { text: say(label), bold: value === '', margin: [depth * INDENT, 0, 0, 0] },
            say(value),
          ]),
        },
        layout: 'noBorders',
        fontSize: 8,
        margin: [0, 0, 0, 4],
      };
  }
}

/** Points: two beside each other on either paper. */
const PICTURE = 250;

const pairs = (all: readonly Picture[]): (readonly Picture[])[] =>
  all.flatMap((_, i) => (i % 2 === 0 ? [all.slice(i, i + 2)] : []));

const side = (two: readonly Picture[], say: Say): Content => ({
  columns: two.map(({ jpeg, words }) => ({
    stack: [
      { image: `data:image/jpeg;base64,${jpeg}`, fit: [PICTURE, PICTURE] },
      { text: say(words), fontSize: 8, margin: [0, 2, 0, 8] },
    ],
    width: PICTURE,
  })),
  columnGap: 12,
  unbreakable: true,
});

/** Beyond so many letters a column shares what room the short ones leave. */
const SHORT = 17;

/** A column of short words takes what it needs, and one of hashes too: they are not parted. */
function table(head: readonly string[], rows: readonly (readonly string[])[], say: Say): Content {
  const widths = head.map((name, i) => {
    const short = rows.every((row) => (row[i] ?? '').length <= SHORT || HASH.test(row[i]));
    return short && name.length <= SHORT ? 'auto' : '*';
  });
  const cell = (text: string): string => (HASH.test(text) ? text : say(text));
  return {
    table: {
      headerRows: 1,
      dontBreakRows: true,
      // Where all are short the last takes the rest.
      widths: widths.includes('*') ? widths : widths.map((w, i) => (i === widths.length - 1 ? '*' : w)),
      body: [
        head.map((text) => ({ text: say(text), bold: true })),
        ...rows.map((row) => head.map((_, i) => cell(row[i] ?? ''))),
      ],
    },
    layout: 'lightHorizontalLines',
    // Beside a hash there is room for a name and a time on one line.
    fontSize: rows.some((row) => row.some((cell) => HASH.test(cell))) ? 7 : 7.5,
    margin: [0, 2, 0, 6],
  };
}

/** With where a very long word may be parted, so that it does not run off the paper. */
const broken = (text: string): string =>
  text.replace(LONGER, (word) => (HASH.test(word) ? word : word.replace(PIECE, '$&\u200b')));

function dataUrl(text: string): string {
  let bytes = '';
  for (const byte of new TextEncoder().encode(text)) bytes += String.fromCharCode(byte);
  return `data:application/x-ndjson;base64,${btoa(bytes)}`;
}
