/** The running card as a PDF file, made in the browser: the maker and its fonts are loaded when they are asked for. */

import normal from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import bold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import { cardFace } from '../../../views/card-paper.ts';

interface PdfMake {
  addVirtualFileSystem(files: Readonly<Record<string, { readonly data: Uint8Array }>>): void;
  setFonts(fonts: unknown): void;
  setUrlAccessPolicy(allow: (url: string) => boolean): void;
  createPdf(definition: TDocumentDefinitions): { getBlob(): Promise<Blob> };
}

export async function cardPdf(document: TDocumentDefinitions): Promise<Blob> {
  const [made, upright, heavy] = await Promise.all([
    import('pdfmake/build/pdfmake.min.js') as Promise<{ default: PdfMake }>,
    bytes(normal),
    bytes(bold),
  ]);
  const pdfmake = made.default;
  pdfmake.addVirtualFileSystem({ upright: { data: upright }, heavy: { data: heavy } });
  pdfmake.setFonts({ [cardFace.name]: { normal: 'upright', bold: 'heavy' } });
  pdfmake.setUrlAccessPolicy(() => false);
  return pdfmake.createPdf(document).getBlob();
}

async function bytes(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error('the fonts of the card could not be loaded');
  return new Uint8Array(await answer.arrayBuffer());
}
