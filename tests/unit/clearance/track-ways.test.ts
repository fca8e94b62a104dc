/** What clears a road that a train is too long or too wide for, and how it is drawn. All made up. */
import { describe, expect, it } from 'vitest';
import { lookAtTracksOf } from '../../../desk/siding.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Track } from '../../../engine/things/line/types.ts';
import { roadsPlot } from '../../../views/fit/roads-plot.ts';
import { drawnOf } from '../../../views/strip/roads.ts';
import { beside, CAR } from '../../support/beside.ts';
import { plain } from '../../support/rules.ts';
import { loopRoad, roadThatEnds, straight } from '../../support/tracks.ts';

const line = straight(beside({}).line);
const train = (tracks: readonly Track[], cars = 4, changes: Partial<Outing> = {}): Outing => {
  const base = plain(cars);
  const vehicles = base.train.vehicles.map((v) => ({
    ...v,
    envelope: { width: CAR.width, height: CAR.height },
  }));
  return { ...base, line: { ...line, tracks }, train: { ...base.train, vehicles }, riders: [], ...changes };
};
const long = ({ train: { vehicles } }: Outing): number => vehicles.reduce((sum, v) => sum + v.length, 0);

describe('a road that the train is too long for', () => {
  const probe = train([roadThatEnds(line)]);
  const [{ clear }] = lookAtTracksOf(probe).standing[0].look.roads;
  const before = clear?.from ?? Number.NaN;
  const car = probe.train.vehicles[4].length;
  /** Clear over the train less a car and a half: two must stay. */
  const short = train([roadThatEnds(line, {}, before + long(probe) - 1.5 * car)]);

  it('is cleared by the fewest cars left from the rear, and no fewer do', () => {
    const [way] = lookAtTracksOf(short).ways;
    const names = short.train.vehicles.slice(3).map((v) => v.name);
    expect(way).toEqual({ road: 'Road', lacks: 'length', leave: names, others: [] });
    const one = applyChange(short, { kind: 'fewer-cars', leave: [short.train.vehicles[4].id] });
    expect(lookAtTracksOf(one).ways).toMatchObject([{ lacks: 'length', leave: [names[0]] }]);
  });

  it('names the other road where it stands clear as it is, and says nothing where it fits', () => {
    const stub = short.line.tracks?.[0] as Track;
    const both = train([stub, { ...roadThatEnds(line, { hand: 'right' }, 60), id: 'long', name: 'Long' }]);
    expect(lookAtTracksOf(both).ways).toMatchObject([{ road: 'Road', others: ['Long'] }]);
    expect(lookAtTracksOf(train([roadThatEnds(line, {}, 60)])).ways).toEqual([]);
  });

  it('is not cleared by leaving all: an engine that is too long alone stays', () => {
    const tiny = train([roadThatEnds(line, {}, before + 0.5)]);
    expect(lookAtTracksOf(tiny).ways).toMatchObject([{ leave: [] }]);
  });
});

it('draws each road with its marks, in words that round into the clear', () => {
  const outing = train([loopRoad(line, 1.4), roadThatEnds(line, { at: 150, hand: 'right' }, 40)]);
  const voice = { wording: 'us', system: 'metric', outing } as const;
  const sidings = lookAtTracksOf(outing);
  const scene = roadsPlot(sidings, sidings.standing[0], voice);
  const words = JSON.stringify(scene);
  for (const text of ['Loop, off', 'Road, off', 'beside Loop: no end nearer than', 'beyond the frog'])
    expect(words).toContain(text);
  const none = { ...sidings.standing[0], look: { ...sidings.standing[0].look, roads: [] } };
  expect(roadsPlot(sidings, none, voice)).toBeUndefined();
});

it('lies on the strip from its tips to its end, whichever way its points lie, over the origin of a loop too', () => {
  const [loop, road] = [loopRoad(line, 1.2), roadThatEnds(line)];
  expect(drawnOf(loop, line)).toMatchObject({ from: 40, to: 100 });
  expect(drawnOf(road, line)).toMatchObject({ from: 40, to: 70 });
  expect(drawnOf({ ...road, start: { ...road.start, facing: false } }, line)).toMatchObject({
    from: 10,
    to: 40,
  });
  const end = loop.end && { ...loop.end, at: 10 };
  expect(drawnOf({ ...loop, ...(end ? { end } : {}) }, { ...line, loop: true })).toMatchObject({
    from: 40,
    to: 210,
  });
  expect(drawnOf({ ...road, start: { ...road.start, track: 'loop' } }, line)).toBeUndefined();
});
