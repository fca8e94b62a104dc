/** Scores of mutation by room, and the survivors with what is said for them. */
import { readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import type { Mutant } from './mutants.ts';

export interface Fate {
  readonly mutant: Mutant;
  readonly fate: 'killed' | 'hangs' | 'lives';
  /** The test that failed, or what was tried. */
  readonly why: string;
}

/** Why a survivor may live: named by its file's name, source line and change, which moves leave as they are. */
interface Argued {
  readonly file: string;
  readonly text: string;
  readonly to: string;
  readonly because: string;
}

const argued = JSON.parse(
  readFileSync(new URL('survivors.json', import.meta.url), 'utf8'),
) as readonly Argued[];

const reason = ({ file, text, to }: Mutant): string | undefined =>
  argued.find((a) => a.file === basename(file) && a.text === text && a.to === to)?.because;

const percent = (n: number, of: number): string => `${Math.floor((100 * n) / Math.max(1, of))} %`;

/** 95 % interval of a share, after Wilson. */
function wilson(n: number, of: number): string {
  const z = 1.96;
  const middle = (n + (z * z) / 2) / (of + z * z);
  const half = (z / (of + z * z)) * Math.sqrt((n * (of - n)) / Math.max(1, of) + (z * z) / 4);
  return `${Math.floor(100 * (middle - half))} to ${Math.ceil(100 * (middle + half))} %`;
}

interface Score {
  readonly room: string;
  readonly all: number;
  readonly dead: number;
  readonly argued: number;
  /** Of the dead, those that the golden of answers alone noticed. */
  readonly golden: number;
}

function scores(fates: readonly Fate[]): Score[] {
  const rooms = group(fates);
  return [...rooms].map(([room, list]) => ({
    room,
    all: list.length,
    dead: list.filter((f) => f.fate !== 'lives').length,
    golden: list.filter((f) => f.fate !== 'lives' && f.why.startsWith('golden ')).length,
    argued: list.filter((f) => f.fate === 'lives' && reason(f.mutant) !== undefined).length,
  }));
}

function group(fates: readonly Fate[]): Map<string, Fate[]> {
  const rooms = new Map<string, Fate[]>();
  for (const fate of fates) {
    const named = fate.mutant.whole ? ['the whole engine'] : [dirname(fate.mutant.file), 'all'];
    for (const room of named) rooms.set(room, [...(rooms.get(room) ?? []), fate]);
  }
  return rooms;
}

export const summary = (fates: readonly Fate[]): string =>
  [
    ...scores(fates).map(
      ({ room, all, dead, golden, argued: said }) =>
        `${room}: ${percent(dead, all)}, ${wilson(dead, all)} (${dead} of ${all} noticed, ${golden} by the golden alone; ${said} of the others argued)`,
    ),
    '',
    ...fates.filter((f) => f.fate === 'lives' && reason(f.mutant) === undefined).map(line),
  ].join('\n');

const line = ({ mutant: { file, line: at, what, from, to }, why }: Fate): string =>
  `${file}:${at} ${what}: ${short(from)} → ${short(to)} (${why})`;

const short = (text: string): string => text.replaceAll(/\s+/g, ' ').slice(0, 60);

/** The page in docs/decisions: scores, and every survivor with its reason or without. */
export function page(fates: readonly Fate[], named: readonly string[]): string {
  const living = fates.filter((f) => f.fate === 'lives');
  return [
    '# What the tests do not hold',
    '',
    `Made by \`npm run mutate -- ${named.join(' ')}\`. Small wrong changes were made one at a time; each should fail some test.`,
    '',
    '| room | changes | noticed | share |',
    '|---|---|---|---|',
    ...scores(fates).map((s) => `| ${s.room} | ${s.all} | ${s.dead} | ${percent(s.dead, s.all)} |`),
    '',
    '## Not noticed',
    '',
    '| where | change | why it may live |',
    '|---|---|---|',
    ...living.map(({ mutant }) => {
      const cell = (text: string): string => `\`${short(text).replaceAll('|', '\\|')}\``;
      return `| ${mutant.file}: ${cell(mutant.text)} | ${mutant.what}: ${cell(mutant.from)} → ${cell(mutant.to)} | ${reason(mutant) ?? 'not argued yet'} |`;
    }),
    '',
  ].join('\n');
}
