/** What is amiss by a figure of an example list says that the figure is invented, wherever it is told; by a host's own list it does not. */
import { describe, expect, it } from 'vitest';
import { exampleLists } from '../../../data/inspection-lists/index.ts';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { inspectionContent, type Looked } from '../../../desk/inspect/inspection.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { readOuting } from '../../../papers/index.ts';
import { readList } from '../../../papers/inspection/read.ts';
import { openDefects } from '../../../records/inspections.ts';
import { look } from '../../../records/ledger.ts';
import type { Json } from '../../../records/record.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellFinding } from '../../../words/finding.ts';
import { tellContent } from '../../../words/records/record.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';

const SAYS = ': by an example’s limit, which is invented, not published';
const ada = await author();
const paper = (await examplePaper('steam-light')) as Json;
const example = exampleLists['braked-car-measured'] as Json;
const { example: _, ...own } = example;

/** Blocks are right from 12 mm on, usable from 9 mm on by the example. */
async function inspected(json: Json, block: Looked, ground?: string) {
  const read = readList(ground === undefined ? json : { ...json, ground });
  if (!read.ok) throw new Error(JSON.stringify(read.troubles));
  const right = Object.fromEntries(
    read.value.items.map(({ id, measured }) => [
      id,
      measured ? { value: measured.right.from ?? measured.right.to ?? '' } : { result: 'right' as const },
    ]),
  );
  const content = await inspectionContent(read.value, ground === undefined ? 'Light car 1' : 'the box', {
    ...right,
    block,
  });
  const store = memoryStore();
  await said(store, ada, clockFrom('2026-05-30T10:00:00Z'), 'inspection', content);
  const { entries } = await look(store);
  const shown = withShown(paper, recorded(entries, [], '2026-05-31'));
  const outing = await readOuting({ path: 'o', content: JSON.stringify(shown) }, async () => undefined);
  if (!outing.ok) throw new Error(JSON.stringify(outing.problems));
  const voice = { system: 'metric', wording: 'uk', outing: outing.value } as const;
  const found = askOrder(outing.value).filter(({ code }) => ['defect-open', 'ground-amiss'].includes(code));
  return {
    defect: openDefects(entries)[0],
    record: tellContent({ kind: 'inspection', content }, []),
    told: found.map((one) => tellFinding(one, voice).what),
    sources: found.map(({ source }) => source),
    severities: found.map(({ severity }) => severity),
  };
}

describe('by a band of an example list', () => {
  it.each([
    ['8.9 mm', 'forbids'],
    ['11.9 mm', 'limits'],
  ] as const)(
    '%s: the defect, the record and the finding say that the limit is invented',
    async (value, severity) => {
      const { defect, record, told, sources, severities } = await inspected(example, { value });
      expect(defect).toMatchObject({ invented: true });
      expect(record).toContain(SAYS);
      expect(severities).toEqual([severity]);
      expect(told).toHaveLength(1);
      expect(told[0]).toContain(`(${value}) (found 2026-05-30)${SAYS}.`);
      expect(sources[0]).toContain('invented');
    },
  );

  it('on the ground as on a car', async () => {
    const { told, sources } = await inspected(example, { value: '8 mm' }, 'first-aid-and-fire');
    expect(told[0]).toContain(SAYS);
    expect(sources).toHaveLength(1);
  });

  it('by an eye that judges as hard it is nobody’s figure', async () => {
    const { defect, told } = await inspected(example, { value: '11 mm', result: 'reject', note: 'cracked' });
    expect(defect).not.toHaveProperty('invented');
    expect(told[0]).not.toContain('invented');
  });
});

it('a host’s own list, with the same bands, says nothing of the kind', async () => {
  const { defect, record, told, sources } = await inspected(own, { value: '8.9 mm' });
  expect(defect).not.toHaveProperty('invented');
  expect(JSON.stringify([record, told, sources])).not.toContain('invented');
  expect(told).toHaveLength(1);
});
