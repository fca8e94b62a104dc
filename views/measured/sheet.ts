/** A test on paper: its safety and steps on one side of A5 or half-letter, and room to write the readings by hand. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Letters } from '../../desk/font-letters.ts';
import { type Guide, readingsForm } from '../../desk/measured/guide.ts';
import { printable, printableSvg } from '../../desk/printable.ts';
import { type FieldForm, fileForm, type GroupForm, type NamedField } from '../../papers/fields.ts';
import { fieldLabel } from '../../words/field.ts';
import type { Wording } from '../../words/voice.ts';
import { cardFace, fontsOf, MARGIN, type Paper, paperSizes } from '../card-paper.ts';
import { sceneToSvg } from '../strip/scene.ts';
import { testPicture } from './pictures.ts';

/** Rows to write into; a hand needs so much height, pt. */
const ROWS = 8;
const ROW_HEIGHT = 17;
/** Of a list within a list, as the marks of a run. */
const RUNS = 4;
const MARKS = 5;

const heads = ['name', 'date', 'by', 'where', 'rail', 'weather'];

export function sheetDocument(
  guide: Guide,
  paper: Paper,
  wording: Wording,
  has: Letters,
): TDocumentDefinitions {
  const { width, height } = paperSizes[paper];
  const inner = width - 2 * MARGIN;
  const say = (text: string): string => printable(text, has);
  const name = `${guide.name.charAt(0).toUpperCase()}${guide.name.slice(1)}`;
  const words = (field: NamedField): string => say(fieldLabel(field.about, wording));
  const svg = fontsOf(printableSvg(sceneToSvg(testPicture(guide.picture, name)), has));
  return {
    pageSize: { width, height },
    pageMargins: [MARGIN, MARGIN, MARGIN, MARGIN],
    info: { title: say(`${name}: sheet to write on`), creator: 'Heedway' },
    defaultStyle: { font: cardFace.name, fontSize: 8.5, lineHeight: 1.05 },
    footer: (page: number, pages: number): Content => ({
      columns: [
        { text: say(`${name} · write every figure with its unit`), width: '*' },
        { text: `${page} of ${pages}`, alignment: 'right', width: 40 },
      ],
      fontSize: 7.5,
      margin: [MARGIN, 2, MARGIN, 0],
    }),
    content: [
      { text: say(name), fontSize: 16, bold: true },
      {
        text: say(`${guide.what} About ${guide.minutes} minutes, with ${guide.needs}.`),
        margin: [0, 0, 0, 4],
      },
      ...(guide.safety.length > 0 ? [boxed(guide.safety.map(say))] : []),
      {
        columns: [
          { width: '*', stack: [{ text: 'Needed', bold: true }, { ul: guide.tools.map(say) }] },
          { width: inner * 0.52, svg },
        ],
        columnGap: 8,
        margin: [0, 4, 0, 2],
      },
      { text: 'Steps', bold: true },
      { ol: guide.steps.map(say), margin: [0, 0, 0, 4] },
      lines(
        fileForm('test').fields.filter((f) => heads.includes(f.key)),
        words,
      ),
      ...(guide.with === 'nothing'
        ? []
        : [blank(guide.with === 'outing' ? 'what ran, who was aboard' : 'vehicle')]),
      ...readings(readingsForm(guide.kind), words),
    ],
  };
}

const boxed = (safety: readonly string[]): Content => ({
  table: { widths: ['*'], body: [[{ ul: [...safety], bold: true, margin: [0, 1, 0, 2] }]] },
});

/** A word and a line to write on. */
const blank = (label: string): Content => ({
  table: {
    widths: ['auto', '*'],
    heights: 15,
    body: [
      [
        { text: label, border: [false, false, false, false], margin: [0, 4, 0, 0] },
        { text: ' ', border: [false, false, false, true] },
      ],
    ],
  },
});

/** Two beside each other. */
function lines(fields: readonly NamedField[], words: (field: NamedField) => string): Content {
  const half = Math.ceil(fields.length / 2);
  const stack = (of: readonly NamedField[]): Content => ({ stack: of.map((f) => blank(named(f, words))) });
  return { columns: [stack(fields.slice(0, half)), stack(fields.slice(half))], columnGap: 12 };
}

/** With what there is to choose from, where that is short. */
function named(field: NamedField, words: (field: NamedField) => string): string {
  const { is } = field;
  if (is.form !== 'choice' || is.values.length > 6) return words(field);
  return `${words(field)} (${is.values.join(', ').replace(/-/g, ' ')})`;
}

const simple = (is: FieldForm): boolean => ['figure', 'choice', 'text', 'yes'].includes(is.form);
const listed = (is: FieldForm): boolean =>
  is.form === 'list' && !(is.entry.form === 'choice' || is.entry.form === 'text');

/** What no column of a table holds. */
const deep = (is: FieldForm): boolean =>
  is.form === 'group' || (is.form === 'list' && is.entry.form === 'group');

/** Single figures on lines, lists as tables with empty rows, runs one under the other. */
function readings(form: GroupForm, words: (field: NamedField) => string, nested = false): Content[] {
  const own = form.fields.filter((f) => simple(f.is) || (f.is.form === 'list' && !listed(f.is)));
  return [
    ...(own.length > 0 ? [lines(own, words)] : []),
    ...form.fields.flatMap((field): Content[] => {
      const { is } = field;
      if (is.form === 'group') return [{ text: words(field), bold: true }, ...readings(is, words, true)];
      if (is.form !== 'list' || !listed(is)) return [];
      const { entry } = is;
      const title: Content = { text: words(field), bold: true, margin: [0, 5, 0, 1] };
      if (entry.form === 'group' && entry.fields.some((f) => deep(f.is)))
        return Array.from(
          { length: RUNS },
          (_, i): Content => ({
            stack: [
              { text: `${words(field)}: ${i + 1}`, bold: true, margin: [0, 6, 0, 1] },
              ...readings(entry, words, true),
            ],
            unbreakable: true,
          }),
        );
      const columns = entry.form === 'group' ? entry.fields.map((f) => named(f, words)) : [words(field)];
      return [title, table(columns, nested ? MARKS : ROWS)];
    }),
  ];
}

const table = (columns: readonly string[], rows: number): Content => ({
  table: {
    headerRows: 1,
    keepWithHeaderRows: 3,
    dontBreakRows: true,
    widths: [14, ...columns.map(() => '*')],
    heights: (row: number) => (row === 0 ? 9 : ROW_HEIGHT),
    body: [
      ['', ...columns.map((text) => ({ text }))],
      ...Array.from({ length: rows }, (_, i) => [`${i + 1}`, ...columns.map(() => '')]),
    ],
  },
});
