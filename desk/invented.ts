/** What of an outing is an example that nobody measured: said wherever the outing is shown, on paper too. */

type Json = Readonly<Record<string, unknown>>;

const named = (json: unknown): string[] => {
  const part = json as Json | undefined;
  return part?.['invented'] === true ? [String(part['name'])] : [];
};

/**
 * "an invented example", or "with invented parts: Granite, Air car"; empty where nothing is.
 * @param paper the outing with all its papers inside
 */
export function tellInvented(paper: Json): string {
  const train = paper['train'] as Json | undefined;
  const members = (train?.['vehicles'] as Json[] | undefined) ?? [];
  const parts = [paper['line'], paper['host'], ...members.map((m) => m['vehicle'])].flatMap(named);
  if (parts.length === 0 && named(paper).length === 0) return '';
  return paper['invented'] === true
    ? 'an invented example'
    : `with invented parts: ${[...new Set(parts)].join(', ')}`;
}
