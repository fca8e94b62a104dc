import { assumptionFindings } from '../assumptions/findings.ts';

/** What this question can find, and the kinds of the facts. */
export const haulFindings = {
  'cannot-start': {
    likelyPull: 'force',
    likelyNeed: 'force',
    fails: 'ratio',
    stretches: 'count',
    places: 'name',
  },
  'slow-on-grade': {},
  'surge-pushed': { vehicles: 'name' },
  'traction-unknown': {},
  assumed: assumptionFindings.assumed as typeof assumptionFindings.assumed,
} as const;
