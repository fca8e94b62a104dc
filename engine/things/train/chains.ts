/** Safety chains that hang on a train, and whether anybody said that they are fastened. */
import type { SafetyChain } from '../vehicle/types.ts';
import type { Train } from './types.ts';

/** The chain at each gap, hung on either vehicle. */
export const hungChains = ({ vehicles }: Pick<Train, 'vehicles'>): (SafetyChain | undefined)[] =>
  vehicles.slice(0, -1).map((v, i) => v.rear.chain ?? vehicles[i + 1].front.chain);

/** A chain hangs at the gap, and nobody said whether chains are fastened: go and look. */
export const unsaidAt = (train: Pick<Train, 'vehicles' | 'chainsFastened'>, gap: number): boolean =>
  train.chainsFastened === undefined && hungChains(train)[gap] !== undefined;
