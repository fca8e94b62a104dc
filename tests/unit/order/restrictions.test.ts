/** Temporary limits and closures: told at once, with reason and record, until a record lifts them. */
import { describe, expect, it } from 'vitest';
import { recorded, withShown } from '../../../desk/due/shown.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Outing, Restriction } from '../../../engine/outing/types.ts';
import { askOrder } from '../../../engine/questions/order/ask.ts';
import { readOuting } from '../../../papers/index.ts';
import { look } from '../../../records/ledger.ts';
import type { Json } from '../../../records/record.ts';
import { openRestrictions } from '../../../records/restrictions.ts';
import { memoryStore } from '../../../records/stores/memory.ts';
import { tellFinding } from '../../../words/finding.ts';
import { author, clockFrom, said } from '../../support/club-records.ts';
import { examplePaper } from '../../support/papers.ts';
import { plain } from '../../support/rules.ts';

const base = plain(2);
const MPH = 0.44704;
const soft = (more: Partial<Restriction> = {}): Restriction => ({
  of: base.line.name,
  from: 60,
  to: 90,
  why: 'soft bank',
  since: '2026-05-30',
  source: 'temporary, since 2026-05-30, record 1a2b3c4d',
  ...more,
});
const shut = (one: Restriction, changes: Partial<Outing> = {}) =>
  askOrder({ ...base, ...changes, restrictions: [one] });
const quick = { step: 1, samples: 20, couplerRuns: 2 };
const limits = (outing: Outing) => {
  const { speeds, findings, verdict } = answerOnly(outing, quick);
  if (!speeds) throw new Error('no speeds');
  const most = (at: number): number => speeds.limit[speeds.at.findIndex((s) => s >= at)];
  return { most, findings, verdict, at: [...speeds.at], limit: [...speeds.limit] };
};

describe('where the line is shut', () => {
  it('holds, with where, why and the record', () => {
    const [found] = shut(soft());
    expect(found).toMatchObject({ code: 'line-closed', severity: 'forbids', where: { from: 60, to: 90 } });
    const told = tellFinding(found, { system: 'metric', wording: 'us', outing: base });
    expect(told.what).toMatch(/^The line is shut from 60 m.* to 90 m.*: soft bank \(since 2026-05-30\)\.$/);
    expect(told.source).toContain('record 1a2b3c4d');
  });
  it('in reverse in the running direction, and on another line not at all', () => {
    expect(shut(soft(), { direction: 'reverse' })[0].where).toEqual({
      from: base.line.length - 90,
      to: base.line.length - 60,
    });
    expect(shut(soft({ of: 'Another line' }))).toEqual([]);
  });
  it('written the wrong way round it is the same stretch', () => {
    const straight = { line: { ...base.line, loop: false } };
    expect(shut(soft({ from: 90, to: 60 }), straight)[0].where).toEqual({ from: 60, to: 90 });
  });
  it.each([{ to: base.line.length + 5 }, { from: base.line.length + 5 }])(
    'that lies beyond the end of the line it is asked for: cannot tell, shut or slow',
    (more) => {
      for (const speed of [{}, { speed: 2 * MPH }])
        expect(shut(soft({ ...more, ...speed })).map((f) => [f.code, f.severity])).toEqual([
          ['limit-off-line', 'unknown'],
        ]);
      // A tape that ends a hand's breadth late measures the same end.
      expect(shut(soft({ to: base.line.length + 0.1 }))[0].code).toBe('line-closed');
    },
  );
});

describe('a temporary limit', () => {
  const free = limits(base);
  const slow = limits({ ...base, restrictions: [soft({ speed: 3 * MPH })] });
  it('binds where it is, and until the last car has left it; it never lets a train run faster', () => {
    expect(slow.most(75)).toBeCloseTo(3 * MPH, 6);
    expect(free.most(75)).toBeGreaterThan(3 * MPH);
    // Speeds are found to 0.4 %, always inside.
    slow.limit.forEach((v, i) => expect(v).toBeLessThanOrEqual(1.004 * free.limit[i]));
  });
  it('is told with its reason, and limits', () => {
    const [found] = slow.findings.filter((f) => f.code === 'line-slow');
    const told = tellFinding(found, { system: 'imperial', wording: 'us', outing: base });
    expect(told.what).toMatch(
      /^Temporary limit from .* to .*: no faster than 3\.0 mph, soft bank \(since 2026-05-30\)\.$/,
    );
    expect(told.source).toContain('record 1a2b3c4d');
    expect(found.severity).toBe('limits');
  });
  it('above what nobody stated lifts nothing', () => {
    const unstated = { ...base, host: { name: 'made up' } };
    const high = limits({ ...unstated, restrictions: [soft({ speed: 18 * MPH })] });
    const before = limits(unstated);
    high.limit.forEach((v, i) => expect(v).toBeLessThanOrEqual(1.004 * before.limit[i]));
  });
  it('where it is shut no speed is given, and it is told once', () => {
    const closed = limits({ ...base, restrictions: [soft()] });
    expect(closed.most(75)).toBe(0);
    expect(closed.verdict).toBe('hold');
    expect(closed.findings.filter((f) => f.severity === 'forbids').map((f) => f.code)).toEqual([
      'line-closed',
    ]);
  });
});

const [store, ada, clock] = [memoryStore(), await author(), clockFrom('2026-05-30T08:00:00Z')];
const paper = (await examplePaper('steam-light')) as Json;
const line = (paper['line'] as Json)['name'] as string;

describe('from the records into the paper, and out again', () => {
  const now = async (): Promise<Json> =>
    withShown(paper, recorded((await look(store)).entries, [], '2026-05-31'));
  const read = async (json: Json): Promise<Outing> => {
    const got = await readOuting({ path: 'o', content: JSON.stringify(json) }, async () => undefined);
    if (!got.ok) throw new Error(JSON.stringify(got.problems));
    return got.value;
  };

  it('it stands there until a record lifts it, and says which record it is', async () => {
    expect(await now()).toBe(paper);
    const set = await said(store, ada, clock, 'restriction', {
      line,
      from: '120 ft',
      to: '200 ft',
      speed: '3 mph',
      why: 'soft bank',
    });
    await said(store, ada, clock, 'restriction', { line: 'Elsewhere', from: '0 m', to: '5 m', why: 'x' });
    const with1 = await now();
    expect(with1['restrictions']).toEqual([
      {
        of: line,
        from: '120 ft',
        to: '200 ft',
        speed: '3 mph',
        why: 'soft bank',
        since: '2026-05-30',
        record: set.row.hash,
      },
    ]);
    const [limit] = (await read(with1)).restrictions ?? [];
    expect(limit).toMatchObject({ speed: expect.closeTo(3 * MPH, 9), from: expect.closeTo(120 * 0.3048, 9) });
    expect(limit.source).toBe(`temporary, since 2026-05-30, record ${set.row.hash.slice(0, 8)}`);
    // What was found right another day lifts nothing; neither does a note.
    await said(store, ada, clock, 'note', { text: 'bank looks well' });
    expect(await now()).toEqual(with1);
    await said(store, ada, clock, 'lifted', { restriction: set.row.hash, why: 'bank tamped, walked' });
    expect(await now()).toBe(paper);
    expect(openRestrictions((await look(store)).entries).map((r) => r.said.line)).toEqual(['Elsewhere']);
    // The paper that had it is rid of it.
    expect(withShown(with1, recorded((await look(store)).entries, [], '2026-05-31'))).toEqual(paper);
  });
  it('one that came with another device’s paper stays: these records know nothing of its being lifted', async () => {
    const theirs = {
      of: line,
      from: '1 ft',
      to: '9 ft',
      why: 'x',
      since: '2026-05-30',
      record: 'ab'.repeat(32),
    };
    const defect = {
      of: line,
      what: 'x',
      rejects: true,
      since: '2026-05-30',
      record: `${'cd'.repeat(32)} rails`,
    };
    const handed = { ...paper, restrictions: [theirs], defects: [defect] };
    expect(withShown(handed, recorded((await look(store)).entries, [], '2026-05-31'))).toBe(handed);
  });
  it('without a speed it is shut: silence never lets a train through', async () => {
    const closed = { of: line, from: '120 ft', to: '200 ft', why: 'washed out', since: '2026-05-30' };
    const outing = await read({ ...paper, restrictions: [closed] });
    expect(askOrder(outing).map((f) => f.code)).toContain('line-closed');
  });
});
