/**
 * Each road with the stretch beside it, laid straight and true to scale along it: points, frogs, where a train stands clear, and
 * where its ends must stand. For a board at the mark, or for whoever drives it in. Pure: data in, scene out.
 */
import { nameOfTrack, type Road, type Sidings, type Standing, usableOf } from '../../desk/siding.ts';
import { toFrog } from '../../engine/things/line/turnout.ts';
import type { Joint, Track } from '../../engine/things/line/types.ts';
import { tape } from '../../words/calliper.ts';
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
  textShape,
} from '../strip/scene.ts';

const ROW = SIZE * 1.4;
/** Between the two tracks as drawn, px. */
const APART = 34;

interface Panel {
  readonly shapes: readonly Shape[];
  readonly high: number;
}

/** undefined: no road is laid. */
export function roadsPlot(sidings: Sidings, train: Standing, voice: Voice, wide = 760): Scene | undefined {
  const tracks = [...new Set(train.look.roads.map((road) => road.track))];
  if (tracks.length === 0) return undefined;
  let top = 28;
  const shapes: Shape[] = [];
  for (const track of tracks) {
    const of = (stands: Road['stands']): Road | undefined =>
      train.look.roads.find((road) => road.track === track && road.stands === stands);
    const panel = panelOf(sidings, train, track, [of('in'), of('beside')], voice, wide, top);
    shapes.push(...panel.shapes);
    top += panel.high;
  }
  const title = `Where ${train.train} stands clear`;
  return titled(wide, top, title, [...shapes]);
}

function panelOf(
  sidings: Sidings,
  train: Standing,
  track: Track,
  [inside, beside]: readonly [Road | undefined, Road | undefined],
  voice: Voice,
  wide: number,
  top: number,
): Panel {
  const { start, end, line } = track;
  const through = nameOfTrack(sidings.line, start.track);
  const head = wrapped(
    `${track.name}, off ${through} at ${chainage(voice, start.at)}`,
    SIZE,
    wide - 2 * SIDE,
  );
  const upper = top + ROW * head.length + ROW * 1.6;
  const lower = upper + APART;
  // What lies a little before the tips and behind them is drawn too.
  const before = line.length * 0.06;
  const x = (s: number): number => SIDE + ((s + before) / (line.length + 2 * before)) * (wide - 2 * SIDE);
  const leads = [start, end].map((joint) => (joint ? leadOf(joint) : undefined));
  const out = x(Math.min(leads[0] ?? 0, line.length / 3));
  const back = end ? x(line.length - Math.min(leads[1] ?? 0, line.length / 3)) : undefined;
  const own: Point[] = [
    [x(0), lower],
    [out, upper],
    ...(back === undefined
      ? [[x(line.length), upper] as Point]
      : [[back, upper] as Point, [x(line.length), lower] as Point]),
  ];
  const words = [inside, beside].flatMap((road) =>
    road ? wrapped(toldOf(sidings, road, train, voice), SIZE, wide - 2 * SIDE) : [],
  );
  const foot = lower + ROW * 1.4;
  const shapes = [
    ...head.map((text, i) => textShape('word', SIDE, top + ROW * (i + 1), text, SIZE)),
    lineShape('rail', SIDE, lower, wide - SIDE, lower),
    pathShape('rail', polyline(own)),
    ...(end ? [] : [lineShape('bold', x(line.length), upper - 7, x(line.length), upper + 7)]),
    ...(inside ? stood(inside, train, x, upper) : []),
    ...(beside ? stood(beside, train, (s) => x((s * line.length) / beside.length), lower) : []),
    ...words.map((text, i) => textShape('small', SIDE, foot + ROW * (i + 1), text, SIZE)),
  ];
  return { shapes, high: foot + ROW * (words.length + 1.2) - top };
}

const leadOf = ({ turnout }: Joint): number => (turnout ? toFrog(turnout) : 0);

/** The clear stretch with a mark at each end, and the train in it, as long as it is. */
function stood(
  { clear, stands, length, track }: Road,
  train: Standing,
  x: (s: number) => number,
  y: number,
): Shape[] {
  if (!clear) return [];
  const fits = usableOf({ clear } as Road) >= train.length;
  const ends = stands === 'in' && !track.end;
  const begins = ends
    ? Math.max(clear.from, clear.to - train.length)
    : (clear.from + clear.to - train.length) / 2;
  const mark = (s: number): Shape => lineShape('limit', x(s), y - 9, x(s), y + 9);
  return [
    lineShape('beam', x(clear.from), y, x(clear.to), y),
    ...(fits ? [lineShape('planTrain', x(begins), y, x(begins + train.length), y)] : []),
    mark(clear.from),
    ...(clear.to < length - 1e-6 ? [mark(clear.to)] : []),
  ];
}

/** In words: what one needs to set a board, or to stop by. */
function toldOf(sidings: Sidings, road: Road, train: Standing, voice: Voice): string {
  const { stands, track, marks, clear, length } = road;
  const feet = (m: number, toward: 'up' | 'down' = 'up'): string =>
    say(voice, { si: m, kind: 'length' }, toward);
  const name =
    stands === 'in' ? track.name : `${nameOfTrack(sidings.line, track.start.track)}, beside ${track.name}`;
  if (!clear) return `${name}: nowhere clear.`;
  const usable = usableOf(road);
  const [first, last] = marks;
  const standsClear = [
    `no end nearer than ${tape(first.beyondFrog, voice, 'up')} beyond the frog${stands === 'beside' ? ` (${placeOn(road, clear.from, 'up', voice)})` : ''}`,
    last
      ? `nor nearer than ${tape(last.beyondFrog, voice, 'up')} to the last frog${stands === 'beside' ? ` (${placeOn(road, length - last.beyondTips, 'down', voice)})` : ''}`
      : undefined,
  ].filter((text) => text !== undefined);
  const fits = usable >= train.length ? '' : ` ${train.train} is ${feet(train.length)}: too long.`;
  return `${name}: ${standsClear.join(', ')}; ${feet(usable, 'down')} clear.${fits}`;
}

/** By the distances of the track that goes on, rounded into the clear. */
function placeOn(
  { track: { start } }: Road,
  beyondTips: number,
  toward: 'up' | 'down',
  voice: Voice,
): string {
  const other = toward === 'up' ? 'down' : 'up';
  return start.facing
    ? chainage(voice, start.at + beyondTips, toward)
    : chainage(voice, start.at - beyondTips, other);
}
