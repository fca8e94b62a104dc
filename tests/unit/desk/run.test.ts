/** The run against a plain march in small steps, and against the map that it may never exceed. */
import { describe, expect, it } from 'vitest';
import { frameAt, PULLING_AWAY, STANDING, trainRun } from '../../../desk/run.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Driven } from '../../../engine/questions/speed/types.ts';
import { bundled } from '../../support/bundled.ts';
import { dressed } from '../../support/dressed-outings.ts';

const { drivenCase } = await bundled<typeof import('../../support/driven-cases.ts')>(
  '../support/driven-cases.ts',
);

/** By hand: 300 m, 4 m/s, 2 m/s from 200 m on, a stand at 280 m. */
const line = { ...dressed(1).line, length: 300, loop: false, places: [] };
const { plannedSpeed: _, ...free } = dressed(1);
const plain: Outing = { ...free, line, direction: 'forward' };
const reason = { kind: 'host-line', what: 'host', source: 'a test' } as const;
const zone = { kind: 'run', reason, cautiousStop: 0, gap: 0 } as const;
const driven: Driven = {
  step: 0.5,
  zones: [
    { ...zone, from: 0, to: 200, speed: 4 },
    { ...zone, from: 200, to: 250, speed: 2 },
    { ...zone, kind: 'arrive', from: 250, to: 300, speed: 2 },
  ],
  acts: [
    { kind: 'slow', what: 'curve', at: 170, target: 200, fromSpeed: 4, toSpeed: 2 },
    { kind: 'stop', what: 'end of line', at: 250, target: 280, fromSpeed: 2, toSpeed: 0 },
  ],
};

/** Seconds at which posts are passed, in steps of a millisecond, from nothing but the rule in words. */
function march(posts: readonly number[], reaction: number): number[] {
  const out: number[] = [];
  let [t, s, v] = [0, 0, 0];
  const dt = 1e-3;
  let since = -1;
  while (s < 279.99 && t < 600) {
    const act = driven.acts.find((a) => s >= a.at && s < a.target);
    if (!act) since = -1;
    else if (since < 0) since = t;
    const top = s < 200 ? 4 : 2;
    let a = v < top ? PULLING_AWAY : 0;
    if (act)
      a = t - since < reaction ? 0 : -(v * v - act.toSpeed ** 2) / (2 * Math.max(1e-3, act.target - s));
    v = Math.max(act ? 0.01 : 0, Math.min(v + a * dt, act ? v : Math.max(v, top)));
    s += v * dt;
    t += dt;
    while (out.length < posts.length && s >= posts[out.length]) out.push(t);
  }
  return out;
}

describe('the run', () => {
  it('passes each post when a plain march in small steps does', () => {
    const run = trainRun(plain, driven, 0);
    const posts = [10, 50, 100, 150, 180, 190, 200, 230, 260, 275];
    const passed = march(posts, plain.conditions.reaction.value);
    posts.forEach((post, i) => {
      const { way } = frameAt(run, passed[i]);
      expect(Math.abs(way - post), `${post} m`).toBeLessThan(0.05);
    });
    // 4 m/s from 53.3 m on: 50 m in 12.5 s.
    expect(passed[3] - passed[2]).toBeCloseTo(12.5, 2);
  });

  it('says brake now from the braking point until it has slowed, and stands at the end', () => {
    const run = trainRun(plain, driven, 0);
    const at = (way: number) => run.pieces.findLast((p) => p.way <= way)!;
    expect(at(169.9).act).toBeUndefined();
    expect(at(170.1).act?.what).toBe('curve');
    expect(at(200.1).act).toBeUndefined();
    expect(frameAt(run, run.lasts)).toMatchObject({ speed: 0 });
    expect(frameAt(run, run.lasts).at).toBeCloseTo(280, 3);
  });

  it('is never faster than permitted, wherever it is; goes all the way round, and stands where it is booked', () => {
    let [loops, stands] = [0, 0];
    for (let seed = 1; seed <= 12; seed++) {
      const { context, map, driven } = drivenCase(seed);
      if (driven.zones.some((z) => z.speed <= 0)) continue;
      const outing: Outing = { ...context.outing, line: context.line, direction: 'forward' };
      const { loop, length } = outing.line;
      const [stop] = driven.acts.filter((a) => a.kind === 'stop');
      const run = trainRun(outing, driven, loop && stop ? stop.target : 0);
      const over: number[] = [];
      for (let i = 0; i <= 500; i++) {
        const { at, speed, act } = frameAt(run, (run.lasts * i) / 500);
        const j = Math.round(at / map.step);
        const near = Math.max(...[j - 1, j, j + 1].map((k) => map.limit[k] ?? 0));
        if (!act && speed > near + 1e-6) over.push(at);
      }
      expect(over, `${seed}`).toEqual([]);
      const last = run.pieces[run.pieces.length - 1];
      if (loop) expect(last.way, `${seed}`).toBeCloseTo(length, 3);
      if (loop) loops++;
      if (!stop) continue;
      stands++;
      const stood = run.pieces.some(
        (p) => p.time > 0 && p.speed === 0 && Math.abs(run.at(p.way) - stop.target) < 0.6,
      );
      expect(stood || run.at(last.way) < 0.6, `${seed} ${stop.what} ${stop.target}`).toBe(true);
    }
    expect(loops).toBeGreaterThan(0);
    expect(stands).toBeGreaterThan(0);
    expect(STANDING).toBeGreaterThan(0);
  });
});
