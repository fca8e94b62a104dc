/** What the engine says of a wheelset of the last vehicle, in the witness's words. */
import { openOuting } from '../../../engine/outing/open.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { askWheels } from '../../../engine/questions/wheels/ask.ts';

const codes = {
  frog: 'wheel-strikes-frog',
  guard: 'wheelset-binds-at-guard',
  gauge: 'wheelset-binds-in-gauge',
  tread: 'wheel-drops-in',
} as const;

export function lookAt(outing: Outing) {
  const { findings, data } = askWheels(openOuting(outing));
  const last = outing.train.vehicles.at(-1)?.id;
  const fit = data.wheelsets.find((w) => w.vehicle === last);
  const of = Object.keys(codes) as (keyof typeof codes)[];
  return {
    left: Object.fromEntries(of.map((o) => [o, fit?.[o]?.left])) as Record<
      keyof typeof codes,
      number | undefined
    >,
    /** By any wheelset of the train. */
    forbidden: new Set(
      of.filter((o) => findings.some((f) => f.code === codes[o] && f.severity === 'forbids')),
    ),
  };
}
