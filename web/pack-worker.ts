/** Lays out an evidence pack and prints it beside the page, which stays alive meanwhile and hears how far it is. */
import type { Pack } from '../desk/evidence/pack.ts';
import { type PackPaper, packDocument } from '../views/evidence/document.ts';
import { cardPdf } from './rooms/card/card-pdf.ts';

export interface PackAsk {
  readonly pack: Pack;
  readonly paper: PackPaper;
}

export type PackReply = { readonly share: number } | { readonly pdf: Blob } | { readonly fault: string };

const reply = (message: PackReply): void => postMessage(message);

addEventListener('message', ({ data: { pack, paper } }: MessageEvent<PackAsk>) => {
  void cardPdf(
    (has) => packDocument(pack, paper, has),
    (share) => reply({ share }),
  ).then(
    (pdf) => reply({ pdf }),
    (fault) => reply({ fault: fault instanceof Error ? fault.message : String(fault) }),
  );
});
