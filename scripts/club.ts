/** npm run club: writes the year of an invented club's records anew, and the outing of its last day. */
import { writeFileSync } from 'node:fs';
import { clubPath, reckoning, SEED, sundayPath, sundayText } from './club/outings.ts';
import { clubYear } from './club/year.ts';

writeFileSync(clubPath, await clubYear({ seed: SEED, ready: reckoning() }));
writeFileSync(sundayPath, await sundayText());
