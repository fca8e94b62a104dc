/** The running card as a PDF file, made in the browser: the maker and its fonts are loaded when they are asked for. */

import normal from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { type Letters, lettersOf } from '../../../desk/font-letters.ts';
import { cardFace } from '../../../views/card-paper.ts';

interface PdfMake {
  addVirtualFileSystem(files: Readonly<Record<string, { readonly data: Uint8Array }>>): void;
  setFonts(fonts: unknown): void;
  setUrlAccessPolicy(allow: (url: string) => boolean): void;
  setProgressCallback(say: ((share: number) => void) | undefined): void;
  createPdf(definition: TDocumentDefinitions): { getBlob(): Promise<Blob> };
}

/** @param lay lays the card out, told which letters the fonts have @param progress hears how much is printed, 0 to 1 */
export async function cardPdf(
  lay: (has: Letters) => TDocumentDefinitions,
  progress?: (share: number) => void,
): Promise<Blob> {
  const [made, upright, heavy] = await Promise.all([
    import('pdfmake/build/pdfmake.min.js') as Promise<{ default: PdfMake }>,
    bytes(normal),
    bytes(bold),
  ]);
  const pdfmake = made.default;
  pdfmake.addVirtualFileSystem({ upright: { data: upright }, heavy: { data: heavy } });
  pdfmake.setFonts({ [cardFace.name]: { normal: 'upright', bold: 'heavy' } });
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setProgressCallback(progress);
  const [light, dark] = [upright, heavy].map(lettersOf);
  return pdfmake.createPdf(lay((c) => light(c) && dark(c))).getBlob();
}

async function bytes(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error('the fonts of the card could not be loaded');
  return new Uint8Array(await answer.arrayBuffer());
}
