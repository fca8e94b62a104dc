/** The lists that come along, as examples: a host's own lists win. */
import carBeforeUse from './car-before-use.json' with { type: 'json' };
import poweredBeforeUse from './powered-before-use.json' with { type: 'json' };
import steamDaily from './steam-daily.json' with { type: 'json' };
import storageAndSteamingBay from './storage-and-steaming-bay.json' with { type: 'json' };
import trackWalk from './track-walk.json' with { type: 'json' };

export const exampleLists: Readonly<Record<string, unknown>> = {
  'steam-daily': steamDaily,
  'powered-before-use': poweredBeforeUse,
  'car-before-use': carBeforeUse,
  'track-walk': trackWalk,
  'storage-and-steaming-bay': storageAndSteamingBay,
};
