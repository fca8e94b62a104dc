/**
 * The running card laid out for paper: large type, with the strip and a code that carries the outing. What one side
 * does not hold goes on to the next, which says whose it is and how many there are.
 */
import type { Content, ContentSection, TDocumentDefinitions } from 'pdfmake/interfaces';
import { renderSVG } from 'uqr';
import { type Card, cardMark, TRIED } from '../desk/card.ts';
import type { Letters } from '../desk/font-letters.ts';
import { type Handed, handedWords } from '../desk/outing-code.ts';
import { printable, printableCard, printableSvg } from '../desk/printable.ts';

export type Paper = 'a5' | 'half-letter';

export const paperNames: Readonly<Record<Paper, string>> = { a5: 'A5', 'half-letter': 'half-letter' };

/** The card's face and the files of the upright and bold cuts that it is set in. */
export const cardFace = {
  name: 'Card',
  normal: 'DejaVuSansCondensed',
  bold: 'DejaVuSansCondensed-Bold',
} as const;

/** Points. */
export const paperSizes: Readonly<Record<Paper, { width: number; height: number }>> = {
  a5: { width: 419.53, height: 595.28 },
  'half-letter': { width: 396, height: 612 },
};

export const MARGIN = 20;

/** Over the plan. */
export const FROM_ABOVE = 'The line from above';

/** One train's card, as it goes on paper. */
export interface CardOnPaper {
  readonly card: Card;
  /** The strip as SVG. */
  readonly strip: string;
  /** The line from above as SVG; absent: none of its curves is written. */
  readonly plan?: string;
  /** The outing itself; absent where it is too large for a code. */
  readonly handed: Handed | undefined;
}

/**
 * @param cards each begins a side of its own
 * @param has what letters the card's face has
 */
export function cardDocument(
  cards: readonly CardOnPaper[],
  paper: Paper,
  has: Letters,
): TDocumentDefinitions {
  const { width, height } = paperSizes[paper];
  const titles = cards.map(({ card }) => `${card.title}${card.tried.length > 0 ? ', tried' : ''}`);
  return {
    pageSize: { width, height },
    pageMargins: [MARGIN, MARGIN, MARGIN, MARGIN],
    info: {
      title: `Running card: ${printable(titles.join(' · '), has)}`,
      creator: 'Heedway',
      // The outings themselves, so that the file can be opened again where it was only kept as a PDF.
      keywords: cards.flatMap(({ handed }) => (handed ? [`#${handed.fragment}`] : [])).join(' '),
    },
    defaultStyle: { font: cardFace.name, fontSize: 9.5, lineHeight: 1.05 },
    content: cards.map((one) => oneCard(one, paper, cards.length > 1, has)),
  };
}

function oneCard(
  { card: told, strip, plan, handed }: CardOnPaper,
  paper: Paper,
  others: boolean,
  has: Letters,
): ContentSection {
  const card = printableCard(told, has);
  const { width, height } = paperSizes[paper];
  const inner = width - 2 * MARGIN;
  const mark = cardMark(card);
  const side = (page: number, pages: number): Content =>
    pages === 1 && !others
      ? ''
      : {
          columns: [
            { text: broken(short(mark)), bold: true, width: '*' },
            { text: `${page} of ${pages}`, alignment: 'right', width: 40 },
          ],
          fontSize: 7.5,
          margin: [MARGIN, 4, MARGIN, 0],
        };
  return {
    pageSize: { width, height },
    pageMargins: [MARGIN, MARGIN, MARGIN, MARGIN],
    footer: side,
    section: [
      head(card, inner),
      ...(card.records === '' ? [] : [framed([{ text: broken(card.records), bold: true }])]),
      ...(card.tried.length === 0
        ? []
        : [framed([{ text: TRIED, bold: true }, { ul: card.tried.map((text) => broken(text)) }])]),
      { text: broken(card.sentence), margin: [0, 3, 0, 0] },
      ...heeds(card),
      { svg: fontsOf(printableSvg(strip, has)), width: inner, margin: [0, 5, 0, 4] },
      {
        columns: [
          { width: '*', stack: [speeds(card)] },
          { width: inner * 0.36, stack: braking(card) },
        ],
        columnGap: 12,
      },
      foot(card, handed, inner),
      ...last(card, plan && fontsOf(printableSvg(plan, has)), inner),
    ],
  };
}

/** The foot of a side has room for one line; the name stands in full at its head. */
const short = (text: string): string => (text.length > 70 ? `${text.slice(0, 69)}…` : text);

/** Where a very long word may be parted, so that it does not run off the paper. */
const broken = (text: string, letters = 24): string =>
  text.replace(new RegExp(`\\S{${letters}}(?=\\S)`, 'gu'), '$&\u200b');

/** The strip names screen faces and outlines its lettering; on paper it is set plain in the card's own face. */
export const fontsOf = (svg: string): string =>
  svg
    .replace(/<\?xml[^>]*\?>\s*/, '')
    .replace(/font-family="[^"]*"/g, 'font-family="Card"')
    .replace(/<text[^>]*>/g, (tag) =>
      tag.replace(/ (stroke|stroke-width|stroke-linejoin|paint-order|font-stretch)="[^"]*"/g, ''),
    );

const head = (card: Card, inner: number): Content => ({
  columns: [
    {
      width: inner * 0.66,
      stack: [
        { text: card.verdict.toUpperCase(), fontSize: 24, bold: true },
        ...(card.notToRun === '' ? [] : [{ text: card.notToRun, fontSize: 12, bold: true }]),
        { text: broken(card.title), fontSize: 13, bold: true },
        ...(card.invented === '' ? [] : [{ text: broken(`(${card.invented})`), bold: true }]),
        { text: broken(`${card.train} · ${card.line}`) },
        { text: `${card.day} · rail ${card.rail} · ${card.light}`, fontSize: 11, bold: true },
      ],
    },
    {
      width: '*',
      stack: [
        { text: 'gap to keep', alignment: 'right' },
        // Words stand there in place of a gap: set as large, they would widen the column beyond the paper.
        { text: card.gap, fontSize: card.gap.length > 12 ? 12 : 21, bold: true, alignment: 'right' },
        {
          // What is longer than this would widen the column beyond the paper.
          // No line begins with a point.
          text: card.cars.map((c) => tied(c, 26)).join('\u00a0· '),
          fontSize: 8.5,
          alignment: 'right',
          margin: [0, 2, 0, 0],
        },
        { text: 'cars, this rail', alignment: 'right', fontSize: 8 },
      ],
    },
  ],
});

/** A frame that nobody overlooks: the train that stands there is another, or something is left out. */
const framed = (stack: Content[]): Content => ({
  table: { widths: ['*'], body: [[{ stack, fontSize: 10.5, margin: [2, 1, 2, 2] }]] },
  margin: [0, 5, 0, 0],
});

const heeds = (card: Card): Content[] =>
  card.heeds.length === 0
    ? []
    : [
        {
          table: {
            widths: [14, '*'],
            body: card.heeds.map(({ number, text }) => [
              { text: `${number}`, alignment: 'right' },
              { text: broken(text) },
            ]),
          },
          layout: 'noBorders',
          bold: true,
          fontSize: card.heeds.length > 4 ? 9 : 10.5,
          margin: [0, 3, 0, 0],
        },
      ];

/** Figures and their units stay on one line. */
const tied = (text: string, most = 30): string =>
  text.length > most ? broken(text, Math.min(most, 24)) : text.replace(/ /g, '\u00a0');

const speeds = (card: Card): Content => ({
  table: {
    widths: [74, 52, '*'],
    headerRows: 1,
    keepWithHeaderRows: 1,
    dontBreakRows: true,
    body: [
      [
        { text: 'from – to', bold: true },
        { text: 'at most', bold: true },
        { text: 'because of', bold: true },
      ],
      ...card.speeds.map((s) => [
        { text: s.where },
        {
          stack: [
            { text: s.speed, bold: true, fontSize: 12 },
            ...(s.posts === '' ? [] : [{ text: s.posts, fontSize: 7.5 }]),
          ],
        },
        { text: broken(s.why, 8) },
      ]),
    ],
  },
  layout: 'lightHorizontalLines',
});

function braking(card: Card): Content[] {
  const title: Content = { text: 'Braking points', bold: true };
  const fontSize = card.braking.length > 6 ? 9 : 10.5;
  const points = card.braking.map(
    (text): Content => ({ text: broken(text, 11), fontSize, margin: [0, 2, 0, 0], unbreakable: true }),
  );
  const [first = { text: 'none booked' }, ...rest] = points;
  // Its title does not stand alone at the end of a side.
  return [{ stack: [title, first], unbreakable: true }, ...rest];
}

/** Vehicles, beyond which their seats are set smaller. */
const MANY = 12;

/** Small, for it is looked up and not read at arm's length: a line for each vehicle. */
const seating = (card: Card, letters = 30): Content => ({
  stack: [
    { text: 'Seats, front first', bold: true, fontSize: 9.5 },
    ...card.seating.map(({ vehicle, seats }) => ({
      text: [
        { text: `${tied(vehicle, letters)}: `, bold: true },
        { text: seats.map((s) => tied(s.name, letters) || '–').join(' · ') },
      ],
    })),
  ],
  fontSize: card.seating.length > MANY ? 7 : 8.5,
  margin: [0, 6, 0, 0],
});

/** The plan beside the seats; below them where they are many. */
function last(card: Card, plan: string | undefined, inner: number): Content[] {
  if (plan === undefined) return [seating(card)];
  const width = inner * 0.66;
  const above: Content = {
    stack: [
      { text: FROM_ABOVE, bold: true },
      { svg: plan, width },
    ],
    margin: [0, 6, 0, 0],
    unbreakable: true,
  };
  return card.seating.length > MANY
    ? [seating(card), above]
    : [
        {
          columns: [
            { width: '*', stack: [seating(card, 14)] },
            { width, stack: [above] },
          ],
          columnGap: 12,
          unbreakable: true,
        },
      ];
}

/** What was assumed, and the code beside it. */
function foot(card: Card, handed: Handed | undefined, inner: number): Content {
  const words: Content[] = [
    { text: broken(`Assumed: ${card.assumptions}.`), fontSize: 8 },
    { text: card.cautions, fontSize: 8, bold: true, margin: [0, 3, 0, 0] },
    { text: handedWords(handed), fontSize: 8, margin: [0, 3, 0, 0] },
    { text: card.made, fontSize: 8, margin: [0, 3, 0, 0] },
  ];
  const codes = handed?.codes ?? [];
  const width = inner * 0.42;
  return {
    columns: [
      { width: '*', stack: words },
      ...(codes.length > 0 ? [{ width, stack: squares(codes, width) }] : []),
    ],
    columnGap: 12,
    margin: [0, 8, 0, 0],
    unbreakable: codes.length < 2,
  };
}

const squares = (codes: readonly string[], width: number): Content[] =>
  codes.map((code) => ({
    svg: renderSVG(code, { ecc: 'L', border: 2, pixelSize: 1 }),
    width,
    margin: [0, 0, 0, 6] as [number, number, number, number],
    unbreakable: true,
  }));
