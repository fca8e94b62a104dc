/** The riders' board laid out for paper, A4 or letter: large type, to be read by somebody who stands before it. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Board } from '../desk/board.ts';
import type { Letters } from '../desk/font-letters.ts';
import { printable } from '../desk/printable.ts';
import { cardFace } from './card-paper.ts';

export type BoardPaper = 'a4' | 'letter';

export const boardPaperNames: Readonly<Record<BoardPaper, string>> = { a4: 'A4', letter: 'letter' };

const pageSizes = { a4: 'A4', letter: 'LETTER' } as const;

/** Points: what fits one side is set as large as it goes, and no smaller than can be read from two steps away. */
const [LARGEST, SMALLEST] = [24, 14];

/** Letters that one side holds at 24 points; half the size holds four times as many. */
const AT_LARGEST = 640;

/** Letters of a line of the title; each further one takes the room of so many of the board's. */
const [TITLE_LINE, TITLE_TAKES] = [36, 60];

export function sizeOf({
  lines,
  sky,
  title = '',
}: Pick<Board, 'lines' | 'sky'> & { title?: string }): number {
  const further = Math.max(0, Math.ceil(title.length / TITLE_LINE) - 1) * TITLE_TAKES;
  const letters = [...lines, ...sky].reduce((sum, line) => sum + line.length + 12, further);
  const fits = LARGEST * Math.sqrt(AT_LARGEST / Math.max(letters, 1));
  return Math.max(SMALLEST, Math.min(LARGEST, Math.floor(fits)));
}

/** @param aloud with the text to read on a side of its own @param has what letters the face has */
export function boardDocument(board: Board, paper: BoardPaper, has: Letters): TDocumentDefinitions {
  const say = (text: string): string => printable(text, has);
  const size = sizeOf(board);
  const line = (text: string): Content => ({ text: say(text), margin: [0, 0, 0, size * 0.4] });
  return {
    pageSize: pageSizes[paper],
    pageMargins: [40, 36, 40, 36],
    info: { title: say(`Riders' board: ${board.title}`), creator: 'Heedway' },
    defaultStyle: { font: cardFace.name, fontSize: size, lineHeight: 1.1 },
    // At the foot of the board, wherever its last line ends.
    footer: (page: number): Content =>
      page === 1 ? { text: say(footOf(board)), fontSize: 8, margin: [40, 6, 40, 0] } : '',
    content: [
      { text: say(board.title), bold: true, fontSize: 26, margin: [0, 0, 0, 4] },
      { text: 'Before you ride', bold: true, fontSize: 20, margin: [0, 0, 0, 10] },
      ...board.lines.map(line),
      ...board.sky.map((text): Content => ({ ...(line(text) as object), bold: true }) as Content),
      {
        text: 'Read aloud before leaving',
        bold: true,
        fontSize: 20,
        pageBreak: 'before',
        margin: [0, 0, 0, 14],
      },
      { text: say(board.aloud.text), fontSize: 22, lineHeight: 1.35 },
    ],
  };
}

export const footOf = ({ source, example }: Board): string =>
  example ? `${source}. The host’s own words win.` : `${source}.`;
