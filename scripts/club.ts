/** npm run club: writes the year of an invented club's records anew. */
import { writeFileSync } from 'node:fs';
import { clubPath, reckoning, SEED } from './club/outings.ts';
import { clubYear } from './club/year.ts';

writeFileSync(clubPath, await clubYear({ seed: SEED, ready: reckoning() }));
