/** Where a train stands while nobody moves it. */
import type { Outing } from '../../engine/outing/types.ts';

/** Where the train stands on a still picture: at its first station, on a line with ends whole on the line. */
export function stillHead(outing: Outing, length: number): number {
  const { line } = outing;
  const stations = line.places.filter((p) => p.kind === 'station');
  const forward = outing.direction === 'forward';
  const first = forward ? stations[0] : stations[stations.length - 1];
  const at = first && (forward ? (first.to ?? first.at) : first.at);
  const whole = forward ? length : line.length - length;
  if (line.loop) return at ?? Math.min(line.length, Math.max(0, whole));
  const stands = at ?? whole;
  return Math.min(line.length, Math.max(0, forward ? Math.max(stands, whole) : Math.min(stands, whole)));
}
