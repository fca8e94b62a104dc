/** One terminal screen: lines broken at words, as many as fit. */

export const WIDTH = 80;
export const HEIGHT = 24;

/** Broken at words; what follows the first line is indented. */
export function wrap(text: string, indent = '', width = WIDTH): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const next = line === '' ? word : `${line} ${word}`;
    if (line !== '' && next.length > width) {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = next;
  }
  return [...lines, line];
}

/** At most so many lines, the last cut short with a mark if there were more: after a clause, so that no figure loses its end. */
export function clipped(lines: readonly string[], most: number, width = WIDTH): string[] {
  if (lines.length <= most) return [...lines];
  const fits = lines[most - 1].slice(0, width - 2).trimEnd();
  const last = /^(\s*\S.*)[,;:](?=\s)/.exec(fits)?.[1] ?? fits.replace(/\s+\S*\d\S*$/, '');
  return [...lines.slice(0, most - 1), `${last} …`];
}
