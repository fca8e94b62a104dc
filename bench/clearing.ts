/**
 * Whether 20 vehicles fit 2 km: 40 curves, 40 structures, 10 of them platforms, 20 frogs, heights every 10 m. Every question of fit
 * beside what an answer has open already; the swept path at one place, as while something is dragged; 50 tracks that leave one line. Against
 * the same reach sought place by place.
 */
import { lookAtClear } from '../desk/clear.ts';
import { standings } from '../desk/stood.ts';
import { inquireInto } from '../engine/answer/inquiry.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import { bodiesOf, reachesAt, reachWith, STEP, wayFor } from '../engine/questions/clearance/bodies.ts';
import { clearance } from '../engine/questions/clearance/question.ts';
import { lookAtTracks } from '../engine/questions/clearance/tracks.ts';
import { crests } from '../engine/questions/crests/question.ts';
import { humps } from '../engine/questions/humps/question.ts';
import { pitch } from '../engine/questions/pitch/question.ts';
import { practice } from '../engine/questions/practice/question.ts';
import { standards } from '../engine/questions/standards/question.ts';
import { swing } from '../engine/questions/swing/question.ts';
import { wheels } from '../engine/questions/wheels/question.ts';
import type { Line } from '../engine/things/line/types.ts';
import { beside, CAR } from '../tests/support/beside.ts';
import { plain } from '../tests/support/rules.ts';
import { roadThatEnds, straight } from '../tests/support/tracks.ts';
import { stoodPlot } from '../views/fit/stood-plot.ts';
import { type BenchRow, ms, quickest } from './row.ts';

const LENGTH = 2000;
const TRACKS = 50;
/** Runs until a look of this size is compiled, as it is beside an answer that has been given. */
const WARM = 25;
const alternate = (i: number): 1 | -1 => (i % 2 === 0 ? 1 : -1);

const line = (base: Line): Line => ({
  ...base,
  loop: false,
  length: LENGTH,
  heights: Array.from({ length: LENGTH / 10 + 1 }, (_, i) => ({ at: 10 * i, height: 0.4 * Math.sin(i / 5) })),
  curves: Array.from({ length: 40 }, (_, i) => {
    const k = alternate(i) / (15 + i);
    return { from: 50 * i, to: 50 * i + 30, startCurvature: k, endCurvature: k, gaugeWidening: 0 };
  }),
  cants: [],
  places: [],
  structures: Array.from({ length: 40 }, (_, i) => ({
    id: `structure-${i}`,
    name: `structure ${i}`,
    from: 50 * i + 5,
    to: 50 * i + (i % 4 === 0 ? 40 : 5),
    side: i % 2 === 0 ? ('left' as const) : ('right' as const),
    distance: 0.6,
    bottom: 0,
    ...(i % 4 === 0 ? { platform: true, top: 0.15 } : {}),
  })),
  flangeways: Array.from({ length: 20 }, (_, i) => ({
    id: `frog-${i}`,
    name: `frog ${i}`,
    at: 100 * i + 3,
    guardCheck: 0.179,
    guardFace: 0.173,
  })),
});

/** Engine and 19 cars alike, measured. */
function outing(): Outing {
  const base = plain(19);
  const [engine, car] = base.train.vehicles;
  const cars = base.train.vehicles.slice(1).map(({ id, name }) => ({ ...car, id, name }));
  const vehicles = [engine, ...cars].map((v) => ({
    ...v,
    envelope: { width: CAR.width, height: CAR.height },
    step: { height: 0.15, width: CAR.width },
    rear: { ...v.rear, type: 'bar', height: 0.15, shank: 0.15 },
  }));
  return { ...base, line: line(base.line), train: { ...base.train, vehicles } };
}

export function run(): BenchRow[] {
  const context = openOuting(outing());
  const fit = quickest(() => {
    const inquiry = inquireInto(context);
    for (const question of [wheels, crests, pitch, humps, clearance, standards, swing, practice])
      inquiry.of<unknown>(question);
  }, WARM);
  const bodies = bodiesOf(context);
  const places = Array.from({ length: 40 / STEP + 1 }, (_, i) => 200 + i * STEP);
  const [, body] = bodies;
  const together = quickest(() => {
    for (const side of ['left', 'right'] as const)
      reachesAt(wayFor(context.line, bodies), body, places, side, body.play.high);
  });
  const way = wayFor(context.line, bodies);
  const apart = quickest(() => {
    for (const side of ['left', 'right'] as const)
      for (const s of places) reachWith(way, body, s, side, body.play.high);
  });
  const both = reachesAt(way, body, places, 'left', body.play.high);
  const most =
    typeof both === 'number'
      ? Number.NaN
      : Math.max(
          ...both.map(({ at, reach }) =>
            Math.abs(reach - (reachWith(way, body, at, 'left', body.play.high) ?? Number.NaN)),
          ),
        );
  const rails = straight(beside({}).line);
  const tracks = Array.from({ length: TRACKS }, (_, i) => {
    const at = 10 + (i * 180) / TRACKS;
    const road = roadThatEnds(rails, { at, hand: i % 2 === 0 ? 'left' : 'right' }, 12);
    return { ...road, id: `road-${i}`, name: `Road ${i}` };
  });
  const graph = quickest(() => {
    // Looked at anew: of one line it is remembered.
    lookAtTracks(openOuting(beside({ line: { ...rails, tracks: [...tracks] } })));
  }, 2);
  const whole = outing();
  const voice = { system: 'imperial', wording: 'us', outing: whole } as const;
  const clear = lookAtClear(whole);
  const stands = standings(whole, clear);
  let at = stands.from;
  const stood = quickest(() => {
    at += 0.7;
    stoodPlot(stands.stand(at), clear, voice, 760);
  }, WARM);
  const row = (work: string, took: number, note: string): BenchRow => ({
    work,
    ours: ms(took),
    against: 'the reach along 40 m sought place by place',
    theirs: ms(apart),
    ratio: apart / took,
    ourError: note,
    theirError: 'none',
  });
  return [
    row('fit of 20 vehicles over 2 km beside an answer (50 ms wanted)', fit, 'as the tests hold it'),
    row(
      'the reach of a car along 40 m, as while it is dragged (16 ms: a frame)',
      together,
      `${(most * 1000).toFixed(3)} mm`,
    ),
    row(
      '20 vehicles stood on the line and drawn, as while dragged (16 ms: a frame)',
      stood,
      'as the tests hold it',
    ),
    row(`where a car stands clear on ${TRACKS} tracks`, graph, 'as the tests hold it'),
  ];
}
