/** The running card and other papers as PDF, set in the fonts that come with the packages. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { type Letters, lettersOf } from '../desk/font-letters.ts';
import { cardFace } from '../views/card-paper.ts';

interface PdfMake {
  setFonts(fonts: unknown): void;
  setProgressCallback(say: ((share: number) => void) | undefined): void;
  setLocalAccessPolicy?(allow: (path: string) => boolean): void;
  setUrlAccessPolicy?(allow: (url: string) => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Buffer> };
}

/** @param lay lays the paper out, told which letters the fonts have @param progress hears how much is printed, 0 to 1 */
export async function cardPdf(
  lay: (has: Letters) => TDocumentDefinitions,
  progress?: (share: number) => void,
): Promise<Buffer> {
  const require = createRequire(import.meta.url);
  const pdfmake = require('pdfmake') as PdfMake;
  const fonts = join(dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf');
  const face = (file: string): string => join(fonts, `${file}.ttf`);
  pdfmake.setFonts({ [cardFace.name]: { normal: face(cardFace.normal), bold: face(cardFace.bold) } });
  pdfmake.setUrlAccessPolicy?.(() => false);
  pdfmake.setLocalAccessPolicy?.((path) => path.startsWith(fonts));
  pdfmake.setProgressCallback(progress);
  const [upright, bold] = [cardFace.normal, cardFace.bold].map((file) => lettersOf(readFileSync(face(file))));
  return pdfmake.createPdf(lay((c) => upright(c) && bold(c))).getBuffer();
}
