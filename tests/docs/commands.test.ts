/** Every command shown in the documentation runs. */
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { heedwayOnce } from '../support/cli.ts';
import { full } from '../support/tier.ts';

const root = new URL('../../', import.meta.url).pathname;
const pages = [
  'README.md',
  ...readdirSync(`${root}docs`)
    .filter((f) => f.endsWith('.md'))
    .map((f) => `docs/${f}`),
];
const folder = mkdtempSync(join(tmpdir(), 'docs-'));

const all = pages.flatMap((page) => {
  const text = readFileSync(root + page, 'utf8');
  const blocks = [...text.matchAll(/```sh\n([\s\S]*?)```/g)].flatMap(([, block]) => block.split('\n'));
  const inline = [
    ...text.matchAll(
      /`(heedway (?:check|stop|cars|speeds|card|brakes|survey|sum|bundle|measure) [^`]*[a-z=][^`]*)`/g,
    ),
  ].map(([, line]) => line);
  return [...blocks, ...inline]
    .filter((line) => line.startsWith('heedway ') && !/[<…]/.test(line))
    .map((line) => ({ page, line: line.replace(/ +# .*/, '') }));
});

/** Each once, by the page that shows it first. */
const shown = [...new Map(all.toReversed().map((one) => [one.line, one])).values()].reverse();

/** On a push those that show a command, one of its flags or a store of records for the first time; in full all. */
const met = new Set<string>();
const commands = shown.filter(({ line }) => {
  const [command, ...rest] = line.replace('heedway ', '').split(' ');
  const shows = [
    command,
    // What a page records it begins, each store by itself.
    ...rest.flatMap((flag, i) =>
      flag === '--records'
        ? [`${command} ${rest[i + 1]}`]
        : flag.startsWith('--')
          ? [`${command} ${flag}`]
          : [],
    ),
  ];
  const fresh = shows.filter((one) => !met.has(one));
  for (const one of fresh) met.add(one);
  return full || fresh.length > 0;
});

/** The ladder of the busy afternoon takes as long as forty other commands: on a push it is that of a shorter train, in full as shown. */
const lighter = (line: string): string =>
  full ? line : line.replace(/^(heedway ladder examples\/)busy-afternoon\b/, '$1brake-not-measured');

/** Words of a shell line; output files go to a folder of their own, and are read from there. */
const words = (line: string): string[] => {
  const list = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare).slice(1);
  // What `new` makes goes there too.
  if (list[0] === 'new') list[1] = join(folder, list[1]);
  return list.map((word, i) => {
    const made = join(folder, word);
    return /^--(pdf|svg|plan|out|records|template|places|stood|worksheets|wheels)$/.test(list[i - 1] ?? '') ||
      (/\.\w+$/.test(word) && existsSync(made))
      ? made
      : word;
  });
};

describe('commands in the documentation', () => {
  it('are found', () => expect(commands.length).toBeGreaterThan(15));

  it.each(commands)('$page: $line', ({ line }) => {
    const { status, stderr } = heedwayOnce(...words(lighter(line)));
    expect(stderr).toBe('');
    expect([0, 10, 20, 30]).toContain(status);
  });
});

describe('links in the documentation', () => {
  it.each(pages)('%s leads nowhere that is not there', (page) => {
    const text = readFileSync(root + page, 'utf8');
    const base = page.includes('/') ? `${root}docs/` : root;
    for (const [, target] of text.matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)) {
      expect(
        () => readFileSync(base + target) || readdirSync(base + target),
        `${page} → ${target}`,
      ).not.toThrow(/ENOENT/);
    }
  });
});
