/** Safety chains that hang on a train, and whether anybody said that they are fastened. */
import type { Coupling, SafetyChain } from '../vehicle/types.ts';
import type { Train } from './types.ts';

/** The chain at each gap, hung on either vehicle. */
export const hungChains = ({ vehicles }: Pick<Train, 'vehicles'>): (SafetyChain | undefined)[] =>
  vehicles.slice(0, -1).map((v, i) => v.rear.chain ?? vehicles[i + 1].front.chain);

/** A chain hangs at the gap, and nobody said whether chains are fastened: go and look. */
export const unsaidAt = (train: Pick<Train, 'vehicles' | 'chainsFastened'>, gap: number): boolean =>
  train.chainsFastened === undefined && hungChains(train)[gap] !== undefined;

const without = <T extends object, K extends keyof T>(of: T, keys: readonly K[]): Omit<T, K> =>
  Object.fromEntries(Object.entries(of).filter(([key]) => !keys.includes(key as K))) as Omit<T, K>;

/** The same values, each by itself. */
const shallow = (a: object, b: object): boolean => {
  const keys = Object.keys(a) as (keyof typeof a)[];
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
};

const coupled = (a: Coupling, b: Coupling): boolean =>
  a === b || shallow(without(a, ['chain']), without(b, ['chain']));

/** Nothing differs but, perhaps, safety chains. */
export const sameButChains = (a: Train, b: Train): boolean =>
  a === b ||
  (shallow(without(a, ['vehicles', 'chainsFastened']), without(b, ['vehicles', 'chainsFastened'])) &&
    a.vehicles.length === b.vehicles.length &&
    a.vehicles.every((v, i) => {
      const w = b.vehicles[i];
      return (
        v === w ||
        (shallow(without(v, ['front', 'rear']), without(w, ['front', 'rear'])) &&
          coupled(v.front, w.front) &&
          coupled(v.rear, w.rear))
      );
    }));

/** The same safety chains at the same ends. */
export const sameChains = (a: Train, b: Train): boolean =>
  a === b ||
  (a.chainsFastened === b.chainsFastened &&
    a.vehicles.length === b.vehicles.length &&
    a.vehicles.every(
      (v, i) => v.front.chain === b.vehicles[i].front.chain && v.rear.chain === b.vehicles[i].rear.chain,
    ));
