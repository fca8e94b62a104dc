import type { AirBrake } from './kind.ts';

/** Pressure in the pipe applies; a torn hose loses the whole train's. */
export const straightAir: AirBrake = {
  madeAutomatic: 'automatic-air',
  worked: 'through',
  carries: 'pressure',
  pipe: (applied, { atmosphere, working }) => (applied ? atmosphere + working : atmosphere),
  cylinder: 'straight',
  kept: 'main reservoir',
  // With the train whole the main reservoir still has some applications.
  supplyLost: () => ({ parted: 'lost', engineFails: 'as-set' }),
};
