/**
 * A way over the tracks of a line as one line, for everything else to be answered on: its pieces cut out, turned where they are
 * run against their own distances, and laid one after the other. Chainages are then the way's own, from its beginning.
 */
import { reverseLine } from './geometry.ts';
import { joined, pieceOf } from './pieces.ts';
import { type Joint, type Line, MAIN } from './types.ts';

/** Why there is no such way: at which of its tracks, and what of it. */
export interface NoWay {
  readonly at: number;
  readonly lacks: 'track' | 'way' | 'turnout' | 'heights';
}

/** Running along a track, with its distances or against them. */
interface Run {
  readonly id: string;
  readonly from: number;
  readonly along: 1 | -1;
}

interface Leg extends Run {
  readonly to: number;
}

/** @param ids tracks in the order in which they are run; the line itself forward, from its beginning */
export function wayOver(line: Line, ids: readonly string[]): Line | NoWay {
  const lineOf = (id: string): Line | undefined =>
    id === MAIN ? line : line.tracks?.find((t) => t.id === id)?.line;
  const unknown = ids.findIndex((id) => !lineOf(id));
  if (unknown >= 0 || ids.length === 0) return { at: Math.max(0, unknown), lacks: 'track' };
  const level = ids.findIndex((id) => id !== MAIN && !line.tracks?.some((t) => t.id === id && t.levelled));
  if (level >= 0) return { at: level, lacks: 'heights' };
  const begins: Run[] = [{ id: ids[0], from: 0, along: 1 }];
  if (ids[0] !== MAIN) begins.push({ id: ids[0], from: (lineOf(ids[0]) as Line).length, along: -1 });
  const found = begins.map((run) => legsOf(line, ids, run, lineOf));
  const legs = found.find((f): f is Leg[] => Array.isArray(f));
  if (!legs) return (found as NoWay[]).reduce((a, b) => (b.at > a.at ? b : a));
  const parts = legs
    .filter(({ from, to }) => Math.abs(to - from) > 1e-9)
    .map(({ id, from, to, along }) => {
      const own = lineOf(id) as Line;
      return along > 0 ? pieceOf(own, from, to) : reverseLine(pieceOf(own, to, from));
    });
  const first = legs[0];
  const last = legs[legs.length - 1];
  const closes = line.loop && first.id === MAIN && last.id === MAIN && last.along > 0;
  return { ...joined(parts), name: line.name, loop: closes };
}

function legsOf(
  line: Line,
  ids: readonly string[],
  begin: Run,
  lineOf: (id: string) => Line | undefined,
): Leg[] | NoWay {
  const legs: Leg[] = [];
  let run = begin;
  for (let i = 1; i < ids.length; i++) {
    const on = stepTo(line, run, ids[i], lineOf);
    if ('lacks' in on) return { at: i, lacks: on.lacks };
    legs.push({ ...run, to: on.leaves });
    run = on.run;
  }
  const { length } = lineOf(run.id) as Line;
  const laps = run.id === MAIN && line.loop ? Math.max(1, Math.ceil(run.from / length - 1e-9)) : 1;
  return [...legs, { ...run, to: run.along > 0 ? laps * length : 0 }];
}

type Step = { readonly leaves: number; readonly run: Run } | { readonly lacks: NoWay['lacks'] };

/** From a run on one track to the next, by points ahead that lie so that they can be taken. */
function stepTo(line: Line, run: Run, next: string, lineOf: (id: string) => Line | undefined): Step {
  const { id, from, along } = run;
  const own = line.tracks?.find((t) => t.id === id);
  const other = line.tracks?.find((t) => t.id === next);
  const lap = id === MAIN && line.loop ? line.length : 0;
  // Points of the next on this: taken from their tips.
  for (const end of ['start', 'end'] as const) {
    const joint = other?.[end];
    if (!joint || joint.track !== id || joint.facing !== along > 0) continue;
    const at = (joint.at - from) * along >= -1e-9 ? joint.at : joint.at + lap * along;
    if ((at - from) * along < -1e-9) continue;
    if (!joint.turnout) return { lacks: 'turnout' };
    const enters: Run =
      end === 'start'
        ? { id: next, from: 0, along: 1 }
        : { id: next, from: (lineOf(next) as Line).length, along: -1 };
    return { leaves: at, run: enters };
  }
  // This one's last points on the next: left by their tips.
  const joint: Joint | undefined = along > 0 ? own?.end : own?.start;
  if (joint?.track !== next) return { lacks: 'way' };
  if (!joint.turnout) return { lacks: 'turnout' };
  return {
    leaves: along > 0 ? (lineOf(id) as Line).length : 0,
    run: { id: next, from: joint.at, along: joint.facing ? -1 : 1 },
  };
}
