/** The house in order: a pure engine, words for every code, nothing that tells where it was built. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultRows } from '../../data/index.ts';
import { questions } from '../../engine/answer/questions.ts';
import { factKinds, findingCodes } from '../../engine/questions/findings.ts';
import { migrations } from '../../papers/migrations/index.ts';
import { schemas, VERSION } from '../../papers/schema/index.ts';

const root = new URL('../../', import.meta.url).pathname;
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).trim().split('\n');

describe('the engine', () => {
  const files = readdirSync(`${root}engine`, { recursive: true, encoding: 'utf8' }).filter((f) =>
    f.endsWith('.ts'),
  );

  it('is looked at', () => expect(files.length).toBeGreaterThan(30));

  it('has no clock, chance, console or environment', () => {
    const odd = files.filter((f) => {
      const code = readFileSync(`${root}engine/${f}`, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      return /\bDate\b|Math\.random|\bconsole\b|\bprocess\b|\bglobalThis\b|\bfetch\(/.test(code);
    });
    expect(odd).toEqual([]);
  });
});

describe('findings', () => {
  it('every code is in the table of a question, by which a remedy knows what to ask again', () => {
    const owned = new Set(questions.flatMap((q) => Object.keys(q.findings)));
    // A fault is told of any question.
    expect(findingCodes.filter((code) => !owned.has(code))).toEqual(['question-failed']);
  });
});

describe('facts', () => {
  it('are places if they are named so, and are turned with the line only then', () => {
    const kinds = Object.values(factKinds).flatMap((facts) => Object.entries(facts));
    const places = kinds.filter(([name, kind]) => kind === 'place' || /^at\??$/.test(name));
    expect(places.length).toBeGreaterThan(3);
    expect(places.filter(([name, kind]) => kind !== 'place' || !/^at\??$/.test(name))).toEqual([]);
  });
});

describe('data', () => {
  it('every assumed value lies between its bounds and has a source', () => {
    expect(defaultRows.length).toBeGreaterThan(40);
    for (const row of defaultRows) {
      expect(row.low, row.key).toBeLessThanOrEqual(row.value);
      expect(row.high, row.key).toBeGreaterThanOrEqual(row.value);
      expect(row.source.length, row.key).toBeGreaterThan(5);
    }
    expect(new Set(defaultRows.map((r) => r.key)).size).toBe(defaultRows.length);
  });
});

describe('files', () => {
  it('a migration leads from every older version to the next, for every kind', () => {
    for (const kind of Object.keys(schemas)) {
      for (let version = 0; version < VERSION; version++) {
        expect(migrations.filter((m) => m.kind === kind && m.from === version)).toHaveLength(1);
      }
    }
  });
});

describe('laws', () => {
  it('leave to the tier how many cases they try', () => {
    const laws = tracked.filter((f) => /^tests\/(?!meta).*\.test\.ts$/.test(f));
    const counts = laws.flatMap((f) =>
      [...readFileSync(root + f, 'utf8').matchAll(/numRuns: ([^ ,}]+)/g)].map(
        ([, count]) => `${f}: ${count}`,
      ),
    );
    expect(counts.length).toBeGreaterThan(10);
    expect(counts.filter((count) => !count.includes(': runs('))).toEqual([]);
  });
});

describe('the tree', () => {
  it('names no machine path and no registry host', () => {
    const odd = tracked.filter((f) => {
      if (/package-lock\.json$|\.png$|house\.test\.ts$|^\.ci\//.test(f)) return false;
      return /\/(work|root|home\/[a-z]+)\/|https?:\/\/registry\./.test(readFileSync(root + f, 'utf8'));
    });
    expect(odd).toEqual([]);
  });
});
