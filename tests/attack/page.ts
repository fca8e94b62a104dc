/** The page of what the attack found, written by the run itself. */
import { stripVTControlCharacters } from 'node:util';
import { versions } from '../../cli/versions.ts';
import type { Attacked } from './attack.ts';
import { ANSWERED } from './targets.ts';

const [LAST, BEFORE] = ['Last run: ', '- '];

/** What runs of before told of themselves: inputs, seed, versions, and how much they found. @param page of the last */
function runsBefore(page: string): readonly string[] {
  const lines = page.split('\n');
  const last = lines.find((line) => line.startsWith(LAST));
  const heading = lines.indexOf(RUNS_BEFORE);
  const earlier = heading < 0 ? [] : lines.slice(heading).filter((line) => line.startsWith(BEFORE));
  const found = lines.filter((line) => /^- .+, input \d+: /.test(line)).length;
  return last === undefined
    ? earlier
    : [`${BEFORE}${last.slice(LAST.length).replace(/;$/, '')}: found ${found}`, ...earlier];
}

const RUNS_BEFORE = 'Runs before, each of the code and the kinds of its day:';

/** The page of a run, with what the page that it takes the place of says of the runs before, and of sittings. */
export function following(before: string, page: string): string {
  const [attacks, sat] = parts(before);
  const runs = runsBefore(attacks);
  const all =
    runs.length === 0 ? page : `${page}\n${RUNS_BEFORE}\n\n${runs.slice(0, MOST_RUNS).join('\n')}\n`;
  return sat === '' ? all : `${all}\n${sat}`;
}

const SITTINGS = '## Sittings in the browser';

/** What the page tells of attacks, and what of sittings. */
function parts(page: string): readonly [string, string] {
  const at = page.indexOf(SITTINGS);
  return at < 0 ? [page, ''] : [`${page.slice(0, at).trimEnd()}\n`, page.slice(at)];
}

/** Sittings that were held: every so many seeds from the first. */
export interface Sat {
  readonly from: number;
  readonly step: number;
  readonly looked: {
    readonly sittings: number;
    readonly steps: number;
    readonly words: number;
    readonly edits: number;
    readonly again: number;
  };
  readonly faults: readonly string[];
}

/** The page with these sittings beside those that it tells of. */
export function withSittings(page: string, { from, step, looked, faults }: Sat): string {
  const [attacks, sat] = parts(page);
  const { sittings, steps, words, edits, again } = looked;
  const last = from + (sittings + faults.length - 1) * step;
  const seeds = `${from} to ${last}${step === 1 ? '' : `, every ${ordinal[step] ?? `${step}th`}`}`;
  const now = row([
    seeds,
    sittings + faults.length,
    steps,
    words,
    edits,
    again,
    faults.length,
    versions.program,
  ]);
  const rows = [...sat.split('\n').filter((line) => /^\| \d/.test(line)), now];
  const found = [
    ...sat.split('\n').filter((line) => line.startsWith('- sitting ')),
    ...faults.map((fault) => `- ${stripVTControlCharacters(fault).split('\n')[0]}`),
  ];
  const count = rows.reduce((sum, line) => sum + Number(line.split(' | ')[1]), 0);
  return `${attacks}
${SITTINGS}

Written by \`SITTINGS=1000 npx playwright test interleaved --project desk\` itself. From a seed a person at the workbench opens, edits, tries, prints, loads again, kills page and
worker, and sits down at a second tab, in any order. Every word on paper and screen is held against the command line's for the same file, and every edit has to be there in the end.
One that a busy machine kept waiting too long is held once more in a browser of its own: what does not come then hangs, and is found.
${count} sittings were held in all; each row is of the code of its day.

${[
  row(['seeds', 'sittings', 'steps', 'words compared', 'edits looked for', 'held again', 'found', 'Heedway']),
  row(['---', ...Array.from({ length: 7 }, () => '---:')]),
  ...rows,
].join('\n')}

${found.length === 0 ? 'Nothing was found.' : ['Found:', '', ...found].join('\n')}
`;
}

const ordinal: Readonly<Record<number, string>> = { 2: 'second', 3: 'third' };

const MOST_RUNS = 10;

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

export function reliabilityPage({ seed, count, tallies, seconds, memory }: Attacked): string {
  const { program, schema, data } = versions;
  const rows = tallies.map((t) =>
    row([
      t.name,
      t.tried,
      t.accepted + t.answered,
      t.answered,
      t.refused,
      t.crashes.length,
      t.slow.length,
      t.notFinite.length,
      t.unsafe.length,
      t.longest.toFixed(2),
    ]),
  );
  const faults = tallies.flatMap((t) =>
    [...t.crashes, ...t.slow, ...t.notFinite, ...t.unsafe].slice(0, 20).map((f) => `- ${t.name}, input ${f}`),
  );
  return `# Reliability

Written by \`npm run attack\` itself. Inputs are changed by chance from a seed: files, their parts, codes, surveys, what a browser has
kept, what is typed about a new train or into a sum, a club's records (their file, the bytes of their store, and what another program might sign), requests to the page
server. Each is read; one in ${ANSWERED} of the outings that are accepted is answered (on a coarse grid) and told in every room (crew, board, sidings, fit, clearance); outings with a
fault planted in them are answered all, and records are read by every page and command that shows some. None may crash (a refusal has words), take over 2 s of processor (twice over: the first of its kind pays for code that is not yet compiled), give a
figure that is none, or a *go* beside a finding that is worse, after a question failed, or for a planted fault; no record that was altered may count.

Last run: ${count} inputs, seed ${seed}; Heedway ${program}, files of version ${schema}, assumed values ${data}, Node ${process.version};
${(seconds / 60).toFixed(1)} minutes of processor, at most ${memory.toFixed(0)} MB. On every push 5,000 are tried, in full 1,000,000.

${[
  row([
    'kind',
    'tried',
    'accepted',
    'answered',
    'refused',
    'crashed',
    'over 2 s',
    'not finite',
    'unsafe word',
    'longest, s',
  ]),
  row(['---', ...Array.from({ length: 9 }, () => '---:')]),
  ...rows,
].join('\n')}

${faults.length === 0 ? 'Nothing was found.' : ['Found:', '', ...faults].join('\n')}

An input is had again by its number: \`npm run attack -- --again "kind" number\`.
`;
}
