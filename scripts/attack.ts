// npm run attack: changed inputs by the thousand, and docs/reliability.md of what came of them.
//   npm run attack                          5,000, as on every push
//   npm run attack -- --full                1,000,000; or --count N, --minutes N (whichever is first), --seed N
//   npm run attack -- --again "CSV" 1234    one input again, by the number that it was told with
// Its heap is bounded in package.json: what is handed in is read within 300 MB in all, or the run ends.
import { readFileSync, writeFileSync } from 'node:fs';
import { again, attack } from '../tests/attack/attack.ts';
import { following, reliabilityPage } from '../tests/attack/page.ts';

const args = process.argv.slice(2);
const after = (name: string): string | undefined =>
  args.includes(name) ? args[args.indexOf(name) + 1] : undefined;

if (args.includes('--again')) {
  console.log(await again(String(after('--again')), Number(args[args.indexOf('--again') + 2])));
} else {
  const count = Number(after('--count') ?? (args.includes('--full') ? 1_000_000 : 5000));
  const began = Date.now();
  const most = Number(after('--minutes') ?? Infinity);
  const attacked = await attack(count, Number(after('--seed') ?? 1), (done) => {
    const minutes = (Date.now() - began) / 60_000;
    console.log(`${done} of ${count}, ${minutes.toFixed(1)} min`);
    return minutes < most;
  });
  const page = new URL('../docs/reliability.md', import.meta.url);
  writeFileSync(page, following(readFileSync(page, 'utf8'), reliabilityPage(attacked)));
  const bad = attacked.tallies.flatMap((t) =>
    [...t.crashes, ...t.slow, ...t.notFinite, ...t.unsafe].map((f) => `${t.name}, ${f}`),
  );
  console.log(
    bad.slice(0, 50).join('\n') ||
      `${attacked.count} inputs: nothing was found. Written into docs/reliability.md.`,
  );
  process.exitCode = bad.length > 0 ? 1 : 0;
}
