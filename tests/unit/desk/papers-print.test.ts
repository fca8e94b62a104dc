/** Names in any script on every paper that is printed: only letters that the face has, and a word for the rest. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, it } from 'vitest';
import { exampleBriefing } from '../../../data/briefing.ts';
import { ridersBoard } from '../../../desk/board.ts';
import { lookAtClear } from '../../../desk/clear.ts';
import { evidencePack } from '../../../desk/evidence/pack.ts';
import { lettersOf } from '../../../desk/font-letters.ts';
import { readOuting } from '../../../papers/index.ts';
import { look } from '../../../records/ledger.ts';
import { personNamed } from '../../../records/names.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { boardDocument } from '../../../views/board-paper.ts';
import { packDocument } from '../../../views/evidence/document.ts';
import { templateDocument } from '../../../views/fit/template.ts';
import { worksheetDocument } from '../../../views/fit/worksheet.ts';
import { author, clockFrom, noted, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';

const face = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf');
const has = lettersOf(readFileSync(face));
/** None of them in the face; and letters that a printer might obey. */
const script = '汉字 हिन्दी 🚂';
const strange = `${script} \u202e\u001b[2J`;

const content = JSON.stringify(await examplePaper('visit-fits'));
const read = await readOuting({ path: 'x', content }, async () => undefined);
if (!read.ok) throw new Error('visit-fits');
const usual = read.value;
const outing = {
  ...usual,
  line: { ...usual.line, name: strange },
  host: { ...usual.host, name: strange },
  train: { ...usual.train, vehicles: usual.train.vehicles.map((v) => ({ ...v, name: strange })) },
};
const voice = { outing, system: 'imperial', wording: 'us' } as const;

/** All that is printed; what is drawn is words between marks. */
function printed(part: unknown, key = ''): string[] {
  if (typeof part === 'string') return key === 'svg' ? [part.replace(/<[^>]*>/g, '')] : [part];
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([at, one]) =>
    at === 'files' ? [] : printed(one, Array.isArray(part) ? key : at),
  );
}

async function pack() {
  const [store, ada, clock] = [memoryStore(), await author(), clockFrom()];
  const { person } = await personNamed(store, strange);
  await said(store, ada, clock, 'author', { person });
  await noted(store, ada, clock, strange);
  await said(store, ada, clock, 'certificate', { what: 'insurance', on: '2026-01-01', by: script });
  return evidencePack({
    looked: await look(store),
    names: await store.names(),
    wanted: {},
    speech: voice,
    made: { at: clock.now(), program: '0.0.0' },
  });
}

const briefing = { ...exampleBriefing, board: [strange], aloud: strange };
const board = ridersBoard({ host: { briefing } }, outing.host, voice);
const documents = {
  board: boardDocument(board, 'a4', has),
  'evidence pack': packDocument(await pack(), 'a4', has),
  worksheets: worksheetDocument({ vehicles: outing.train.vehicles, page: 'a4', voice }, has),
  templates: templateDocument(lookAtClear(outing), outing.line.gauge, 'a4', voice, has),
};

it.each(Object.entries(documents))('%s', (name, document) => {
  const words = printed(document);
  if (name !== 'templates') expect(words.join(' ')).toContain('cannot print');
  for (const text of words)
    for (const letter of text) if (letter !== '\n') expect(has(letter.codePointAt(0) ?? 0), text).toBe(true);
});
