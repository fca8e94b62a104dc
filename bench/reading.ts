/** Whatever is handed in, however large: read or refused in the time that is promised. */
import { large } from '../tests/support/large-inputs.ts';
import type { BenchRow } from './row.ts';

const seconds = (s: number): string => `${s.toFixed(2)} s`;

export async function run(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const { name, make, read, words, most } of large) {
    const content = make(1);
    let [ours, told] = [Infinity, ''];
    for (let i = 0; i < 3; i++) {
      const before = process.cpuUsage();
      told = await read(content);
      const { user, system } = process.cpuUsage(before);
      ours = Math.min(ours, (user + system) / 1e6);
    }
    const right = words ? words.test(told) : told === '';
    rows.push({
      work: `read or refused: ${name}, ${(content.length / 1e6).toFixed(1)} MB`,
      ours: seconds(ours),
      against: 'the time that is promised',
      theirs: seconds(most),
      ratio: most / ours,
      ourError: right ? 'none' : 'NOT AS PROMISED',
      theirError: 'none',
    });
  }
  return rows;
}
