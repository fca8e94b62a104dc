/** The section that must be left clear: to scale on paper, as a picture, and for a drawing office. Seen as the train runs. */

import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { besideCurve, type Clear } from '../../desk/clear.ts';
import type { Letters } from '../../desk/font-letters.ts';
import { keepClear, type Template } from '../../desk/keep-clear.ts';
import { printable, printableSvg } from '../../desk/printable.ts';
import { INCH } from '../../engine/base/constants.ts';
import type { Corner } from '../../engine/base/numerics/polygon.ts';
import { tape } from '../../words/calliper.ts';
import { chainage, say, type Voice } from '../../words/voice.ts';
import { cardFace, fontsOf } from '../card-paper.ts';
import { wrapped } from '../strip/letters.ts';
import {
  drawing,
  group,
  lineShape,
  type Point,
  pathShape,
  polyline,
  rectShape,
  type Scene,
  type Shape,
  sceneToSvg,
  textShape,
} from '../strip/scene.ts';
import { type DxfSheet, dxf } from './dxf.ts';

const length = (voice: Voice, si: number, toward: 'up' | 'down'): string =>
  say(voice, { si, kind: 'length' }, toward);

export function templateName({ where, radius, hand }: Template, clear: Clear, voice: Voice): string {
  if (where === 'anywhere') return 'anywhere on the line';
  if (where === 'straight' || radius === undefined) return 'straight track';
  const [from, to] = [clear.at(where.from), clear.at(where.to)].sort((a, b) => a - b);
  return `curve of ${length(voice, radius, 'down')} to the ${hand}, ${chainage(voice, from)} to ${chainage(voice, to)}${beside(clear, voice)}`;
}

/** Ends stand out before a curve already. */
const beside = ({ kept }: Clear, voice: Voice): string =>
  kept ? `, and ${length(voice, besideCurve(kept), 'up')} before and after` : '';

const sizes = (of: readonly Corner[]) => ({
  left: Math.max(...of.map((p) => p.x)),
  right: Math.max(...of.map((p) => -p.x)),
  low: Math.min(0, ...of.map((p) => p.y)),
  high: Math.max(...of.map((p) => p.y)),
});

/** Half over the gauge: where the rails stand, m. */
const railsOf = (gauge: number): readonly (readonly [number, number, number, number])[] => [
  [gauge / 2, 0, gauge / 2, -0.02],
  [-gauge / 2, 0, -gauge / 2, -0.02],
];

/** @param unit px or pt for each metre */
function outlined(t: Template, gauge: number, unit: number, middle: number, base: number): Shape[] {
  const at = ({ x, y }: Corner): Point => [middle - x * unit, base - y * unit];
  const { left, right, high } = sizes(t.outline);
  const [[, top]] = [at({ x: 0, y: high })];
  return [
    pathShape('body', `${polyline(t.outline.map(at))}Z`),
    lineShape('rail', middle - left * unit - 8, base, middle + right * unit + 8, base),
    lineShape('fine', middle, base + 10, middle, top - 8),
    ...railsOf(gauge).map(([x1, y1, x2, y2]) =>
      lineShape('bold', ...at({ x: x1, y: y1 }), ...at({ x: x2, y: y2 })),
    ),
  ];
}

function figuresOf(t: Template, voice: Voice): string[] {
  const { left, right, high } = sizes(t.outline);
  return [
    `left ${tape(left, voice, 'up')} · right ${tape(right, voice, 'up')} of the middle of the track`,
    `up to ${tape(high, voice, 'up')} above the rail`,
  ];
}

/** What would be built too narrow without it. */
const notIn = ({ kept }: Clear): string[] =>
  kept && kept.without.length > 0 ? [`Not in it, for nobody measured them: ${kept.without.join(', ')}.`] : [];

const COLUMN = 250;
const SIZE = 12;

/** All of them side by side, for the screen and a file; undefined: nothing is measured. */
export function templatesPlot(clear: Clear, gauge: number, voice: Voice, wide = 760): Scene | undefined {
  const all = keepClear(clear);
  if (all.length === 0) return undefined;
  const columns = Math.max(1, Math.floor(wide / COLUMN));
  const each = wide / columns;
  const widest = Math.max(...all.map((t) => 2 * Math.max(sizes(t.outline).left, sizes(t.outline).right)));
  const highest = Math.max(...all.map((t) => sizes(t.outline).high - sizes(t.outline).low));
  const unit = Math.min((each - 40) / widest, 190 / highest);
  const row = highest * unit + 86;
  const title = 'What must be left clear, in section';
  const rows = Math.ceil(all.length / columns);
  const missing = notIn(clear).flatMap((text) => wrapped(text, SIZE, wide - 32));
  const head = 36 + missing.length * SIZE * 1.4;
  return drawing(wide, head + rows * row, title, [
    rectShape('paper', 0, 0, wide, head + rows * row),
    textShape('strong', 16, 20, title, 15),
    ...missing.map((text, i) => textShape('small', 16, 40 + i * SIZE * 1.4, text, SIZE)),
    ...all.flatMap((t, i) => {
      const [middle, top] = [each * ((i % columns) + 0.5), head + Math.floor(i / columns) * row];
      const base = top + highest * unit;
      const name =
        t.radius === undefined
          ? t.where === 'anywhere'
            ? 'anywhere'
            : 'straight'
          : `${length(voice, t.radius, 'down')} ${t.hand}`;
      const place = typeof t.where === 'string' ? '' : chainage(voice, clear.at(t.where.from));
      const { left, right, high } = sizes(t.outline);
      return [
        group({}, outlined(t, gauge, unit, middle, base)),
        textShape('small', middle, base + 24, place === '' ? name : `${name}, at ${place}`, SIZE, 'middle'),
        textShape(
          'small',
          middle,
          base + 42,
          `${tape(left, voice, 'up')} | ${tape(right, voice, 'up')}, ${tape(high, voice, 'up')} up`,
          SIZE,
          'middle',
        ),
      ];
    }),
  ]);
}

/** Points of print for a metre. */
const POINTS = 72 / INCH;
const pages = { a4: { width: 595.28, height: 841.89 }, letter: { width: 612, height: 792 } } as const;
export type Page = keyof typeof pages;
const EDGE = 36;
/** For words above and below. */
const WORDS = 150;
const SCALES = [1, 2, 4, 5, 8, 10, 16, 20, 25, 50];

/** The largest of the usual scales that all of them fit a page at. */
export function scaleFor(all: readonly Template[], page: Page): number {
  const { width, height } = pages[page];
  const fits = (scale: number): boolean =>
    all.every((t) => {
      const { left, right, low, high } = sizes(t.outline);
      return (
        (2 * Math.max(left, right) * POINTS) / scale <= width - 2 * EDGE - 20 &&
        ((high - low + 0.02) * POINTS) / scale <= height - 2 * EDGE - WORDS
      );
    });
  return SCALES.find(fits) ?? SCALES[SCALES.length - 1];
}

/** A page for each, to scale, with a bar to check the print by. */
export function templateDocument(
  clear: Clear,
  gauge: number,
  page: Page,
  voice: Voice,
  has: Letters,
): TDocumentDefinitions {
  const all = keepClear(clear);
  const { width, height } = pages[page];
  const scale = scaleFor(all, page);
  const unit = POINTS / scale;
  const print = (text: string): string => printable(text, has);
  const bar = voice.system === 'imperial' ? { long: 4 * INCH, name: '4 in' } : { long: 0.1, name: '100 mm' };
  return {
    pageSize: { width, height },
    pageMargins: [EDGE, EDGE, EDGE, EDGE],
    info: { title: 'What must be left clear', creator: 'Heedway' },
    defaultStyle: { font: cardFace.name, fontSize: 10 },
    content: all.map((t, i): Content => {
      const inner = width - 2 * EDGE;
      const high = (sizes(t.outline).high - sizes(t.outline).low + 0.03) * unit + 12;
      const scene = drawing(inner, high, 'section', outlined(t, gauge, unit, inner / 2, high - 0.03 * unit));
      const check = drawing(inner, 16, 'bar', [
        lineShape('bold', 0, 8, bar.long * POINTS, 8),
        lineShape('bold', 0, 3, 0, 13),
        lineShape('bold', bar.long * POINTS, 3, bar.long * POINTS, 13),
      ]);
      return {
        stack: [
          { text: print(`Must be left clear: ${templateName(t, clear, voice)}`), fontSize: 14, bold: true },
          {
            text: print(
              `Scale 1 : ${scale}. As the train runs; middle of the track, top of the rail. ${figuresOf(t, voice).join('; ')}.`,
            ),
          },
          ...notIn(clear).map((text) => ({ text: print(text), bold: true })),
          {
            text: print(
              'Throw, play of the wheels, lean in cant and sway on springs that were measured are in it, people seated; track out of place and the host’s own margin come on top.',
            ),
            fontSize: 8,
            margin: [0, 2, 0, 8],
          },
          { svg: fontsOf(printableSvg(sceneToSvg(scene), has)), width: inner },
          {
            text: print(`Printed true where this bar measures ${bar.name}:`),
            fontSize: 8,
            margin: [0, 8, 0, 0],
          },
          { svg: fontsOf(printableSvg(sceneToSvg(check), has)), width: inner },
        ],
        ...(i < all.length - 1 ? { pageBreak: 'after' as const } : {}),
      };
    }),
  };
}

/** Side by side, a layer for each, full size in millimetres. */
export function templatesDxf(clear: Clear, gauge: number, voice: Voice): string {
  const all = keepClear(clear);
  const widest = Math.max(0, ...all.map((t) => 2 * Math.max(sizes(t.outline).left, sizes(t.outline).right)));
  return dxf(
    all.map((t, i): DxfSheet => {
      const { left, right, high } = sizes(t.outline);
      return {
        layer: typeof t.where === 'string' ? t.where : `R ${Math.round((t.radius ?? 0) * 1000)} mm ${t.hand}`,
        x: i * (widest + 0.3),
        outline: t.outline,
        lines: [[left, 0, -right, 0], [0, -0.05, 0, high], ...railsOf(gauge)],
        letters: [templateName(t, clear, voice), ...notIn(clear)].map((text, line) => ({
          x: left,
          y: -0.1 - 0.03 * line,
          high: 0.02,
          text,
        })),
      };
    }),
  );
}
