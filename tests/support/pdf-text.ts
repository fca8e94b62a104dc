/**
 * The text of a PDF and how large each piece is set, read from its own streams: enough for the PDFs that are made
 * here (Flate streams, subset fonts with a ToUnicode table). What the font has no letter for is glyph 0.
 */
import { inflateSync } from 'node:zlib';

export interface PdfText {
  readonly pages: number;
  /** Words of all pages, pieces joined as they follow. */
  readonly text: string;
  /** Points, of every piece of text that is shown. */
  readonly sizes: readonly number[];
  /** Of the paper, points. */
  readonly width: number;
  /** How far right the text reaches, points. */
  readonly right: number;
  /** How many empty boxes were set. */
  readonly boxes: number;
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[1] * n[2],
  m[0] * n[1] + m[1] * n[3],
  m[2] * n[0] + m[3] * n[2],
  m[2] * n[1] + m[3] * n[3],
  m[4] * n[0] + m[5] * n[2] + n[4],
  m[4] * n[1] + m[5] * n[3] + n[5],
];

interface Part {
  readonly dict: string;
  readonly stream?: string;
}

function parts(pdf: Buffer): Map<number, Part> {
  const raw = pdf.toString('latin1');
  const found = new Map<number, Part>();
  for (const match of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n/g)) {
    const from = (match.index ?? 0) + match[0].length;
    const end = raw.indexOf('endobj', from);
    const streamAt = raw.indexOf('stream\n', from);
    if (streamAt < 0 || streamAt > end) {
      found.set(Number(match[1]), { dict: raw.slice(from, end) });
      continue;
    }
    const dict = raw.slice(from, streamAt);
    const length = Number(/\/Length (\d+)/.exec(dict)?.[1]);
    const bytes = pdf.subarray(streamAt + 7, streamAt + 7 + length);
    const stream = dict.includes('FlateDecode')
      ? inflateSync(bytes).toString('latin1')
      : bytes.toString('latin1');
    found.set(Number(match[1]), { dict, stream });
  }
  return found;
}

/** Glyph → letters. */
function lettersIn(cmap: string): Map<number, string> {
  const letters = new Map<number, string>();
  const decode = (hex: string): string =>
    String.fromCharCode(...(hex.replace(/\s/g, '').match(/.{4}/g) ?? []).map((h) => Number.parseInt(h, 16)));
  for (const [, from, , list] of cmap.matchAll(/<([0-9a-f]+)>\s*<([0-9a-f]+)>\s*\[([^\]]*)\]/gi)) {
    [...list.matchAll(/<([0-9a-f\s]*)>/gi)].forEach(([, hex], i) => {
      letters.set(Number.parseInt(from, 16) + i, decode(hex));
    });
  }
  return letters;
}

/** Glyph → width, thousandths of the size. */
function widthsIn(dict: string): Map<number, number> {
  const widths = new Map<number, number>();
  for (const [, first, list] of (/\/W \[([\s\S]*)\]/.exec(dict)?.[1] ?? '').matchAll(/(\d+) \[([^\]]*)\]/g))
    list
      .trim()
      .split(/\s+/)
      .forEach((width, i) => {
        widths.set(Number(first) + i, Number(width));
      });
  return widths;
}

export function pdfText(pdf: Buffer): PdfText {
  const all = parts(pdf);
  const refs = (dict: string, key: string): number[] =>
    [
      ...(new RegExp(`/${key} (?:\\[([^\\]]*)\\]|(\\d+ 0 R))`).exec(dict)?.[0] ?? '').matchAll(/(\d+) 0 R/g),
    ].map((m) => Number(m[1]));
  const pages = [...all.values()].filter(({ dict }) => /\/Type \/Page\b/.test(dict));
  let text = '';
  let boxes = 0;
  let right = 0;
  const sizes: number[] = [];
  for (const page of pages) {
    const resources = all.get(refs(page.dict, 'Resources')[0])?.dict ?? page.dict;
    const fonts = new Map<string, { letters: Map<number, string>; widths: Map<number, number> }>();
    for (const [, name, ref] of resources.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const dict = all.get(Number(ref))?.dict ?? '';
      const cmap = all.get(refs(dict, 'ToUnicode')[0])?.stream ?? '';
      const within = all.get(refs(dict, 'DescendantFonts')[0])?.dict ?? '';
      fonts.set(name, { letters: lettersIn(cmap), widths: widthsIn(within) });
    }
    const content = refs(page.dict, 'Contents')
      .map((ref) => all.get(ref)?.stream ?? '')
      .join('\n');
    let at: Matrix = [1, 0, 0, 1, 0, 0];
    const kept: Matrix[] = [];
    let [font, size] = ['', 0];
    let place: Matrix = at;
    const token =
      /(?:(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (cm|Tm))|\/(F\d+) ([\d.]+) Tf|\[([^\]]*)\] TJ|(?:^|\s)([qQ])(?=\s)/g;
    for (const m of content.matchAll(token)) {
      if (m[7]) {
        const given = m.slice(1, 7).map(Number) as unknown as Matrix;
        if (m[7] === 'cm') at = times(given, at);
        else place = times(given, at);
      } else if (m[8]) [font, size] = [m[8], Number(m[9])];
      else if (m[11] === 'q') kept.push(at);
      else if (m[11] === 'Q') at = kept.pop() ?? at;
      else if (m[10] !== undefined) {
        sizes.push(size * Math.hypot(place[2], place[3]));
        let [run, seen] = [0, 0];
        for (const [, hex, shift] of m[10].matchAll(/<([0-9a-f]*)>|(-?[\d.]+)/gi)) {
          // Letters of a pair are drawn together.
          run -= Number(shift ?? 0);
          for (const glyph of hex?.match(/.{4}/g) ?? []) {
            const number = Number.parseInt(glyph, 16);
            if (number === 0) boxes++;
            const letter = fonts.get(font)?.letters.get(number) ?? '';
            text += letter;
            run += fonts.get(font)?.widths.get(number) ?? 0;
            // A space at the end of a line reaches nowhere.
            if (letter.trim() !== '') seen = run;
          }
        }
        if (seen > 0)
          right = Math.max(right, place[4] + (seen / 1000) * size * Math.hypot(place[0], place[1]));
        text += ' ';
      }
    }
  }
  return {
    pages: pages.length,
    text: text.replace(/[\s\u200b]+/g, ' '),
    sizes,
    width: Number(/\/MediaBox \[0 0 ([\d.]+)/.exec(pages[0]?.dict ?? '')?.[1]),
    right,
    boxes,
  };
}
