/**
 * What is told of one track of a line and stands near another: a wall between two roads, a bridge over both. Beside the other
 * one it is as near, and only a rule tells how near.
 */
import { type Frame, framesFrom, spotOf, within } from './frames.ts';
import { type Line, MAIN, type Structure } from './types.ts';

/** Nearer to the middle of a track than this it may stand in the way of people on it, m. */
const NEAR = 1.5;
/** Between the places that are looked at, m: between two of them nothing comes nearer by more than 2 cm. */
const STEP = 0.5;

const ORIGIN: Frame = { x: 0, y: 0, cos: 1, sin: 0 };

const evenly = (from: number, to: number): number[] => {
  const count = Math.max(1, Math.ceil((to - from) / STEP));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
};

/**
 * Structures of other tracks near a piece of one whose own paper has none of that name. Tracks whose points are not measured
 * are left out: nobody knows where they lie.
 *
 * @returns names, each once
 */
export function toldOfOthersAlone(line: Line, id: string, from: number, to: number): string[] {
  const all = [{ id: MAIN, line }, ...(line.tracks ?? [])];
  const own = all.find((t) => t.id === id)?.line;
  if (!own || all.every((t) => t.id === id || !t.line.structures?.length)) return [];
  const frames = framesFrom(line, id, ORIGIN);
  const along = evenly(Math.min(from, to), Math.max(from, to)).map((s) => spotOf(own, s));
  const known = new Set(own.structures?.map(({ name }) => name));
  const found = all.flatMap((other) => {
    const frame = frames.of.get(other.id);
    if (!frame || other.id === id) return [];
    return (other.line.structures ?? [])
      .filter(({ name }) => !known.has(name))
      .filter((s) =>
        facesOf(other.line, s, frame, frames.about).some(([x, y]) =>
          along.some((p) => Math.hypot(p.x - x, p.y - y) < NEAR),
        ),
      )
      .map(({ name }) => name);
  });
  return [...new Set(found)];
}

/** Places of its nearest face; of what hangs over its track alone, of the middle of that. */
function facesOf(line: Line, structure: Structure, frame: Frame, about: number): [number, number][] {
  const { from, side, distance = 0 } = structure;
  const to = structure.to < from && line.loop ? structure.to + line.length : structure.to;
  const lap = line.loop ? Math.round((about - from) / line.length) * line.length : 0;
  const offs = side === 'both' ? [distance, -distance] : [side === 'left' ? distance : -distance];
  return evenly(from, to).flatMap((s) => {
    const { x, y, cos, sin } = within(frame, spotOf(line, s + lap));
    return offs.map((off): [number, number] => [x - off * sin, y + off * cos]);
  });
}
