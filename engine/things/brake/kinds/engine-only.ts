import type { KindOfBrake } from './kind.ts';

/** Steam, motor or hand of the engine alone: cars run free. */
export const engineOnly: KindOfBrake = {
  worked: 'engine',
  supplyLost: ({ parking }) => ({ parted: 'as-set', engineFails: parking ? 'as-set' : 'unknown' }),
};
