/** Makes the tests' way of loading modules (load-ts.mjs) that of this process. */
import { register } from 'node:module';

process.setSourceMapsEnabled(true);
register('./load-ts.mjs', import.meta.url);
