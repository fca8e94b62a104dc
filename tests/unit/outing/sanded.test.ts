/** Sand on a rail that is damp, wet or greasy: it pulls, and nobody stops or stands by it. */
import { describe, expect, it } from 'vitest';
import { assumedValues } from '../../../data/index.ts';
import { answerOnly } from '../../../engine/answer/answer.ts';
import { prepare } from '../../../engine/motion/prepare.ts';
import { stopDistance } from '../../../engine/motion/stop.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { openOuting } from '../../../engine/outing/open.ts';
import { worstRail } from '../../../engine/outing/rails.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { betterRail, betterToPull } from '../../../engine/questions/changes.ts';
import { askHauling } from '../../../engine/questions/haul/ask.ts';
import {
  bareRails,
  beneath,
  isBare,
  type RailState,
  sandedOn,
  toldRails,
} from '../../../engine/things/rail.ts';
import { changedExample } from '../../support/changed-examples.ts';

const { adhesion } = assumedValues;
const wetRails = ['damp', 'wet', 'greasy'] as const;
const steam = await changedExample('steam-light', () => undefined);
const on = (railState: RailState): Outing => ({ ...steam, conditions: { ...steam.conditions, railState } });

describe('what lies beneath the sand', () => {
  it('is said of every state', () => {
    expect(bareRails.map((rail) => beneath(sandedOn(rail)))).toEqual([...bareRails]);
    expect(bareRails.map(beneath)).toEqual([...bareRails]);
    expect(bareRails.map(sandedOn).some(isBare)).toBe(false);
    expect(sandedOn('dry')).toBe('sanded');
  });

  it.each(wetRails)(
    '%s: holds more with sand than without, less than a dry rail with it, and less than is published',
    (rail) => {
      const [bare, sanded] = [adhesion[rail], adhesion[sandedOn(rail)]];
      for (const key of ['low', 'value', 'high'] as const) {
        expect(sanded[key]).toBeGreaterThan(bare[key]);
        expect(sanded[key]).toBeLessThan(adhesion.sanded[key]);
      }
      // Electric railway handbooks of about 1915: thoroughly wet 0.24, greasy and moist 0.25, with sand (from memory).
      expect(sanded.value).toBeLessThan(rail === 'wet' ? 0.24 : 0.25);
    },
  );
});

describe.each(wetRails)('a %s rail that is sanded', (rail) => {
  const sanded = sandedOn(rail);
  it('stops a train no sooner, likely or carefully', () => {
    const stops = [rail, sanded].map((state) => {
      const { likely, cautious } = prepare(openOuting(on(state)), 1, 300).models(state);
      return [likely, cautious].map((model) => stopDistance(model, 100, 2));
    });
    expect(stops[0].every((d) => d > 0)).toBe(true);
    expect(stops[1]).toEqual(stops[0]);
  });

  it('holds none better, and pulls more', () => {
    const pulls = [rail, sanded].map((state) => askHauling(openOuting(on(state))).data);
    expect(JSON.stringify(pulls[1])).not.toBe(JSON.stringify(pulls[0]));
    const words = [rail, sanded].map((state) =>
      answerOnly(on(state)).findings.filter((f) => f.code === 'does-not-hold'),
    );
    expect(words[1]).toEqual(words[0]);
  });

  it('is no better where the line is worse than the day', () => {
    const placed = openOuting({
      ...on(sanded),
      line: { ...steam.line, railStretches: [{ from: 10, to: 30, state: 'one-step-worse' }] },
    });
    const met = worstRail(placed, sanded);
    expect(adhesion[beneath(met)].value).toBeLessThanOrEqual(adhesion[rail].value);
  });
});

describe('an engine that slips', () => {
  it.each(wetRails)(
    'on a %s rail is helped by sand, and by a dry rail; its brakes by a dry one alone',
    (rail) => {
      const outing = on(rail);
      expect(betterToPull(outing).flatMap((f) => f.changes)).toEqual([
        { kind: 'rail-state', state: sandedOn(rail) },
        { kind: 'rail-state', state: 'dry' },
      ]);
      expect(betterRail(outing).changes).toEqual([{ kind: 'rail-state', state: 'dry' }]);
      expect(applyChange(outing, { kind: 'rail-state', state: sandedOn(rail) }).conditions.railState).toBe(
        sandedOn(rail),
      );
    },
  );
  it('that sands already is offered no more sand', () => {
    expect(betterToPull(on('damp-sanded')).flatMap((f) => f.changes)).toEqual([
      { kind: 'rail-state', state: 'dry' },
    ]);
    expect(betterToPull(on('sanded')).flatMap((f) => f.changes)).toEqual([]);
  });
});

it('tables tell of the usual rails, and of today’s', () => {
  expect(toldRails(undefined)).toEqual(['dry', 'damp', 'wet', 'greasy', 'sanded']);
  expect(toldRails('damp-sanded')).toEqual(['dry', 'damp', 'wet', 'greasy', 'sanded', 'damp-sanded']);
});
