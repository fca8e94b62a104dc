/** Where a train in a siding stands clear. All made up; figures by hand. */
import { describe, expect, it } from 'vitest';
import { openOuting } from '../../../engine/outing/open.ts';
import { lookAtSidings, reachInCurve } from '../../../engine/questions/clearance/sidings.ts';
import { reverseLine } from '../../../engine/things/line/geometry.ts';
import type { Line, Siding } from '../../../engine/things/line/types.ts';
import { beside, besideSays, CAR } from '../../support/beside.ts';

const R = 15;
const WANTED = 0.05;
const play = beside({}).assumed.coupler.play.high;
const shape = {
  shape: {
    guides: CAR.guides,
    box: {
      rear: -CAR.overhang,
      front: CAR.guides + CAR.overhang,
      right: -CAR.width / 2,
      left: CAR.width / 2,
    },
  },
  half: CAR.width / 2,
};
/** Apart from 0 at 30 m to 1 m at 40 m, parallel to 60 m, together again at 70 m. */
const siding = (changes: Partial<Siding> = {}): Siding => ({
  id: 'loop-1',
  name: 'Passing loop',
  side: 'left',
  radius: R,
  spacings: [
    { at: 30, spacing: 0 },
    { at: 40, spacing: 1 },
    { at: 60, spacing: 1 },
    { at: 70, spacing: 0 },
  ],
  ...changes,
});
const roomIn = (of: Siding, line: Partial<Line> = {}) => {
  const [room] = lookAtSidings(openOuting(beside({ line: { sidings: [of], ...line } })));
  return room.clear;
};

it('reaches in one curve as far as its chord says: inside by the middle, outside by the corner', () => {
  const axis = Math.sqrt(R ** 2 - 0.8 ** 2);
  expect(reachInCurve(shape, R)).toBeCloseTo(
    Math.max(R - axis + 0.35, Math.sqrt((axis + 0.35) ** 2 + 1.2 ** 2) - R),
    12,
  );
  expect(reachInCurve(shape, 0.7)).toBeUndefined();
});

describe('a siding', () => {
  it('is clear where the tracks lie as far apart as both trains reach, and what is wanted between them', () => {
    const inIt = (reachInCurve(shape, R) as number) + play / 2;
    // On the line it stands aslant in its play: a corner by half of the play times 1.5, as its ends lie 1.2 m from the middle.
    const onLine = CAR.width / 2 + (play / 2) * 1.5;
    const needs = inIt + onLine + WANTED;
    const clear = roomIn(siding());
    expect(clear?.from).toBeCloseTo(30 + 10 * needs, 2);
    expect(clear?.to).toBeCloseTo(70 - 10 * needs, 2);
    // A host's own room between trains stands in its place.
    const own = beside({ line: { sidings: [siding()] } });
    const roomBetweenTrains = { value: WANTED + 0.1, source: 'rule book' };
    const [wider] = lookAtSidings(openOuting({ ...own, host: { ...own.host, roomBetweenTrains } }));
    expect(wider.clear?.from).toBeCloseTo(31 + 10 * needs, 2);
  });

  it('has midway what the spacing leaves of both', () => {
    const [room] = lookAtSidings(openOuting(beside({ line: { sidings: [siding()] } })));
    const onLine = CAR.width / 2 + (play / 2) * 1.5;
    // To a hundredth of a millimetre: the play is small beside the guides.
    expect(room.least).toBeCloseTo(1 - ((reachInCurve(shape, R) as number) + play / 2) - onLine, 5);
    const narrow = siding({
      spacings: siding().spacings.map(({ at, spacing }) => ({ at: 30 + (at - 30) / 12, spacing })),
    });
    expect(lookAtSidings(openOuting(beside({ line: { sidings: [narrow] } })))[0].least).toBeUndefined();
  });

  it('less of it in a sharper curve of its own, and beside a curve of the line', () => {
    const usable = (of: Siding, line?: Partial<Line>): number => {
      const clear = roomIn(of, line);
      return clear ? clear.to - clear.from : 0;
    };
    const straight = usable(siding());
    expect(usable(siding({ radius: 8 }))).toBeLessThan(straight - 0.2);
    const curves = [{ from: 20, to: 45, startCurvature: 1 / 10, endCurvature: 1 / 10, gaugeWidening: 0 }];
    expect(usable(siding(), { curves })).toBeLessThan(straight - 0.2);
  });

  it('is nowhere clear where the tracks never lie far enough apart', () => {
    const spacings = siding().spacings.map(({ at, spacing }) => ({ at, spacing: 0.7 * spacing }));
    expect(roomIn(siding({ spacings }))).toBeNull();
  });

  it('is the same run the other way', () => {
    const outing = beside({ line: { sidings: [siding()] } });
    const turned = { ...outing, line: reverseLine(outing.line) };
    const [here] = lookAtSidings(openOuting(outing));
    const [there] = lookAtSidings(openOuting(turned));
    expect(there.siding.side).toBe('right');
    expect(there.clear?.from).toBeCloseTo(outing.line.length - (here.clear?.to ?? 0), 6);
  });
});

it('says what does not stand clear in it, and what is not measured', () => {
  const says = (of: Siding, outing = beside({ line: { sidings: [of] } })) =>
    besideSays(outing).map((f) => `${f.code} ${f.severity} ${f.measure ?? ''}`.trim());
  expect(says(siding())).toEqual([]);
  const short = siding({
    spacings: siding().spacings.map(({ at, spacing }) => ({ at: 30 + (at - 30) / 12, spacing })),
  });
  expect(says(short)).toEqual(['siding-too-short notes']);
  const { radius: _, ...unknown } = siding();
  expect(says(unknown)).toEqual(['siding-not-measured notes line.sidings.radius']);
  const outing = beside({ line: { sidings: [siding()] } });
  const bare = outing.train.vehicles.map(({ envelope: _none, ...v }) => v);
  expect(says(siding(), { ...outing, train: { ...outing.train, vehicles: bare } })).toEqual([
    'siding-not-measured notes vehicle.envelope',
  ]);
});

it('cannot be told where no radius is stated, or the frame cannot stand in it', () => {
  const { radius: _, ...bare } = siding();
  expect(roomIn(siding({ radius: 0.7 }))).toBeUndefined();
  expect(roomIn(bare)).toBeUndefined();
  const said = (of: Siding) => besideSays(beside({ line: { sidings: [of] } })).map((f) => f.code);
  expect(said(siding({ radius: 0.7 }))).toContain('siding-not-measured');
  expect(said(bare)).toContain('siding-not-measured');
  expect(said(siding())).not.toContain('siding-not-measured');
});
