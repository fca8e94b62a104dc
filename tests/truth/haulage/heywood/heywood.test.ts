/** Heywood's load table answered by the main job, on ordinary input files. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openOutingFile } from '../../../../cli/open.ts';
import { answerOnly } from '../../../../engine/answer/answer.ts';
import { heedway } from '../../../support/cli.ts';
import { printedIn } from '../../../support/measured.ts';

const here = (name: string): string => new URL(name, import.meta.url).pathname;
const json = (name: string) => JSON.parse(readFileSync(here(name), 'utf8'));
const table = json('table.json') as { grades: string[]; ella: number[]; muriel: number[] };

const book = printedIn(import.meta.url, 'A');

type Engine = 'ella' | 'muriel';

/** The files of a load of wagons on a grade: where the outing is. */
function files(engine: Engine, grade: string, tons: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'heywood-'));
  const put = (name: string, content: unknown): void =>
    writeFileSync(join(folder, name), JSON.stringify(content));
  const outing = json('outing.json');
  outing.train.vehicles[0].vehicle.file = `${engine}.json`;
  put('outing.json', outing);
  put(`${engine}.json`, json(`${engine}.json`));
  put('host.json', json('host.json'));
  const line = json('line.json');
  line.profile[1].grade = grade;
  put('line.json', line);
  const wagons = json('wagons.json');
  wagons.tare.value = tons;
  put('wagons.json', wagons);
  return join(folder, 'outing.json');
}

/** Pull and need at the start. */
async function start(...load: Parameters<typeof files>): Promise<{ pull: number; need: number }> {
  const { haul } = answerOnly(await openOutingFile(files(...load)));
  return { pull: haul?.startPull ?? Number.NaN, need: haul?.startNeed ?? Number.NaN };
}

it('the command line tells pull and need as they are reckoned', async () => {
  const { haul } = JSON.parse(
    heedway('check', files('ella', '1 in 25', 8.3), '--json', '--no-remedies').stdout,
  );
  const reckoned = await start('ella', '1 in 25', 8.3);
  expect(haul.startPull).toBeCloseTo(reckoned.pull, 6);
  expect(haul.startNeed).toBeCloseTo(reckoned.need, 6);
});

describe.each(['ella', 'muriel'] as const)('%s', (engine) => {
  it.each(table.grades.map((grade, i) => ({ grade, tons: table[engine][i] })))(
    '$tons long tons on $grade',
    async ({ grade, tons }) => {
      // On the level what a levelled line may be off by, 0.07 % in one start of twenty, is itself 4 % of the resistance.
      const share = grade === '1 in 12' ? 0.12 : grade === 'level' ? 0.05 : 0.04;
      const less = await start(engine, grade, tons * (1 - share));
      const more = await start(engine, grade, tons * (1 + share));
      const what = `${engine}, ${tons} long tons on ${grade}`;
      book.bound(`${what}: less starts`, less.pull - less.need, 0, Infinity);
      book.bound(`${what}: more does not`, more.pull - more.need, -Infinity, 0);
    },
  );
});
