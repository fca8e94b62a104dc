/**
 * A way over the tracks of a line as one line, for everything else to be answered on: its pieces cut out, turned where they are
 * run against their own distances, and laid one after the other. Chainages are then the way's own, from its beginning.
 *
 * Where no points ahead lead on, the train draws clear of points behind which the next track lies, stops, and sets back: a move
 * of its own, its last vehicle first.
 */
import { reverseLine } from './geometry.ts';
import { toldOfOthersAlone } from './near.ts';
import { joined, pieceOf } from './pieces.ts';
import { type Joint, type Line, MAIN, type Track, type Unstated } from './types.ts';

/** Beyond the tips of points over which it sets back the train stops with its tail so far, m: common practice, no source. */
export const BEYOND = 1;

/** Why there is no such way: at which of its tracks, and what of it. */
export interface NoWay {
  readonly at: number;
  readonly lacks: 'track' | 'way' | 'turnout' | 'heights' | 'room';
  /** Beyond the points, and what the train takes there, m. */
  readonly room?: number;
  readonly takes?: number;
}

/** Running along a track, with its distances or against them. */
interface Run {
  readonly id: string;
  readonly from: number;
  readonly along: 1 | -1;
}

export interface Leg extends Run {
  readonly to: number;
}

/** From where it starts to where it ends or sets back. */
export interface Move {
  readonly legs: readonly Leg[];
  readonly line: Line;
  /** Its last vehicle leads. */
  readonly back: boolean;
}

const lineOf = (line: Line, id: string): Line | undefined =>
  id === MAIN ? line : line.tracks?.find((t) => t.id === id)?.line;

/**
 * @param ids tracks in the order in which they are run; the line itself forward, from its beginning
 * @param train its length, m: what it takes beyond points to set back over them
 */
export function wayOver(line: Line, ids: readonly string[], train: number): readonly Move[] | NoWay {
  const unknown = ids.findIndex((id) => !lineOf(line, id));
  if (unknown >= 0 || ids.length === 0) return { at: Math.max(0, unknown), lacks: 'track' };
  const level = ids.findIndex((id) => id !== MAIN && !line.tracks?.some((t) => t.id === id && t.levelled));
  if (level >= 0) return { at: level, lacks: 'heights' };
  const begins: Run[] = [{ id: ids[0], from: 0, along: 1 }];
  if (ids[0] !== MAIN) begins.push({ id: ids[0], from: (lineOf(line, ids[0]) as Line).length, along: -1 });
  const ways = begins.map((run) => movesOf(line, ids, run, train));
  const found = ways.filter((w): w is Leg[][] => !('lacks' in w));
  // Of two ways to begin in a track, that on which it sets back less often.
  const [moves] = [...found].sort((a, b) => a.length - b.length);
  if (!moves) return (ways as NoWay[]).reduce((a, b) => (b.at > a.at ? b : a));
  return moves.map((legs, i): Move => ({ legs, line: lineOver(line, legs), back: i % 2 === 1 }));
}

function lineOver(line: Line, legs: readonly Leg[]): Line {
  const asked = withUnstated(line, legs);
  const parts = legs.flatMap(({ from, to, along }, i) => {
    if (Math.abs(to - from) <= 1e-9) return [];
    return [along > 0 ? pieceOf(asked[i], from, to) : reverseLine(pieceOf(asked[i], to, from))];
  });
  const [first, last] = [legs[0], legs[legs.length - 1]];
  const onMain = first.id === MAIN && last.id === MAIN && last.along > 0;
  // From its origin to its origin: not one that sets back.
  const closes = line.loop && onMain && first.from === 0 && last.to % line.length === 0;
  return { ...joined(parts), name: line.name, loop: closes };
}

/** The track of each leg, with what of it is to be asked. */
function withUnstated(line: Line, legs: readonly Leg[]): Line[] {
  const tracks = legs.map(({ id }) => lineOf(line, id) as Line);
  const states = (of: Line, lacks: 'sights' | 'structures' | 'flangeways'): boolean =>
    lacks === 'sights' ? of.sights.length > 0 : of[lacks] !== undefined;
  return legs.map(({ id, from, to }, i) => {
    const own = tracks[i];
    const name = line.tracks?.find((t) => t.id === id)?.name ?? line.name;
    const whole = { from: 0, to: own.length, track: name };
    // What a track states and the line does not is to be asked of the line.
    const less = (['sights', 'structures', 'flangeways'] as const).filter(
      (lacks) => id === MAIN && !states(own, lacks) && tracks.some((t) => states(t, lacks)),
    );
    const near =
      own.structures === undefined
        ? []
        : toldOfOthersAlone(line, id, from, to).map(
            (what): Unstated => ({ ...whole, lacks: 'structures', near: what }),
          );
    const unstated = [
      ...(own.unstated ?? []),
      ...less.map((lacks): Unstated => ({ ...whole, lacks })),
      ...near,
    ];
    return unstated.length > 0 ? { ...own, unstated } : own;
  });
}

function movesOf(line: Line, ids: readonly string[], begin: Run, train: number): Leg[][] | NoWay {
  const moves: Leg[][] = [];
  let legs: Leg[] = [];
  let run = begin;
  for (let i = 1; i < ids.length; i++) {
    const on = stepTo(line, run, ids[i]);
    if (!('lacks' in on)) {
      legs.push({ ...run, to: on.leaves });
      run = on.run;
      continue;
    }
    const back = on.lacks === 'way' ? setBack(line, run, ids[i], train) : on;
    if ('lacks' in back) return { ...back, at: i };
    moves.push([...legs, { ...run, to: back.stops }]);
    legs = [{ id: run.id, from: back.stops, along: against(run), to: back.tips }];
    run = back.run;
  }
  const { length } = lineOf(line, run.id) as Line;
  const laps = run.id === MAIN && line.loop ? Math.max(1, Math.ceil(run.from / length - 1e-9)) : 1;
  return [...moves, [...legs, { ...run, to: run.along > 0 ? laps * length : 0 }]];
}

const against = ({ along }: Run): 1 | -1 => (along > 0 ? -1 : 1);

type Step = { readonly leaves: number; readonly run: Run } | Pick<NoWay, 'lacks'>;

/** From a run on one track to the next, by points ahead that lie so that they can be taken. */
function stepTo(line: Line, run: Run, next: string): Step {
  const { id, from, along } = run;
  const own = line.tracks?.find((t) => t.id === id);
  const lap = id === MAIN && line.loop ? line.length : 0;
  // Points of the next on this: taken from their tips.
  for (const { joint, enters } of pointsOn(line, id, next)) {
    if (joint.facing !== along > 0) continue;
    const at = (joint.at - from) * along >= -1e-9 ? joint.at : joint.at + lap * along;
    if ((at - from) * along < -1e-9) continue;
    if (!joint.turnout) return { lacks: 'turnout' };
    return { leaves: at, run: enters };
  }
  // This one's last points on the next: left by their tips.
  const joint = along > 0 ? own?.end : own?.start;
  if (joint?.track !== next) return { lacks: 'way' };
  if (!joint.turnout) return { lacks: 'turnout' };
  return { leaves: along > 0 ? (lineOf(line, id) as Line).length : 0, run: leftBy(joint) };
}

/** Points of one track that lie on another, and the run into it from their tips. */
function pointsOn(line: Line, id: string, next: string): { readonly joint: Joint; readonly enters: Run }[] {
  const other: Track | undefined = line.tracks?.find((t) => t.id === next);
  return (['start', 'end'] as const).flatMap((end) => {
    const joint = other?.[end];
    if (!other || joint?.track !== id) return [];
    const enters: Run =
      end === 'start' ? { id: next, from: 0, along: 1 } : { id: next, from: other.line.length, along: -1 };
    return [{ joint, enters }];
  });
}

/** Out over the tips of points onto the track that they lie on. */
const leftBy = ({ track, at, facing }: Joint): Run => ({ id: track, from: at, along: facing ? -1 : 1 });

type Back = { readonly stops: number; readonly tips: number; readonly run: Run } | Omit<NoWay, 'at'>;

/** Drawn clear of points that lead to the next track only when one sets back. */
function setBack(line: Line, run: Run, next: string, train: number): Back {
  const { id, from, along } = run;
  const { length, loop } = lineOf(line, id) as Line;
  const own = line.tracks?.find((t) => t.id === id);
  const lap = id === MAIN && loop ? length : 0;
  const left = along > 0 ? own?.start : own?.end;
  const ways = [
    ...pointsOn(line, id, next)
      .filter(({ joint }) => joint.facing !== along > 0)
      .map(({ joint, enters }) => ({ joint, run: enters, tips: joint.at })),
    ...(left?.track === next ? [{ joint: left, run: leftBy(left), tips: along > 0 ? 0 : length }] : []),
  ];
  const [way] = ways;
  if (!way) return { lacks: 'way' };
  if (!way.joint.turnout) return { lacks: 'turnout' };
  const tips = lap > 0 && (way.tips - from) * along < 0 ? way.tips + lap * along : way.tips;
  const takes = train + BEYOND;
  const clear = tips + along * takes;
  const stops = (clear - from) * along > 0 ? clear : from;
  const room = along > 0 ? length - tips : tips;
  if (lap === 0 && takes > room + 1e-6) return { lacks: 'room', room, takes };
  return { stops, tips, run: way.run };
}
