/** The house in order: a pure engine, words for every code, nothing that tells where it was built. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultRows } from '../../data/index.ts';
import { questions } from '../../engine/answer/questions.ts';
import { factKinds, findingCodes } from '../../engine/questions/findings.ts';
import { practiceKeys } from '../../engine/things/assumed.ts';
import { brakeKinds } from '../../engine/things/brake/kinds/index.ts';
import { type FieldForm, fileForm } from '../../papers/fields.ts';
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
    // A fault is told of any question, and another move is asked all of them: for neither is a change tried.
    expect(findingCodes.filter((code) => !owned.has(code))).toEqual(['question-failed', 'other-move']);
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

  it.each(['dead-time', 'build-up'])('every brake kind has its row of %s, and no other has', (what) => {
    const rows = defaultRows.filter((r) => r.key.startsWith(`${what}/`)).map((r) => r.key);
    expect(rows.sort()).toEqual(brakeKinds.map((kind) => `${what}/${kind}`).sort());
  });
});

/** Fields of figures that a paper may leave out. */
function mayBeLeftOut(): Set<string> {
  const names = new Set<string>();
  const walk = (is: FieldForm): void => {
    if (is.form === 'list') walk(is.entry);
    if (is.form === 'oneOf') for (const member of is.groups) walk(member.is);
    if (is.form !== 'group') return;
    for (const field of is.fields) {
      if (field.optional && field.is.form === 'figure') names.add(field.key);
      walk(field.is);
    }
  };
  for (const kind of ['line', 'vehicle', 'train', 'host', 'outing'] as const) walk(fileForm(kind));
  return names;
}

/** Where the engine may put a number in the place of a field that nobody filled in, and why. */
const numbersArgued: Readonly<Record<string, string>> = {
  'calibrate/tests/coast-down.ts speed': 'where a search begins',
  'calibrate/tests/standing.ts centreHeight': 'where a search begins',
  'questions/balance/twist.ts frameTwist': 'a frame is straight until somebody finds it bent',
  'questions/brakes/how-hard.ts springForce': 'the row spring-force, listed',
  'things/brake/force.ts springForce': 'the row spring-force, listed',
  'things/brake/train-air.ts springForce': 'the row spring-force, listed',
  'things/brake/parts.ts springForce': 'the row spring-force, listed',
  'things/brake/train-air.ts cylinders': 'read from the paper as one, if nothing is said',
  'things/brake/train-air.ts rate': 'named as missing: nothing is filled',
  'things/brake/levels.ts pressure': 'asked for where the kind is charged: nothing is filled',
  'things/brake/fill.ts efficiency': 'stands in the paper or is listed as assumed before',
  'things/brake/parts.ts cylinderVolume': 'taken by rule, and named so',
  'things/chain/chain.ts workingLoad': 'an unknown load bears nothing',
  'things/train/loaded.ts tareShare': 'what the stated shares leave is shared among the others',
  'questions/swing/ask.ts swing': 'an unknown swing gives nothing',
  'questions/speed/ceilings.ts plannedSpeed': 'the greater of it and the row speed/unstated',
  'questions/flag/ask.ts distance': 'nowhere far enough: worse than any',
  'questions/changes.ts length': 'a count of letters',
  'questions/wheels/frame.ts middlePlay': 'an axle of which nobody says that it moves does not',
  'questions/chains/say.ts force': 'of a reckoned peak',
  'questions/couplers/ensemble.ts at': 'head of the row: level where no place is asked',
  'questions/part/map.ts speed': 'speed of no train behind',
};

describe('what nobody stated', () => {
  it('is no bare number in the engine: a row of data/, or argued here', () => {
    const names = mayBeLeftOut();
    expect(names.size).toBeGreaterThan(50);
    const bare = readdirSync(`${root}engine`, { recursive: true, encoding: 'utf8' })
      .filter((f) => f.endsWith('.ts'))
      .flatMap((f) => {
        const code = readFileSync(`${root}engine/${f}`, 'utf8');
        const found = code.matchAll(/\b(\w+)\??(?:\.(?:value|low|high))? \?\? -?[\d.]/g);
        return [...found].flatMap(([, name]) => (names.has(name) ? [`${f} ${name}`] : []));
      });
    expect([...new Set(bare)].sort()).toEqual(Object.keys(numbersArgued).sort());
  });

  it('is a row that something reads', () => {
    const code = tracked
      .filter((f) => /^(data|papers|desk)\/.*\.ts$/.test(f))
      .map((f) => readFileSync(root + f, 'utf8'))
      .join('\n');
    const read = (key: string): boolean => {
      const parts = key.split('/');
      const prefixes = parts.slice(1).map((_, i) => `${parts.slice(0, i + 1).join('/')}/\${`);
      return code.includes(`'${key}'`) || prefixes.some((prefix) => code.includes(prefix));
    };
    expect(defaultRows.map((row) => row.key).filter((key) => !read(key))).toEqual([]);
    expect(read('no-such-row')).toBe(false);
  });

  it('by what the trade asks is read by a question', () => {
    const code = tracked
      .filter((f) => /^(engine|desk)\/.*\.ts$/.test(f) && !f.endsWith('assumed.ts'))
      .map((f) => readFileSync(root + f, 'utf8'))
      .join('\n');
    const used = (key: string): boolean =>
      new RegExp(`practice\\.${key}\\b|practice\\['${key}'\\]|[{,] *'?${key}'?[ ,:}][^;]*practice;`).test(
        code,
      );
    expect(practiceKeys.filter((key) => !used(key))).toEqual([]);
    expect(defaultRows.filter((r) => r.key.startsWith('practice/')).map((r) => r.key)).toEqual(
      practiceKeys.map((key) => `practice/${key}`),
    );
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
