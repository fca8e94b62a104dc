/** Stretches of rail, blocks beside a measured force, a sander: read, refused, and listed where something stands in. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../engine/motion/prepare.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { trainBrakes } from '../../../engine/things/brake/force.ts';
import { readOuting } from '../../../papers/index.ts';
import { drawStrip } from '../../../views/strip/draw.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { stripModel } from '../../../views/strip/svg.ts';
import { stripWords } from '../../../views/strip/words.ts';
import { tellRails } from '../../../words/rails.ts';
import { changedExample, type OutingPaper, type Paper, vehiclesOf } from '../../support/changed-examples.ts';
import { examplePaper } from '../../support/papers.ts';

const conditionsOf = (paper: OutingPaper): Paper => paper['conditions'] as Paper;
const stretch = { from: '400 ft', to: '520 ft', state: 'greasy' };

const assumes = ({ assumptions }: Outing, of: RegExp): boolean => assumptions.some((a) => of.test(a.of));

const stop = (outing: Outing): number =>
  stopDistance(prepare(openOuting(outing), 1, 0).models(outing.conditions.railState).likely, 300, 2.7);

describe('stretches of rail', () => {
  it('are read from the day and from the line, and told', async () => {
    const outing = await changedExample('steam-light', (paper) => {
      conditionsOf(paper)['railStretches'] = [stretch];
      (paper['line'] as Paper)['railStretches'] = [
        { from: '10 ft', to: '40 ft', state: 'damp', why: 'tunnel' },
      ];
    });
    expect(outing.conditions.railStretches?.[0]).toMatchObject({ from: 400 * 0.3048, state: 'greasy' });
    expect(outing.line.railStretches?.[0]).toMatchObject({ to: 40 * 0.3048, state: 'damp', why: 'tunnel' });
    expect(tellRails({ outing, system: 'imperial', wording: 'us' })).toBe(
      'dry; damp from 10 ft to 40 ft; greasy from 400 ft to 520 ft',
    );
    expect(assumes(outing, /^adhesion on greasy rail$/)).toBe(true);
  });

  it('may be as much worse than the day, whatever the day is, and then its adhesion is listed', async () => {
    const shade = (rail: string) =>
      changedExample('steam-light', (paper) => {
        conditionsOf(paper)['railState'] = rail;
        (paper['line'] as Paper)['railStretches'] = [{ from: '10 ft', to: '40 ft', state: 'one-step-worse' }];
      });
    const [dry, wet] = [await shade('dry'), await shade('wet')];
    expect(tellRails({ outing: dry, system: 'imperial', wording: 'us' })).toBe(
      'dry; damp from 10 ft to 40 ft',
    );
    expect(assumes(dry, /^adhesion on damp rail$/)).toBe(true);
    expect(tellRails({ outing: wet, system: 'imperial', wording: 'us' })).toBe(
      'wet; greasy from 10 ft to 40 ft',
    );
    expect(assumes(wet, /^adhesion on greasy rail$/)).toBe(true);
  });

  it('stand on the strip in words', async () => {
    const outing = await changedExample('steam-light', (paper) => {
      conditionsOf(paper)['railStretches'] = [stretch];
    });
    const voice = { outing, system: 'imperial', wording: 'us' } as const;
    const view = { width: 900, height: 400, from: 0, to: outing.line.length, textSize: 13 };
    expect(sceneToSvg(drawStrip(stripModel(outing, null, voice), view, stripWords(voice)))).toContain(
      'greasy rail',
    );
  });

  it.each([
    ['beyond the line', { ...stretch, to: '9000 ft' }, 'to'],
    ['no way long', { ...stretch, to: '400 ft' }, 'to'],
    ['in a state that nobody sees', { ...stretch, state: 'sanded' }, 'state'],
  ])('are refused %s', async (_, wrong, field) => {
    const paper = await examplePaper('steam-light');
    const conditions = { ...(paper['conditions'] as Paper), railStretches: [wrong] };
    const content = JSON.stringify({ ...paper, conditions });
    const read = await readOuting({ path: 'wrong.json', content }, async () => undefined);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems.map((p) => p.path).join(' ')).toContain(`railStretches[0].${field}`);
  });
});

describe('blocks beside a measured force', () => {
  const madeOf = (block: string | undefined) =>
    changedExample('steam-light', (paper) => {
      conditionsOf(paper)['railState'] = 'wet';
      for (const { brakes } of vehiclesOf(paper))
        for (const brake of brakes ?? []) {
          delete brake['block'];
          if (brake['force'] && block) brake['block'] = block;
        }
    });

  it('lose in the wet and with speed what their material does, and if not named the more of both usual ones', async () => {
    const [iron, composition, wood, unnamed] = await Promise.all(
      ['cast-iron', 'composition', 'wood', undefined].map(async (b) => stop(await madeOf(b))),
    );
    expect(iron).toBeLessThan(unnamed);
    expect(composition).toBeLessThan(unnamed);
    expect(wood).toBeGreaterThan(unnamed);
  });

  it('are listed where nobody named them', async () => {
    expect(assumes(await madeOf(undefined), /^blocks beside the measured force/)).toBe(true);
    expect(assumes(await madeOf('cast-iron'), /^blocks beside the measured force/)).toBe(false);
  });
});

describe('a sander', () => {
  const sanded = (sander: boolean | undefined) =>
    changedExample('steam-light', (paper) => {
      conditionsOf(paper)['railState'] = 'sanded';
      for (const vehicle of vehiclesOf(paper))
        if (vehicle.role === 'engine' && sander !== undefined) vehicle['sander'] = sander;
    });
  const sandedGroups = (outing: Outing): number => {
    const { loaded, air } = openOuting(outing);
    return trainBrakes(loaded, outing.assumed, air.pressure, air.seaLevel).groups.filter((g) => g.sanded)
      .length;
  };

  it('throws under the driven wheels of an engine, unless it has none', async () => {
    expect(sandedGroups(await sanded(true))).toBeGreaterThan(0);
    expect(sandedGroups(await sanded(undefined))).toBe(sandedGroups(await sanded(true)));
    expect(sandedGroups(await sanded(false))).toBe(0);
  });

  it('is listed where nobody said so', async () => {
    expect(assumes(await sanded(undefined), /^sand: thrown/)).toBe(true);
    expect(assumes(await sanded(false), /^sand: thrown/)).toBe(false);
  });
});
