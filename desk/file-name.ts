/** Names of files that are handed out: by outing and day, so that no card of yesterday is taken for today's. */

/** `Gala`, `2026-05-02`, `card.pdf` → `gala-2026-05-02-card.pdf` */
export function fileName(name: string, date: string | undefined, what: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  // Some disks hold no more than 255 bytes of a name, and a letter takes up to four.
  const short = Array.from(plain).slice(0, 40).join('');
  const joint = what.startsWith('.') ? '' : '-';
  return `${[short || 'outing', ...(date ? [date] : [])].join('-')}${joint}${what}`;
}
