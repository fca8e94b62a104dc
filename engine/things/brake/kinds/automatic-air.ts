import type { AirBrake } from './kind.ts';

/** The pipe falls, and each car's reservoir fills its cylinder; leaks off with time. */
export const automaticAir: AirBrake = {
  worked: 'through',
  carries: 'pressure',
  pipe: (applied, { atmosphere, charge }) => (applied ? atmosphere : atmosphere + charge),
  cylinder: 'triple valve',
  kept: 'car reservoir',
  guardsValve: true,
  supplyLost: () => ({ parted: 'applies', engineFails: 'applies' }),
};
