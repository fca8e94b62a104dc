/** What a first file of one's own leaves out: sight and speed are assumed, before all else, and never "go" by silence. */
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { answerOnly } from '../../../engine/answer/answer.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { bundleOuting, type Load, readOuting, writeFile } from '../../../papers/index.ts';

const path = new URL('../../../examples/steam-light.json', import.meta.url).pathname;
const load: Load = async (name) => readFile(name).catch(() => undefined);

type Loose = Record<string, unknown> & { places: Record<string, unknown>[] };

/** Steam with two light cars as one file, changed. */
async function steam(change: (file: Record<'line' | 'host' | 'outing', Loose>) => void): Promise<Outing> {
  const bundle = await bundleOuting({ path, content: await readFile(path) }, load);
  if (!bundle.ok) throw new Error('no bundle');
  const outing = JSON.parse(writeFile(bundle.value));
  change({ line: outing.line, host: outing.host, outing });
  const read = await readOuting({ path, content: JSON.stringify(outing) }, load);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const withoutSight = ({ line, host }: Record<'line' | 'host', Loose>): void => {
  delete line['sights'];
  delete host['leastGap'];
  for (const place of line.places) {
    delete place['sight'];
    delete place['sightReverse'];
  }
};

describe('a file without sight', () => {
  it('is never "go": it asks, and lists the sight first', async () => {
    const outing = await steam(withoutSight);
    expect(outing.assumptions[0].key).toBe('sight');
    const answer = answerOnly(outing);
    expect(answer.verdict).toBe('unknown');
    expect(answer.findings[0].code).toBe('sight-unknown');
  });

  it('nor on a rail on which the brake does not hold', async () => {
    const outing = await steam((file) => {
      withoutSight(file);
      // On a wet rail a driver who eases still holds it.
      file.outing['conditions'] = { railState: 'greasy' };
    });
    const answer = answerOnly(outing);
    expect(answer.verdict).toBe('hold');
    expect(answer.findings.map((f) => f.code)).toContain('brake-does-not-hold-fall');
  });

  it('a stated sight is not assumed, but that of points without one is', async () => {
    const { assumptions } = await steam(() => {});
    expect(assumptions.filter((a) => a.key === 'sight').map((a) => a.where)).toEqual(['Loop points']);
  });
});

describe('a file without a speed', () => {
  it('lists how high it looks, after the sight', async () => {
    const outing = await steam((file) => {
      withoutSight(file);
      delete file.host['speed'];
      delete file.outing['plannedSpeed'];
    });
    expect(outing.assumptions.slice(0, 2).map((a) => a.key)).toEqual(['sight', 'speed/unstated']);
  });
});

describe('a file that says neither night nor day', () => {
  const said = async (night?: boolean) => {
    const outing = await steam((files) => {
      const conditions = files.outing['conditions'] as Record<string, unknown>;
      if (night === undefined) delete conditions['night'];
      else conditions['night'] = night;
    });
    return [outing.conditions.night, outing.assumptions.filter((a) => a.key === 'night').map((a) => a.of)];
  };
  it('runs by daylight, and that is among the assumptions; one that says so assumes nothing', async () => {
    expect(await said()).toEqual([false, ['that it runs by daylight']]);
    expect(await said(false)).toEqual([false, []]);
    expect(await said(true)).toEqual([true, []]);
  });
});
