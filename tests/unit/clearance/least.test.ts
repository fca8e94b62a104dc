/** Least room where a train so long stands in a track, from mark to mark: by hand. All made up. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { bodiesOf } from '../../../engine/questions/clearance/bodies.ts';
import { type RoadLaid, roadsOf } from '../../../engine/questions/clearance/roads.ts';
import { toFrog } from '../../../engine/things/line/turnout.ts';
import type { Joint, Track } from '../../../engine/things/line/types.ts';
import { beside, CAR } from '../../support/beside.ts';
import { loopRoad, roadThatEnds, straight } from '../../support/tracks.ts';

const base = straight(beside({}).line);
const MARGIN = 0.05;
const laid = (track: Track): readonly RoadLaid[] => {
  const outing = beside({ line: { ...base, tracks: [track] } });
  const none = { value: 0, low: 0, high: 0, how: 'assumed' as const };
  const { assumed } = outing;
  const context = openOuting({
    ...outing,
    assumed: { ...assumed, coupler: { ...assumed.coupler, play: none } },
  });
  const bodies = bodiesOf(context);
  const found = roadsOf({ line: context.line, standing: bodies, passing: bodies, margin: MARGIN }, track);
  if (!Array.isArray(found)) throw new Error('untold');
  return found;
};

describe('a loop', () => {
  const track = loopRoad(base, 1.2);
  const [own, line] = laid(track);
  const { from, to } = own.clear ?? { from: 0, to: 0 };

  it('leaves a short train midway what lies between the tracks, one that just fits what is wanted, a longer one nothing', () => {
    expect(own.leastOf(10)?.room).toBeCloseTo(1.2 - CAR.width, 6);
    const just = own.leastOf(to - from - 1e-3);
    expect(just?.room).toBeCloseTo(MARGIN, 2);
    expect(just?.room).toBeGreaterThan(MARGIN - 2e-3);
    // At one of its ends: beyond the mark of the points there.
    const at = just?.at ?? 0;
    expect(Math.min(Math.abs(at - from), Math.abs(at + CAR.length - to))).toBeLessThan(0.02);
    expect(own.leastOf(to - from + 1e-3)).toBeNull();
    // Rooms grow with the distance from the points: the shorter the train the more.
    const rooms = [to - from - 1, to - from - 3, to - from - 6].map((l) => own.leastOf(l)?.room ?? 0);
    expect(rooms).toEqual([...rooms].sort((a, b) => a - b));
    expect(new Set(rooms).size).toBe(3);
  });

  it('its marks lie beyond the frog by the way to the tips less that of the frog; beside it, by the lead', () => {
    const { turnout } = track.start as Required<Joint>;
    for (const mark of own.marks) expect(mark.beyondTips - mark.beyondFrog).toBeCloseTo(toFrog(turnout), 9);
    for (const mark of line.marks) expect(mark.beyondTips - mark.beyondFrog).toBeCloseTo(turnout.lead, 9);
    expect(own.marks[0].beyondTips).toBe(from);
    expect(own.marks[1].beyondTips).toBeCloseTo(own.length - to, 9);
    expect(own.marks.map((m) => m.apart)).toEqual(
      [own.marks[1].apart, own.marks[0].apart].map((a) => expect.closeTo(a, 3)),
    );
    expect(own.pinch).toBeNull();
  });
});

it('a road that ends is filled from its end: the train at the buffers, or no room', () => {
  const [road] = laid(roadThatEnds(base));
  const { from } = road.clear ?? { from: 0 };
  expect(road.leastOf(30 - from - 1e-3)?.room).toBeCloseTo(MARGIN, 2);
  expect(road.leastOf(30 - from + 1e-3)).toBeNull();
  // Farther off than anybody looks.
  expect(road.leastOf(CAR.length)?.room).toBeGreaterThan(0.9);
  expect(road.marks).toHaveLength(1);
});
