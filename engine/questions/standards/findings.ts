/** What this question can find, and the kinds of the facts. */
import { standardKeys } from '../../outing/types.ts';

type Of = typeof standardKeys;
const common: {
  readonly of: Of;
  readonly side: readonly ['least', 'most'];
  readonly wheelset: 'name';
  readonly end: readonly ['front', 'rear', ''];
  readonly others: 'number';
} = {
  of: standardKeys,
  side: ['least', 'most'],
  wheelset: 'name',
  end: ['front', 'rear', ''],
  others: 'number',
};

export const standardFindings = {
  'standard-refused': common as typeof common,
  'standard-slow': { ...common, 'speed?': 'speed' } as typeof common & { readonly 'speed?': 'speed' },
  'coupler-kind-refused': { end: ['front', 'rear'], kind: 'name', kinds: 'name', others: 'number' } as {
    readonly end: readonly ['front', 'rear'];
    readonly kind: 'name';
    readonly kinds: 'name';
    readonly others: 'number';
  },
  'coupler-kind-unknown': { vehicles: 'name', kinds: 'name' } as {
    readonly vehicles: 'name';
    readonly kinds: 'name';
  },
  'outside-profile': { across: 'length', height: 'length', others: 'number' } as {
    readonly across: 'length';
    readonly height: 'length';
    readonly others: 'number';
  },
  'outline-not-measured': { vehicles: 'name' } as { readonly vehicles: 'name' },
  'no-profile-of-gauge': { gauge: 'length', others: 'number' } as {
    readonly gauge: 'length';
    readonly others: 'number';
  },
  'standard-not-measured': { of: standardKeys, vehicles: 'name' } as {
    readonly of: Of;
    readonly vehicles: 'name';
  },
};
