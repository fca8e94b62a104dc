/** The lists that come along, as examples: a host's own lists win. */
import afterDerailment from './after-derailment.json' with { type: 'json' };
import afterRepair from './after-repair.json' with { type: 'json' };
import brakedCarMeasured from './braked-car-measured.json' with { type: 'json' };
import carBeforeUse from './car-before-use.json' with { type: 'json' };
import carriedBeforeUse from './carried-before-use.json' with { type: 'json' };
import firstAidAndFire from './first-aid-and-fire.json' with { type: 'json' };
import poweredBeforeUse from './powered-before-use.json' with { type: 'json' };
import signalsAndPoints from './signals-and-points.json' with { type: 'json' };
import steamDaily from './steam-daily.json' with { type: 'json' };
import steamMeasured from './steam-measured.json' with { type: 'json' };
import storageAndSteamingBay from './storage-and-steaming-bay.json' with { type: 'json' };
import trackWalk from './track-walk.json' with { type: 'json' };

export const exampleLists: Readonly<Record<string, unknown>> = {
  'steam-daily': steamDaily,
  'powered-before-use': poweredBeforeUse,
  'car-before-use': carBeforeUse,
  'carried-before-use': carriedBeforeUse,
  'track-walk': trackWalk,
  'signals-and-points': signalsAndPoints,
  'storage-and-steaming-bay': storageAndSteamingBay,
  'first-aid-and-fire': firstAidAndFire,
  'after-derailment': afterDerailment,
  'after-repair': afterRepair,
  'braked-car-measured': brakedCarMeasured,
  'steam-measured': steamMeasured,
};
