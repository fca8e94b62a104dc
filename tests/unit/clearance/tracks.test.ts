/** Where a train stands clear on tracks that part. All made up; figures by hand. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { lookAtTracks, trackFindings } from '../../../engine/questions/clearance/tracks.ts';
import { reverseLine } from '../../../engine/things/line/geometry.ts';
import { angleOfFrog } from '../../../engine/things/line/turnout.ts';
import type { Joint, Line, Track } from '../../../engine/things/line/types.ts';
import { beside, CAR } from '../../support/beside.ts';
import { GAUGE, loopRoad, pointsOf, roadThatEnds, straight } from '../../support/tracks.ts';

const base = straight(beside({}).line);
/** Wheels that fit without play: each axle measured. */
const tight = (outing: Outing): Outing => ({
  ...outing,
  assumed: {
    ...outing.assumed,
    coupler: { ...outing.assumed.coupler, play: { value: 0, low: 0, high: 0, how: 'assumed' } },
  },
});
const withTracks = (tracks: readonly Track[], line: Partial<Line> = {}, width = CAR.width): Outing =>
  tight(beside({ line: { ...base, ...line, tracks }, vehicle: { envelope: { width, height: CAR.height } } }));
const roads = (outing: Outing, passing?: Outing) =>
  lookAtTracks(openOuting(outing), passing && openOuting(passing)).roads;
const MARGIN = beside({}).assumed.practice['clear-beside'].value;

describe('a road that ends', () => {
  it('is clear beyond the frog where the near corner lies as far off as the other train reaches, and what is wanted', () => {
    const f = angleOfFrog(6);
    const [road] = roads(withTracks([roadThatEnds(base)]));
    const half = CAR.width / 2;
    const by = (half + half * Math.cos(f) + MARGIN) / Math.sin(f) - GAUGE * 6;
    expect(road.marks[0].beyondFrog).toBeCloseTo(by, 3);
    // The middles part by sin F for each metre beyond their crossing, seen square across from the straight one.
    expect(road.marks[0].apart).toBeCloseTo((by + GAUGE * 6) * Math.sin(f), 3);
    expect(road.clear?.to).toBe(30);
  });

  it('is clear farther from the points with a frog of a greater number, and lies farther from them', () => {
    const at = [4, 5, 6, 8].map((number) => {
      const [road] = roads(withTracks([roadThatEnds(base, { number, lead: 2 * GAUGE * number })]));
      return [
        road.marks[0].beyondFrog,
        road.marks[0].beyondTips,
        pointsOf({ number, lead: 2 * GAUGE * number }).turnout?.radius ?? 0,
      ];
    });
    for (const i of [1, 2, 3]) for (const k of [0, 1, 2]) expect(at[i][k]).toBeGreaterThan(at[i - 1][k]);
  });

  it('is the same whichever hand it leaves to, whichever way the line is run, and where the points trail', () => {
    const clear = (tracks: readonly Track[], line?: Partial<Line>) =>
      roads(withTracks(tracks, line))[0].clear?.from;
    const left = clear([roadThatEnds(base)]);
    expect(clear([roadThatEnds(base, { hand: 'right' })])).toBeCloseTo(left ?? 0, 6);
    const outing = withTracks([roadThatEnds(base)]);
    // On a line that is bent beyond the frog alone: the frog must lie on the same side of the tips.
    const curves = [{ from: 43, to: 60, startCurvature: 1 / 60, endCurvature: 1 / 60, gaugeWidening: 0 }];
    const bent = withTracks([roadThatEnds(base)], { curves });
    expect(roads({ ...bent, line: reverseLine(bent.line) })[0].clear?.from).toBeCloseTo(
      roads(bent)[0].clear?.from ?? 0,
      6,
    );
    expect(roads({ ...outing, direction: 'reverse' })[0].clear?.from).toBe(left);
  });

  it('leaves less beside a wider train, standing or passing, and with play, and where the host wants more', () => {
    const tracks = [roadThatEnds(base)];
    const narrow = withTracks(tracks);
    const wide = withTracks(tracks, {}, CAR.width + 0.1);
    const from = (outing: Outing, passing?: Outing): number => roads(outing, passing)[0].clear?.from ?? 0;
    expect(from(wide, narrow)).toBeGreaterThan(from(narrow) + 0.2);
    expect(from(narrow, wide)).toBeGreaterThan(from(narrow) + 0.2);
    expect(from(beside({ line: narrow.line }))).toBeGreaterThan(from(narrow));
    const host = { ...narrow.host, roomBetweenTrains: { value: 0.2, source: 'Rule 3' } };
    expect(from({ ...narrow, host }) - from(narrow)).toBeCloseTo(
      (0.2 - MARGIN) / Math.sin(angleOfFrog(6)),
      2,
    );
  });

  it('leaves less where cant leans the train that passes toward it, and where it leans itself', () => {
    const plain = roads(withTracks([roadThatEnds(base)]))[0].clear?.from ?? 0;
    const cants = [{ at: 0, cant: 0.01 }];
    expect(roads(withTracks([roadThatEnds(base)], { cants }))[0].clear?.from).toBeGreaterThan(plain + 0.1);
    const leaning = roadThatEnds({ ...base, cants: [{ at: 0, cant: -0.01 }] });
    expect(roads(withTracks([leaning]))[0].clear?.from).toBeGreaterThan(plain + 0.1);
  });

  it('leaves less where the other track is bent toward it beyond the frog', () => {
    const bend = (k: number): number => {
      const curves = [{ from: 43, to: 60, startCurvature: k, endCurvature: k, gaugeWidening: 0 }];
      return roads(withTracks([roadThatEnds(base)], { curves }))[0].clear?.from ?? 0;
    };
    expect(bend(1 / 60)).toBeGreaterThan(bend(0) + 0.1);
    expect(bend(-1 / 60)).toBeLessThan(bend(0) - 0.1);
  });
});

describe('a loop', () => {
  it('is clear from mark to mark, alike at both ends, and so is the line beside it', () => {
    const [own, line] = roads(withTracks([loopRoad(base, 1.2)]));
    expect(own.marks[0].beyondFrog).toBeCloseTo(own.marks[1].beyondFrog, 3);
    expect(own.clear?.to).toBeCloseTo(own.length - (own.clear?.from ?? 0), 3);
    expect([own.stands, line.stands]).toEqual(['in', 'beside']);
    expect(line.length).toBe(60);
    expect(line.marks[0].beyondTips).toBeCloseTo(own.marks[0].beyondTips, 1);
  });

  it('has between two trains midway what lies between the tracks less both half widths', () => {
    const [{ least }] = roads(withTracks([loopRoad(base, 1.2)]));
    expect(least?.room).toBeCloseTo(1.2 - CAR.width, 6);
  });

  it('over the origin of a line that closes is the same', () => {
    const round = { ...base, loop: true };
    const [road] = roads(withTracks([loopRoad(base, 1.2)]));
    const over = loopRoad(base, 1.2, { at: 180 });
    const end = { ...(over.end as Joint), at: 40 };
    const [there, beside] = roads(withTracks([{ ...over, end }], round));
    expect(there.clear?.from).toBeCloseTo(road.clear?.from ?? 0, 6);
    expect(beside.length).toBe(60);
  });
});

describe('a track that comes near without joining', () => {
  /** Parallel to the line, and ends at buffers. */
  const parallel = (name: string, spacing: number, at: number, length: number, back = false): Track => {
    const { end: _, ...road } = loopRoad(base, spacing, { at, ...(back ? { hand: 'right' } : {}) });
    return {
      ...road,
      id: name,
      name,
      start: { ...road.start, facing: !back },
      line: { ...road.line, length, curves: road.line.curves.filter((c) => c.to < length) },
    };
  };
  const inner = parallel('Inner', 1.2, 40, 32);
  const least = (outer: Track, line?: Partial<Line>) =>
    roads(withTracks([inner, outer], line)).find((r) => r.track.name === 'Inner')?.least;

  it('counts by its own place, whichever way its points lie', () => {
    expect(least(parallel('Outer', 3, 30, 42))?.room).toBeCloseTo(1.2 - CAR.width, 6);
    for (const outer of [parallel('Outer', 2.1, 30, 42), parallel('Outer', 2.1, 92, 44, true)]) {
      expect(least(outer)?.room).toBeCloseTo(2.1 - 1.2 - CAR.width, 6);
      expect(least(outer)?.on).toBe('Outer');
    }
  });

  it('leaves nowhere clear where it lies too near', () => {
    const [road] = roads(withTracks([inner, parallel('Outer', 1.85, 30, 42)]));
    expect((road.clear?.to ?? 0) - (road.clear?.from ?? 0)).toBeLessThan(CAR.length + 3);
  });

  it('counts over the origin of a line that closes, whatever that misses', () => {
    const far = parallel('Outer', 2.1, 190, 42);
    const near = { ...inner, start: { ...inner.start, at: 0 } };
    const found = roads(withTracks([near, far], { loop: true })).find((r) => r.track.name === 'Inner');
    expect(found?.least?.room).toBeCloseTo(2.1 - 1.2 - CAR.width, 6);
  });

  it('is none that leaves the road itself', () => {
    const off = { ...roadThatEnds(base, { at: 20 }), id: 'off', name: 'Off' };
    const leaves: Track = { ...off, start: { ...off.start, track: 'Inner' } };
    const [own] = roads(withTracks([inner, leaves]));
    expect(own.clear?.from).toBeCloseTo(roads(withTracks([inner]))[0].clear?.from ?? 0, 3);
    expect(own.clear?.to).toBe(32);
  });
});

describe('what is found', () => {
  const says = (outing: Outing): string[] =>
    trackFindings(openOuting(outing)).map((f) => `${f.code} ${f.severity} ${f.measure ?? ''}`.trim());
  const lacking = (lacks: Joint['lacks']): Track => {
    const { turnout: _, ...joint } = pointsOf();
    return { ...roadThatEnds(base), start: { ...joint, ...(lacks ? { lacks } : {}) } };
  };

  it('is nothing where it fits with nobody near', () => {
    expect(says(withTracks([roadThatEnds(base)]))).toEqual([]);
  });

  it('is a road too short, in its own length', () => {
    expect(says(withTracks([roadThatEnds(base, {}, 7)]))).toEqual(['siding-too-short notes']);
  });

  it('is what is to be measured: lead, frog, width', () => {
    expect(says(withTracks([lacking('lead')]))).toEqual(['track-not-measured notes line.tracks.start.lead']);
    expect(says(withTracks([lacking('frogNumber')]))).toEqual([
      'track-not-measured notes line.tracks.start.frogNumber',
    ]);
    const { turnout: _, ...bare } = loopRoad(base, 1.2).end as Joint;
    const loop: Track = { ...loopRoad(base, 1.2), end: { ...bare, lacks: 'lead' } };
    expect(says(withTracks([loop]))).toEqual(['track-not-measured notes line.tracks.end.lead']);
    const outing = withTracks([roadThatEnds(base)]);
    const vehicles = outing.train.vehicles.map(({ envelope: _none, ...v }) => v);
    expect(says({ ...outing, train: { ...outing.train, vehicles } })).toEqual([
      'track-not-measured notes vehicle.envelope',
    ]);
  });

  it('is where two trains that pass come too near between their marks', () => {
    const loop = loopRoad(base, 0.9);
    // The line bulges toward the loop by some 0.2 m in its middle.
    const bulge = [
      [60, 64, 1 / 40],
      [64, 72, -1 / 40],
      [72, 76, 1 / 40],
    ].map(([from, to, k]) => ({ from, to, startCurvature: k, endCurvature: k, gaugeWidening: 0 }));
    expect(says(withTracks([loop]))).toEqual([]);
    const outing = withTracks([loop], { curves: bulge });
    expect(says(outing)).toContain('trains-do-not-pass notes');
    const [road] = roads(outing);
    expect(road.pinch?.room).toBeLessThan(MARGIN);
  });

  it('is where people on two trains can touch', () => {
    const ridden = (spacing: number): string[] =>
      trackFindings(
        openOuting(beside({ line: { ...base, tracks: [loopRoad(base, spacing)] }, ridden: true })),
      ).map((f) => f.code);
    expect(ridden(1.2)).toEqual(['reach-between-trains']);
    expect(ridden(2)).toEqual([]);
  });
});
