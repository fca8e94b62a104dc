/** The running card as a PDF, set in the fonts that come with the packages. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { type Letters, lettersOf } from '../desk/font-letters.ts';
import { cardFace } from '../views/card-paper.ts';

interface PdfMake {
  setFonts(fonts: unknown): void;
  setLocalAccessPolicy?(allow: (path: string) => boolean): void;
  setUrlAccessPolicy?(allow: (url: string) => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Buffer> };
}

/** @param lay lays the card out, told which letters the fonts have */
export async function cardPdf(lay: (has: Letters) => TDocumentDefinitions): Promise<Buffer> {
  const require = createRequire(import.meta.url);
  const pdfmake = require('pdfmake') as PdfMake;
  const fonts = join(dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf');
  const face = (file: string): string => join(fonts, `${file}.ttf`);
  pdfmake.setFonts({ [cardFace.name]: { normal: face(cardFace.normal), bold: face(cardFace.bold) } });
  pdfmake.setUrlAccessPolicy?.(() => false);
  pdfmake.setLocalAccessPolicy?.((path) => path.startsWith(fonts));
  const [upright, bold] = [cardFace.normal, cardFace.bold].map((file) => lettersOf(readFileSync(face(file))));
  return pdfmake.createPdf(lay((c) => upright(c) && bold(c))).getBuffer();
}
