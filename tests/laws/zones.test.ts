/**
 * Laws of the speeds that are driven, over random outings with a fixed seed: the zones cover the line, none stands
 * above what is permitted anywhere in it, each is long enough to drive, and the brake for the next one fits before it.
 */
import { describe, expect, it } from 'vitest';
import type { StopModel } from '../../engine/motion/model.ts';
import { slowingDistance, stopDistance } from '../../engine/motion/stop.ts';
import { type OutingContext, stopMargin } from '../../engine/outing/open.ts';
import { hostCeilings } from '../../engine/questions/speed/ceilings.ts';
import { gridOf, speedMap } from '../../engine/questions/speed/map.ts';
import { LEAST_SECONDS } from '../../engine/questions/speed/runs.ts';
import type { Driven, DrivenZone, SpeedMap } from '../../engine/questions/speed/types.ts';
import { drivenZones, SPEED_STEPS } from '../../engine/questions/speed/zones.ts';
import { dressed } from '../support/dressed-outings.ts';
import { drawer } from '../support/random-outings.ts';
import { ready } from '../support/ready.ts';
import { runs } from '../support/tier.ts';

const CASES = runs(40, 400);
const systems = ['imperial', 'metric'] as const;

interface Case {
  readonly context: OutingContext;
  readonly map: SpeedMap;
  readonly cautious: StopModel;
  readonly driven: Driven;
}

/** With up to five stretches at speeds of their own, some shorter than the train. */
function caseOf(seed: number): Case {
  const draw = drawer(seed + 7);
  const outing = dressed(seed);
  const { length } = outing.line;
  const extraLimits = Array.from({ length: Math.floor(draw(0, 6)) }, () => {
    const from = draw(0, length * 0.95);
    return { from, to: Math.min(length, from + draw(1, 60)), speed: draw(0.2, 5) };
  });
  const { context, prepared } = ready({ ...outing, extraLimits }, 1);
  const models = prepared.models(outing.conditions.railState);
  const grid = gridOf(length);
  const map = speedMap(context, outing.conditions.railState, models, grid, hostCeilings(context, grid));
  const driven = drivenZones(context, map, models.cautious, SPEED_STEPS[systems[seed % 2]]);
  return { context, map, cautious: models.cautious, driven };
}

const cases = Array.from({ length: CASES }, (_, i) => caseOf(i + 1));
const each = (hold: (of: Case) => void): void => cases.forEach(hold);

/** Metres that the head runs in a zone. */
const wayThrough = ({ from, to }: DrivenZone, { line }: OutingContext): number =>
  to > from ? to - from : to - from + line.length;

const within = ({ from, to }: DrivenZone, s: number): boolean =>
  from < to ? s >= from && s <= to : s >= from || s <= to;

describe('laws of speeds that are driven', () => {
  it('the zones cover the line, one after the other', () => {
    each(({ context, driven: { zones } }) => {
      const { line } = context;
      zones.slice(1).forEach((zone, i) => expect(zone.from).toBe(zones[i].to));
      const [first, last] = [zones[0], zones[zones.length - 1]];
      if (line.loop && zones.length > 1) expect(last.to).toBe(first.from);
      else expect([first.from, last.to]).toEqual([0, line.length]);
      const whole = zones.reduce((sum, zone) => sum + wayThrough(zone, context), 0);
      expect(whole).toBeCloseTo(line.length, 6);
    });
  });

  it('no zone is driven faster than permitted anywhere in it, and each at a whole step', () => {
    each(({ map, driven: { zones, step } }) => {
      for (const zone of zones) {
        const steps = zone.speed / step;
        if (zone.speed >= step) expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
        if (zone.kind === 'arrive') continue;
        map.at.forEach((s, j) => {
          if (within(zone, s)) expect(zone.speed).toBeLessThanOrEqual(map.limit[j]);
        });
      }
    });
  });

  it('each zone is at least as long as the train and lasts five seconds, or is the only one', () => {
    each(({ context, map, driven: { zones } }) => {
      const driven = zones.filter((zone) => zone.kind === 'run');
      for (const zone of driven.length > 1 ? driven : []) {
        const least = Math.max(context.loaded.length, LEAST_SECONDS * zone.speed);
        expect(wayThrough(zone, context)).toBeGreaterThan(least - map.step - 1e-6);
      }
    });
  });

  it('braking for a slower zone begins where it fits before that zone, from the speed driven there', () => {
    each(({ context, cautious, driven: { zones, acts } }) => {
      const { line } = context;
      const { plannedSpeed = Infinity } = context.outing;
      const ahead = (from: number, to: number): number => (to < from ? to - from + line.length : to - from);
      for (const act of acts) {
        const zone = zones.find((z) => within(z, act.at))!;
        expect(act.fromSpeed).toBeCloseTo(Math.min(plannedSpeed, zone.speed), 9);
        const needs =
          act.toSpeed > 0
            ? slowingDistance(cautious, act.at, act.fromSpeed, act.toSpeed)
            : stopDistance(cautious, act.at, act.fromSpeed);
        expect(needs).toBeLessThanOrEqual(ahead(act.at, act.target) + 1e-9);
      }
      zones.forEach((zone, i) => {
        const next = zones[i + 1] ?? (line.loop ? zones[0] : undefined);
        if (!next || next.kind === 'arrive' || next.speed <= 0) return;
        const [v, w] = [zone.speed, next.speed].map((u) => Math.min(u, plannedSpeed));
        if (w >= v - 1e-9) return;
        expect(acts.some((act) => act.kind === 'slow' && act.target === zone.to)).toBe(true);
      });
    });
  });

  it('a line that ends is arrived at: one act, and a stand short of its end', () => {
    each(({ context, map, cautious, driven: { zones, acts } }) => {
      const last = zones[zones.length - 1];
      const { line } = context;
      const ends = map.reasons[map.reason[map.reason.length - 1]].kind === 'stopping-end';
      expect(last.kind === 'arrive').toBe(!line.loop && ends);
      if (last.kind !== 'arrive') return;
      const stands = acts.filter((act) => act.kind === 'stop' && act.target >= last.from);
      expect(stands).toHaveLength(1);
      expect(stands[0].target).toBeLessThanOrEqual(line.length - stopMargin(context));
      expect(stands[0].at + stopDistance(cautious, stands[0].at, stands[0].fromSpeed)).toBeLessThanOrEqual(
        stands[0].target + 1e-9,
      );
      expect(last.from + stopDistance(cautious, last.from, last.speed)).toBeLessThanOrEqual(
        line.length - stopMargin(context) + 1e-9,
      );
    });
  });
});
