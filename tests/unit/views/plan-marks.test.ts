/** Where ends may stand and where least is left, on the plan. All made up. */
import { describe, expect, it } from 'vitest';
import { lookAtClear } from '../../../desk/clear.ts';
import { planMarks } from '../../../desk/plan-marks.ts';
import { lookAtTracksOf } from '../../../desk/siding.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Line } from '../../../engine/things/line/types.ts';
import { markedPlan } from '../../../views/plan/svg.ts';
import { sceneToSvg } from '../../../views/strip/scene.ts';
import { beside, post } from '../../support/beside.ts';
import { loopRoad, roadThatEnds, straight } from '../../support/tracks.ts';

const base = straight(beside({}).line);
const bent = { from: 150, to: 180, startCurvature: 1 / 30, endCurvature: 1 / 30, gaugeWidening: 0 };
const lined = (line: Partial<Line>, structures = [post()]): Outing =>
  beside({ line: { ...base, curves: [bent], structures, ...line } });
const marks = (outing: Outing) => planMarks(outing, lookAtClear(outing), lookAtTracksOf(outing));

describe('marks on the plan', () => {
  it('of a road that ends: one in it, by its own distances, where a train stands clear', () => {
    const outing = lined({ tracks: [roadThatEnds(base)] }, []);
    const [road] = lookAtTracksOf(outing).standing[0].look.roads;
    expect(marks(outing)).toEqual([{ kind: 'end', track: 'road', at: road.clear?.from, name: 'Road' }]);
  });

  it('of a loop: two in it and two on the line beside it, whichever way the points lie', () => {
    const track = loopRoad(base, 1.2);
    const outing = lined({ tracks: [track] }, []);
    const found = marks(outing);
    expect(found.map((m) => m.track)).toEqual(['loop', 'loop', 'main', 'main']);
    const [, , from, to] = found.map((m) => m.at);
    const { at } = track.start;
    // Between the tips of its two points, and as far from the one as from the other.
    expect(from - at).toBeGreaterThan(2);
    expect((track.end?.at ?? 0) - to).toBeCloseTo(from - at, 1);
  });

  it('of structures: the five with least left, and every other that is struck', () => {
    const far = Array.from({ length: 7 }, (_, i) =>
      post({
        id: `post-${i}`,
        name: `Post ${i}`,
        from: 20 + 15 * i,
        to: 20 + 15 * i,
        distance: 0.6 + 0.1 * i,
      }),
    );
    const found = marks(lined({}, far)).filter((m) => m.kind === 'near');
    expect(found.map((m) => m.name)).toEqual([0, 1, 2, 3, 4].map((i) => `Post ${i}`));
    expect(found[0].at).toBeCloseTo(20, 6);
    expect(found.every((m, i) => i === 0 || (m.left ?? 0) > (found[i - 1].left ?? 0))).toBe(true);
    const struck = marks(
      lined(
        {},
        far.map((p) => ({ ...p, distance: 0.3 })),
      ),
    );
    expect(struck.filter((m) => (m.left ?? 0) < 0)).toHaveLength(7);
  });

  it('over a route the tracks are pieces of it: none of theirs', () => {
    const outing = lined({ tracks: [roadThatEnds(base)] }, []);
    expect(marks({ ...outing, whole: outing.line })).toEqual([]);
  });

  it('are drawn across the track that they are of, told, and what they are is said', () => {
    const outing = lined({ tracks: [roadThatEnds(base)] });
    const svg = (m: ReturnType<typeof marks>) => {
      const scene = markedPlan(outing, m, { system: 'metric', wording: 'us', outing });
      return scene ? sceneToSvg(scene) : '';
    };
    const drawn = svg(marks(outing));
    expect(drawn).toMatch(/<title>Road: an end may stand at \d+ m<\/title>/);
    expect(drawn).toMatch(/<title>Lamp post: [\d.]+ m?m left at 60 m<\/title>/);
    expect(drawn).toContain('no nearer to the points');
    expect(drawn).toContain('where least is left');
    expect(svg([])).not.toContain('no nearer to the points');
    expect(svg([{ kind: 'near', track: 'main', at: 60, name: 'Post', left: -0.012 }])).toContain(
      'Post: it strikes at 60 m, by 12 mm',
    );
    // Of a track that is not drawn: nothing.
    expect(svg([{ kind: 'end', track: 'gone', at: 5, name: 'Gone' }])).not.toContain('<title>Gone');
  });
});
