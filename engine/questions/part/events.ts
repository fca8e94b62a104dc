/** What half a train meets as it rolls: the end of the line, a whole lap, the following train, places, a curve too fast. */
import { wrapCell } from './ground.ts';
import type { Part } from './part.ts';
import type { Roll, Traffic } from './types.ts';

/** Slower than this against the running direction a place is not run through, m/s. */
const WALKING = 0.1;

/** Does something at this node end the reckoning? Notes places on the way. */
export function meets(
  part: Part,
  way: 1 | -1,
  node: number,
  u: number,
  v: number,
  time: number,
  start: number,
  traffic: Traffic,
  out: Roll,
): boolean {
  const at = node * part.step;
  const j = wrapCell(part.loop, part.cells, node);
  if (part.tip.length > 0 && u > part.tip[j]) return ends(out, 'overturns');
  if (part.loop && Math.abs(at - start) >= part.cells * part.step) return ends(out, 'runs-round');
  if (way > 0 ? node >= part.mostNode : node <= part.leastNode) return ends(out, 'leaves-line');
  if (way > 0) return false;
  if (traffic.followsAt > 0 && at - part.rear <= start + traffic.followsAt * (time - traffic.followsAfter)) {
    return ends(out, 'meets-following');
  }
  notePlace(part, j, v, start, out);
  return false;
}

function ends(out: Roll, outcome: Roll['outcome']): true {
  out.outcome = outcome;
  return true;
}

/** The first place that its rear runs through against the running direction, unless it parted there. */
function notePlace(part: Part, j: number, v: number, start: number, out: Roll): void {
  const place = part.placeAtRear[j];
  if (place < 0 || out.place >= 0 || v < WALKING) return;
  if (place === part.placeAtRear[wrapCell(part.loop, part.cells, Math.round(start / part.step))]) return;
  out.place = place;
  out.placeSpeed = v;
}
