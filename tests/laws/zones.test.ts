/**
 * Laws of the speeds that are driven, over random outings with a fixed seed: the zones cover the line, none stands
 * above what is permitted anywhere in it, each is long enough to drive, and the brake for the next one fits before it.
 */
import { describe, expect, it } from 'vitest';
import { slowingDistance, stopDistance } from '../../engine/motion/stop.ts';
import { type OutingContext, stopMargin } from '../../engine/outing/open.ts';
import { LEAST_SAVED, LEAST_SECONDS } from '../../engine/questions/speed/runs.ts';
import type { DrivenZone } from '../../engine/questions/speed/types.ts';
import { bundled } from '../support/bundled.ts';
import type { DrivenCase } from '../support/driven-cases.ts';
import { runs } from '../support/tier.ts';

const CASES = runs(30, 400);
const { drivenCase } = await bundled<typeof import('../support/driven-cases.ts')>(
  '../support/driven-cases.ts',
);
const cases = Array.from({ length: CASES }, (_, i) => drivenCase(i + 1));
const each = (hold: (of: DrivenCase) => void): void => cases.forEach(hold);

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

  it('each change of speed is worth its while: three seconds saved on the speed of the slower neighbour', () => {
    each(({ context, driven: { zones } }) => {
      zones.forEach((zone, i) => {
        const ends = context.line.loop ? zones.length : undefined;
        const beside = [i - 1, i + 1].map((k) => zones[ends ? (k + ends) % ends : k]);
        const slower = beside.filter((z) => z?.kind === 'run' && z.speed < zone.speed).map((z) => z.speed);
        if (zone.kind === 'arrive' || slower.length === 0) return;
        const way = wayThrough(zone, context);
        expect(way / Math.max(...slower) - way / zone.speed).toBeGreaterThan(LEAST_SAVED - 1e-6);
      });
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
