import type { AirBrake } from './kind.ts';

/** Losing the vacuum of the pipe applies, by what each chamber keeps; leaks off with time. */
export const automaticVacuum: AirBrake = {
  worked: 'through',
  carries: 'vacuum',
  pipe: (applied, { atmosphere, working }) => (applied ? atmosphere : atmosphere - working),
  cylinder: 'ball valve',
  guardsValve: true,
  supplyLost: () => ({ parted: 'applies', engineFails: 'applies' }),
};
