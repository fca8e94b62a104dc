/**
 * Places along the line by what a driver sees there: a named place, else the distance from the nearest one, else
 * chainage. Never on the wrong side: what must be done by a place is told no later, what must last until it no earlier.
 */
import { senseOf } from '../engine/answer/chainage.ts';
import { chainage, distance, type Voice } from './voice.ts';

/** So near a landmark is at it, m. */
const AT = 6;
/** Farther from any landmark nobody judges by it, m. */
const REACH = 45;

interface Landmark {
  readonly name: string;
  /** m in the running direction; negative: it is passed already. */
  readonly ahead: number;
}

/** @param side `early`: no later than the place; `late`: no earlier */
export function landmark(voice: Voice, metres: number, side: 'early' | 'late'): string {
  const near = landmarksAround(voice, metres);
  const at = near.find(({ ahead }) =>
    side === 'early' ? ahead <= 0 && ahead >= -AT : ahead >= 0 && ahead <= AT,
  );
  if (at) return `at ${at.name}`;
  const [nearest] = near;
  if (!nearest) return `at ${sideways(voice, metres, side)}`;
  const { ahead, name } = nearest;
  const more = ahead > 0 === (side === 'early');
  const off = distance(voice, Math.abs(ahead), more ? 'up' : 'down');
  return Number.parseFloat(off) === 0 ? `at ${name}` : `${off} ${ahead > 0 ? 'before' : 'past'} ${name}`;
}

/** A chainage rounded toward the side asked for, whichever way the train runs. */
export const sideways = (voice: Voice, metres: number, side: 'early' | 'late'): string =>
  chainage(voice, metres, (voice.outing.direction === 'forward') === (side === 'early') ? 'down' : 'up');

/** Nearest first; a curve only where no place is near, and where no other is like it. */
function landmarksAround(voice: Voice, metres: number): Landmark[] {
  const { outing } = voice;
  const { line } = outing;
  const sense = senseOf(outing);
  const ahead = (at: number): number => {
    const d = sense * (at - metres);
    if (!line.loop) return d;
    const round = ((d % line.length) + line.length) % line.length;
    return round > line.length / 2 ? round - line.length : round;
  };
  const seen = ({
    at,
    to,
    name,
  }: {
    readonly at: number;
    readonly to?: number;
    readonly name: string;
  }): Landmark[] => {
    if (to === undefined) return [{ name, ahead: ahead(at) }];
    const [near, far] = sense > 0 ? [at, to] : [to, at];
    return [
      { name, ahead: ahead(near) },
      { name: `the end of ${name}`, ahead: ahead(far) },
    ];
  };
  const nearest = (list: readonly Landmark[]): Landmark[] =>
    list
      .filter((mark) => Math.abs(mark.ahead) <= REACH)
      .sort((a, b) => Math.abs(a.ahead) - Math.abs(b.ahead));
  const places = nearest(line.places.flatMap(seen));
  return places.length > 0 ? places : nearest(curves(voice).flatMap(seen));
}

function curves(voice: Voice): { name: string; at: number; to: number }[] {
  const arcs = voice.outing.line.curves
    .filter((c) => c.startCurvature === c.endCurvature && c.startCurvature !== 0)
    .map((c) => ({
      name: `the ${distance(voice, 1 / Math.abs(c.startCurvature), 'nearest').replace('.0 ', ' ')} curve`,
      at: c.from,
      to: c.to,
    }));
  return arcs.filter(({ name }) => arcs.filter((other) => other.name === name).length === 1);
}
