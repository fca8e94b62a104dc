/** How far is seen today, whatever the line would let one see: in fog, smoke, rain, or by the engine's own light. */
import type { Outing } from './types.ts';

export interface SeenToday {
  /** Clear track from the driver's seat, m. */
  readonly distance: number;
  /** Else it is assumed: after dark, where nobody has said it. */
  readonly stated: boolean;
}

/** Undefined: as far as the line lets one see. A host that asks for no lights by night has a line that is lit. */
export function seenToday({
  conditions,
  host,
  assumed,
}: Pick<Outing, 'conditions' | 'host' | 'assumed'>): SeenToday | undefined {
  if (conditions.visibility !== undefined) return { distance: conditions.visibility, stated: true };
  const lit = host.lightsAtNight?.value === false;
  return conditions.night && !lit ? { distance: assumed.nightSight, stated: false } : undefined;
}
