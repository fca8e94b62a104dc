/**
 * What tests compare with outside figures and with independent code, kept for docs/accuracy.md. As the tests of a
 * file end, the lines that they measured must stand in the page; `npm run accuracy` has them written down instead.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect } from 'vitest';
import {
  type Beside,
  besideRow,
  type Figure,
  type Grade,
  type Outside,
  outOfDate,
  outsideRow,
  type Row,
  rowsOf,
} from '../../scripts/pages/accuracy.ts';

const tests = new URL('../', import.meta.url);
const page = new URL('../docs/accuracy.md', tests);

const sources: Outside[] = [];
const besides: Beside[] = [];

const under = (folder: URL, url: string): string =>
  relative(fileURLToPath(folder), fileURLToPath(new URL(url)));

/** First heading of a folder's SOURCE.md. */
const titleOf = (folder: string): string =>
  /^# (.*)/.exec(readFileSync(join(fileURLToPath(tests), 'truth', folder, 'SOURCE.md'), 'utf8'))?.[1] ??
  folder;

export interface Printed {
  /** Ours is the printed figure, within what its print allows (in its unit). */
  figure(what: string, ours: number, printed: number, allowed: number, unit?: string): void;
  /** Ours lies where the source says that it must. */
  bound(what: string, ours: number, low: number, high: number): void;
}

/**
 * The figures of one source.
 * @param url the folder of its SOURCE.md, or a file in it
 */
export function printedIn(
  url: string,
  grade: Grade,
  told: { readonly topic?: string; readonly source?: string } = {},
): Printed {
  const folder = under(new URL('truth/', tests), new URL('.', url).href);
  const figures: Figure[] = [];
  const index = sources.length;
  const keep = (bounds: number): void => {
    sources[index] = {
      topic: told.topic ?? folder.split('/')[0],
      source: told.source ?? titleOf(folder),
      grade,
      folder,
      figures,
      bounds,
    };
  };
  keep(0);
  return {
    figure(what, ours, printed, allowed, unit = '') {
      const error = Math.abs(ours - printed);
      const used = allowed > 0 ? error / allowed : error === 0 ? 0 : Number.POSITIVE_INFINITY;
      figures.push({ what, printed, unit, error, used });
      expect(used, `${what}: ${ours}, printed ${printed} ${unit}`).toBeLessThanOrEqual(1);
    },
    bound(what, ours, low, high) {
      keep(sources[index].bounds + 1);
      expect(ours, what).toBeGreaterThanOrEqual(low);
      expect(ours, what).toBeLessThanOrEqual(high);
    },
  };
}

/**
 * Cases compared with independent code.
 * @param url the test file's own
 * @param errors one for each case, as a share or in the unit; looked at as the file's tests end
 */
export function beside(
  url: string,
  what: string,
  against: string,
  errors: readonly number[],
  unit = '',
): void {
  const test = under(tests, url).replace(/\.test\.ts$/, '');
  besides.push({ what, against, errors, unit, test });
}

type Tasks = Parameters<Parameters<typeof afterAll>[0]>[1]['tasks'];

/** Every test ran and passed: of some alone a file knows less than the page. */
const allPassed = (tasks: Tasks): boolean =>
  tasks.every((t) =>
    t.type === 'suite' ? t.mode !== 'skip' && allPassed(t.tasks) : t.result?.state === 'pass',
  );

/** Written down for the page, or asked for in it. */
function told(testFile: string): void {
  const rows: Row[] = [...sources.map(outsideRow), ...besides.map(besideRow)];
  const folder = process.env['MEASURED'];
  if (folder) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${testFile.replaceAll(/[/\\]/g, '-')}.json`), JSON.stringify(rows));
    return;
  }
  const kept = rowsOf(readFileSync(page, 'utf8'));
  const wrong = rows.flatMap((row) => outOfDate(row, kept) ?? []);
  expect(wrong, `docs/accuracy.md is out of date: npm run accuracy -- ${testFile}`).toEqual([]);
}

// Elsewhere than under the runner of the tests nothing is compared.
if (process.env['VITEST'])
  // biome-ignore lint/correctness/noEmptyPattern: the runner asks for this form.
  afterAll(({}, { file }) => {
    if (allPassed(file.tasks)) told(relative(process.cwd(), file.filepath));
  });
