/**
 * A vehicle seen from behind, to scale: rails, wheels, body, people who lean, the middle of all weight, the
 * line in which weight and curve press, and where that meets the plane of the rails. Pure: data in, scene out.
 */

import type { Section, SectionAsk } from '../desk/balance.ts';
import { centreHeight } from '../engine/questions/balance/body.ts';
import type { LoadedVehicle, SeatedRider } from '../engine/things/train/loaded.ts';
import { say, type Voice } from '../words/voice.ts';
import { bodyTop, bodyWidth, buildOf, CROWN, floorOf, HEAD, SHOULDER, wheelOf } from './silhouette.ts';
import {
  drawing,
  group,
  lineShape,
  pathShape,
  px,
  rectShape,
  type Scene,
  type Shape,
  shape,
  textShape,
} from './strip/scene.ts';

export interface SectionView {
  /** px */
  readonly width: number;
  readonly height: number;
  readonly textSize: number;
}

const RAIL = 0.02;
/** Below the rails, m: room for the loads. */
const UNDER = 0.32;

interface Frame {
  readonly x: (left: number) => number;
  readonly y: (up: number) => number;
  readonly scale: number;
}

/** Left of the running direction is drawn to the left. */
function frameOf(vehicle: LoadedVehicle, view: SectionView): Frame {
  const top = Math.max(0.5, ...vehicle.riders.map((r) => r.seat.height + CROWN + 0.06));
  const wide = Math.max(1.2, bodyWidth(vehicle.vehicle) * 1.8);
  const scale = Math.min(view.width / wide, (view.height - view.textSize * 2) / (top + UNDER));
  return {
    x: (left) => view.width / 2 - left * scale,
    y: (up) => view.height - UNDER * scale - up * scale,
    scale,
  };
}

/** Sideways shift of a centre of gravity that stands for a point of the drawing at a rider's shoulder, m. */
export function leanAt(vehicle: LoadedVehicle, view: SectionView, centre: number, x: number): number {
  const { scale } = frameOf(vehicle, view);
  return (((view.width / 2 - x) / scale) * centre) / SHOULDER;
}

/** @param centre height of a seated adult's centre of gravity above the seat, m */
export function sectionScene(
  vehicle: LoadedVehicle,
  section: Section,
  ask: SectionAsk,
  base: number,
  centre: number,
  view: SectionView,
  voice: Voice,
): Scene {
  const frame = frameOf(vehicle, view);
  // Cant is drawn as it is: the whole section turns about the middle of the track, left rail low where positive.
  const turn = (ask.under.cant * 180) / Math.PI;
  const about = `${px(frame.x(0))} ${px(frame.y(0))}`;
  return drawing(view.width, view.height, `${vehicle.vehicle.name} seen from behind: ${section.state}`, [
    rectShape('paper', 0, 0, view.width, view.height),
    group({ transform: `rotate(${px(-turn)} ${about})` }, [
      ...track(frame, base),
      ...bodyShapes(vehicle, frame, base),
      ...vehicle.riders.flatMap((r) => person(r, ask.lean[r.rider.id] ?? 0, centre, frame)),
      ...resultant(section, frame),
      ...loads(section, frame, base, view, voice),
    ]),
    textShape('small', 8, view.textSize * 1.1, 'seen from behind', Math.max(12, view.textSize * 0.85)),
    textShape(
      section.state === 'all wheels down' ? 'strong' : 'reason',
      view.width - 8,
      view.textSize * 1.2,
      section.state,
      view.textSize,
      'end',
    ),
  ]);
}

function track({ x, y, scale }: Frame, base: number): Shape[] {
  return [
    lineShape('hair', x(base), y(0), x(-base), y(0)),
    rectShape('earth', x(base * 1.1), y(-0.05), base * 2.2 * scale, 0.05 * scale),
    ...[base / 2, -base / 2].map((side) =>
      rectShape('solid', x(side) - (RAIL * scale) / 2, y(0), RAIL * scale, 0.05 * scale),
    ),
  ];
}

function bodyShapes({ vehicle }: LoadedVehicle, { x, y, scale }: Frame, base: number): Shape[] {
  const radius = wheelOf(vehicle.groups[0]);
  const floor = floorOf(vehicle);
  const seats = vehicle.seats.map((s) => s.height);
  const top = Math.max(floor + 0.04, Math.min(...seats, bodyTop(vehicle)) - 0.02);
  const width = bodyWidth(vehicle);
  const straddle = vehicle.seats.some((s) => (s.posture ?? 'astride') === 'astride');
  // A bench to sit astride is narrow above its foot boards.
  const upper = straddle ? Math.min(width, 0.24) : width;
  return [
    ...[base / 2, -base / 2].map((side) =>
      rectShape('wheel', x(side) - 0.018 * scale, y(radius * 2), 0.036 * scale, radius * 2 * scale),
    ),
    lineShape('bold', x(base / 2), y(radius), x(-base / 2), y(radius)),
    ...(straddle ? [rectShape('body', x(width / 2), y(floor + 0.03), width * scale, 0.03 * scale)] : []),
    rectShape('body', x(upper / 2), y(top), upper * scale, (top - floor) * scale),
  ];
}

function person({ rider, seat }: SeatedRider, lean: number, centre: number, { x, y, scale }: Frame): Shape[] {
  const size = buildOf(rider);
  const ink = rider.duty === 'driver' ? 'driver' : 'rider';
  const shift = (up: number): number => seat.across + (lean * up) / centre;
  const hip = 0.1 * size;
  const shoulder = SHOULDER * size;
  const head = (CROWN - HEAD) * size;
  const half = 0.19 * size;
  const torso = [
    [seat.across + half * 0.8, seat.height],
    [shift(shoulder) + half, seat.height + shoulder],
    [shift(shoulder) - half, seat.height + shoulder],
    [seat.across - half * 0.8, seat.height],
  ]
    .map(([a, b], i) => `${i === 0 ? 'M' : 'L'}${px(x(a))},${px(y(b))}`)
    .join('');
  return [
    group({ opacity: 0.8 }, [
      pathShape(ink, `${torso}Z`),
      shape('circle', {
        class: ink,
        cx: px(x(shift(head))),
        cy: px(y(seat.height + head)),
        r: px(HEAD * size * scale),
      }),
      rectShape(ink, x(seat.across + half), y(seat.height + hip * 0.4), half * 2 * scale, hip * scale),
    ]),
  ];
}

/** From the middle of all weight to where weight and curve together meet the plane of the rails. */
function resultant({ body, meets }: Section, { x, y, scale }: Frame): Shape[] {
  const up = centreHeight(body);
  const side = body.Y / body.mass;
  const far = Math.max(-1.5, Math.min(1.5, meets));
  return [
    lineShape('limit', x(side), y(up), x(far), y(0)),
    shape('circle', { class: 'open', cx: px(x(side)), cy: px(y(up)), r: px(Math.max(5, 0.022 * scale)) }),
    lineShape('fine', x(side) - 7, y(up), x(side) + 7, y(up)),
    lineShape('fine', x(side), y(up) - 7, x(side), y(up) + 7),
    shape('circle', { class: 'forbids', cx: px(x(far)), cy: px(y(0)), r: 4 }),
  ];
}

/** Load of each side, as a bar below its rail and in words. */
function loads(
  { left, right }: Section,
  { x, y, scale }: Frame,
  base: number,
  { textSize }: SectionView,
  voice: Voice,
): Shape[] {
  const most = left + right;
  const room = (UNDER - 0.07) * scale - textSize * 1.3;
  return ([left, right] as const).flatMap((load, i) => {
    const at = x(i === 0 ? base / 2 : -base / 2);
    const bar = (Math.max(0, load) / most) * room;
    return [
      rectShape('cautious', at - 6, y(-0.055), 12, bar),
      textShape(
        'word',
        at + (i === 0 ? -12 : 12),
        y(-0.055) + textSize,
        load <= 0 ? 'lifted' : say(voice, { si: load, kind: 'force' }, 'nearest'),
        Math.max(12, textSize * 0.9),
        i === 0 ? 'end' : 'start',
      ),
    ];
  });
}
