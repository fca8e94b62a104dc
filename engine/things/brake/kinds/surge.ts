import type { KindOfBrake } from './kind.ts';

/** The coupler pushed in applies; stretched, it is released. */
export const surge: KindOfBrake = {
  worked: 'push',
  supplyLost: () => ({ parted: 'released', engineFails: 'as-set' }),
};
