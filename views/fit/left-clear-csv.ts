/** What must be left clear, place by place, as a sheet to peg it out by: by the line's own distances, lengths rounded up. */
import type { Clear } from '../../desk/clear.ts';
import { FOOT, INCH } from '../../engine/base/constants.ts';
import type { Voice } from '../../words/voice.ts';

/** A text of RFC 4180: what it holds is one cell whatever stands in it. */
const cell = (text: string): string => `"${text.replace(/"/g, '""')}"`;

/** @returns undefined where nothing of the train was measured */
export function leftClearCsv({ kept, at: lineAt }: Clear, { system }: Voice): string | undefined {
  if (!kept) return undefined;
  const imperial = system === 'imperial';
  const up = (m: number): string =>
    imperial ? `${Math.ceil((m / INCH) * 16 - 1e-6) / 16}` : `${Math.ceil(m * 1000 - 1e-6)}`;
  const widest = (i: number, side: 'left' | 'right'): string =>
    cell(kept.bodies.reduce((a, b) => (b[side][i] > a[side][i] ? b : a)).name);
  const unit = imperial ? 'in' : 'mm';
  const rows = kept.at.map((s, i) => [
    `${Math.round((lineAt(s) / (imperial ? FOOT : 1)) * 100) / 100}`,
    up(kept.left[i]),
    widest(i, 'left'),
    up(kept.right[i]),
    widest(i, 'right'),
  ]);
  const missing =
    kept.without.length > 0 ? [[cell(`not in it, not measured: ${kept.without.join(', ')}`)]] : [];
  const head = [`at, ${imperial ? 'ft' : 'm'}`, `left, ${unit}`, 'of', `right, ${unit}`, 'of'].map(cell);
  return `${[head, ...rows, ...missing].map((row) => row.join(',')).join('\r\n')}\r\n`;
}
