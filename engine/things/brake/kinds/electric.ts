import type { KindOfBrake } from './kind.ts';

/** Current along the train works it; without current it does as it is wired. */
export const electric: KindOfBrake = {
  worked: 'through',
  carries: 'current',
  supplyLost: ({ onSupplyLoss }) => {
    const wired = onSupplyLoss ?? 'unknown';
    return { parted: wired, engineFails: wired };
  },
};
