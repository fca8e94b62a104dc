/** The running card as a PDF, set in the fonts that come with the packages. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { cardFace } from '../views/card-paper.ts';

interface PdfMake {
  setFonts(fonts: unknown): void;
  setLocalAccessPolicy?(allow: (path: string) => boolean): void;
  setUrlAccessPolicy?(allow: (url: string) => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBuffer(): Promise<Buffer> };
}

export async function cardPdf(document: TDocumentDefinitions): Promise<Buffer> {
  const require = createRequire(import.meta.url);
  const pdfmake = require('pdfmake') as PdfMake;
  const fonts = join(dirname(require.resolve('dejavu-fonts-ttf/package.json')), 'ttf');
  const face = (file: string): string => join(fonts, `${file}.ttf`);
  pdfmake.setFonts({ [cardFace.name]: { normal: face(cardFace.normal), bold: face(cardFace.bold) } });
  pdfmake.setUrlAccessPolicy?.(() => false);
  pdfmake.setLocalAccessPolicy?.((path) => path.startsWith(fonts));
  return pdfmake.createPdf(document).getBuffer();
}
