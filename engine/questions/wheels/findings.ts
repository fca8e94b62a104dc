import { type Wearing, wearingKeys } from '../../things/wheel/wear.ts';

/** What this question can find, and the kinds of the facts. */
const pair = {
  wheelset: 'name',
  place: 'name',
  back: 'length',
  flange: 'length',
  others: 'number',
} as const;
const guarded: typeof pair & { readonly known: readonly ['measured', 'by gap'] } = {
  ...pair,
  known: ['measured', 'by gap'],
};

export const wheelFindings = {
  'wheel-strikes-frog': guarded as typeof guarded,
  'wheelset-binds-at-guard': {
    wheelset: 'name',
    place: 'name',
    others: 'number',
    known: ['measured', 'by gap'],
  },
  'wheelset-binds-in-gauge': pair as typeof pair,
  'wheel-drops-in': { wheelset: 'name', widening: 'length', others: 'number' },
  'flange-strikes-floor': { wheelset: 'name', place: 'name', others: 'number' },
  'back-to-back-varies': { wheelset: 'name', least: 'length', most: 'length', others: 'number' },
  'wheel-worn': { wheelset: 'name', of: wearingKeys, others: 'number' } as {
    readonly wheelset: 'name';
    readonly of: readonly Wearing[];
    readonly others: 'number';
  },
  'wheel-wears-out': { wheelset: 'name', of: wearingKeys, rate: 'length', others: 'number' } as {
    readonly wheelset: 'name';
    readonly of: readonly Wearing[];
    readonly rate: 'length';
    readonly others: 'number';
  },
  'wheel-diameters-differ': { wheelset: 'name', others: 'number' },
  'frame-binds-in-curve': { group: 'name', play: 'length', widening: 'length', radius: 'length' },
  'wheels-aslant-bind': { group: 'name', widening: 'length', radius: 'length' },
  'wheels-not-measured': {
    vehicles: 'name',
    of: ['back to back', 'flange thickness', 'flange height', 'width'],
    'narrowest?': 'length',
  } as {
    readonly vehicles: 'name';
    readonly of: readonly ['back to back', 'flange thickness', 'flange height', 'width'];
    readonly 'narrowest?': 'length';
  },
  'flangeways-not-measured': { places: 'number' },
} as const;
