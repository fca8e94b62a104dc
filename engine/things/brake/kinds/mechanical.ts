import type { KindOfBrake } from './kind.ts';

/** Hand, guard's or rail-shoe brake: a person on that vehicle works it, and it keeps what it is set to. */
export const mechanical: KindOfBrake = {
  worked: 'arm',
  supplyLost: () => ({ parted: 'as-set', engineFails: 'as-set' }),
};
