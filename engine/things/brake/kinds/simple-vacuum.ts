import type { AirBrake } from './kind.ts';

/** Vacuum in the pipe applies; a torn hose loses the whole train's. */
export const simpleVacuum: AirBrake = {
  madeAutomatic: 'automatic-vacuum',
  worked: 'through',
  carries: 'vacuum',
  pipe: (applied, { atmosphere, working }) => (applied ? atmosphere - working : atmosphere),
  cylinder: 'straight',
  supplyLost: () => ({ parted: 'lost', engineFails: 'lost' }),
};
