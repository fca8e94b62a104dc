/** Outings that something else carries: a code, a link with one, the PDF of a running card. */
import { looksLikeCode, outingIn } from './outing-code.ts';

/** A text longer than this is no code: it need not be decoded to see that. */
const MOST_BYTES = 20_000;
/** Cards in one PDF, at the most. */
const MOST_CARDS = 40;

const NO_OUTING =
  'This PDF carries no outing: it is no running card, or one that was printed by a browser. Photograph its code, or open its file.';

type Carried = readonly Uint8Array[] | { readonly fault: string } | undefined;

/** The files of the outings in it; undefined where it is neither code, link nor PDF. */
export async function carried(content: Uint8Array): Promise<Carried> {
  const head = latin(content.subarray(0, 1024));
  if (head.includes('%PDF-')) return inPdf(latin(content));
  if (content.length > MOST_BYTES) return undefined;
  const text = latin(content);
  if (!looksLikeCode(text)) return undefined;
  return all([text]);
}

/** The card writes its outings into the PDF's keywords, as links. */
function inPdf(text: string): Promise<Carried> | Carried {
  const links = [...new Set(text.match(/#code=[\w-]{8,20000}/g) ?? [])];
  return links.length === 0 ? { fault: NO_OUTING } : all(links.slice(0, MOST_CARDS));
}

async function all(codes: readonly string[]): Promise<Carried> {
  const files: Uint8Array[] = [];
  for (const code of codes) {
    const found = await outingIn(code);
    if ('fault' in found) return found;
    files.push(found);
  }
  return files;
}

const latin = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes);
