/** The train as it stands on its line, from above, to one scale along and across. Pure: data in, scene out. */
import { type Clear, leftOf } from '../../desk/clear.ts';
import type { Stood } from '../../desk/stood.ts';
import type { Corner } from '../../engine/base/numerics/polygon.ts';
import type { PlacedVehicle } from '../../engine/questions/clearance/placed.ts';
import { chainage, say, type Voice } from '../../words/voice.ts';
import { SIDE, SIZE, titled } from '../plot.ts';
import { wrapped } from '../strip/letters.ts';
import {
  lineShape,
  type Point,
  pathShape,
  polyline,
  type Scene,
  type Shape,
  shape,
  textShape,
} from '../strip/scene.ts';

const TOP = 34;
/** Tallest drawing of the track, px: a train round a loop. */
const HIGH = 420;
const LEAST = 60;
/** A body shorter than this has no room for its number, px. */
const ROOM = 14;

export function stoodPlot(stood: Stood, clear: Clear, voice: Voice, wide = 760): Scene {
  const { at, high } = turned(stood, wide);
  const round = (of: readonly Corner[]): string => `${polyline(of.map(at))}Z`;
  const open = (of: readonly Corner[]): string => polyline(of.map(at));
  const { swept, beside, vehicles, rails } = stood;
  const strikes = new Set(
    clear.nearest.filter((p) => p.side !== 'over' && leftOf(p) < 0).map((p) => p.structure.id),
  );
  const named = [...new Map(beside.map((b) => [b.structure.id, b.structure])).values()];
  const notes = [
    `It runs to the right, ${inCurve(stood, voice)}.${swept ? ' Shaded: what the whole train sweeps.' : ''}`,
    vehicles.map((v, i) => `${i + 1} ${v?.name ?? 'cannot stand here'}`).join(' · '),
    named.map(({ id, name }, i) => `${letter(i)} ${name}${strikes.has(id) ? ': strikes' : ''}`).join(' · '),
  ].flatMap((text) => (text === '' ? [] : wrapped(text, SIZE, wide - 2 * SIDE)));
  const foot = TOP + high + 22;
  return titled(
    wide,
    foot + notes.length * SIZE * 1.4,
    `The train with its front at ${chainage(voice, stood.at)}`,
    [
      ...(swept && swept.left.length > 1
        ? [pathShape('curve', round([...swept.left, ...[...swept.right].reverse()]))]
        : []),
      ...rails.map((rail) => pathShape('fine', open(rail))),
      ...vehicles.flatMap((v, i) => (v ? bodyShapes(v, i, at) : [])),
      ...beside.flatMap(({ structure, face }): Shape[] => {
        const points = face.map(at);
        const [x, y] = points[Math.floor(points.length / 2)];
        const ink = strikes.has(structure.id) ? 'nearest' : 'platform';
        return [
          ...(points.length > 1
            ? [pathShape(ink, polyline(points))]
            : [
                shape('circle', {
                  class: strikes.has(structure.id) ? 'forbids' : 'solid',
                  cx: x,
                  cy: y,
                  r: 3.5,
                }),
              ]),
          textShape('word', x + 6, y - 6, letter(named.findIndex((s) => s.id === structure.id)), SIZE),
        ];
      }),
      ...notes.map((text, k) => textShape('small', SIDE, foot + k * SIZE * 1.4, text, SIZE)),
    ],
  );
}

const letter = (i: number): string => (i < 26 ? String.fromCharCode(65 + i) : `${i + 1}`);

const inCurve = ({ curve }: Stood, voice: Voice): string =>
  curve
    ? `on a curve of ${say(voice, { si: curve.radius, kind: 'length' }, 'down')} to the ${curve.hand}`
    : 'on straight track';

function bodyShapes({ corners, axis, guides }: PlacedVehicle, i: number, at: (s: Corner) => Point): Shape[] {
  const [[x1, y1], [x2, y2]] = [at(axis[0]), at(axis[1])];
  return [
    corners ? pathShape('body', `${polyline(corners.map(at))}Z`) : lineShape('bold', x1, y1, x2, y2),
    ...guides.map(at).map(([cx, cy]) => shape('circle', { class: 'solid', cx, cy, r: 2 })),
    ...(Math.hypot(x2 - x1, y2 - y1) < ROOM
      ? []
      : [textShape('word', (x1 + x2) / 2, (y1 + y2) / 2 + 4, `${i + 1}`, SIZE, 'middle')]),
  ];
}

/** Turned so that it runs from left to right, and as large as the width lets it be. */
function turned(stood: Stood, wide: number): { readonly at: (s: Corner) => Point; readonly high: number } {
  const { track } = stood;
  const [tail, head] = [track[0], track[track.length - 1]];
  const long = Math.hypot(head.x - tail.x, head.y - tail.y) || 1;
  const [c, s] = [(head.x - tail.x) / long, (head.y - tail.y) / long];
  const turn = ({ x, y }: Corner): Point => [x * c + y * s, y * c - x * s];
  const all = [
    ...track,
    ...stood.rails.flat(),
    ...(stood.swept ? [...stood.swept.left, ...stood.swept.right] : []),
    ...stood.vehicles.flatMap((v) => v?.corners ?? v?.axis ?? []),
    ...stood.beside.flatMap(({ face }) => face),
  ].map(turn);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, right, low, top] = [least(xs), most(xs), least(ys), most(ys)];
  const scale = Math.min((wide - 2 * SIDE) / (right - left), HIGH / (top - low));
  const high = Math.max(LEAST, (top - low) * scale);
  const middle = TOP + high / 2;
  return {
    high,
    at: (spot) => {
      const [x, y] = turn(spot);
      return [wide / 2 + (x - (left + right) / 2) * scale, middle - (y - (low + top) / 2) * scale];
    },
  };
}

const least = (of: readonly number[]): number => of.reduce((a, b) => Math.min(a, b), Infinity);
const most = (of: readonly number[]): number => of.reduce((a, b) => Math.max(a, b), -Infinity);
