import { assumptionFindings } from '../assumptions/findings.ts';

/** What the driver's brakes have to say, and the kinds of the facts. */
export const brakeGearFindings = {
  'no-brake-answers': { fitted: 'yes or no', 'why?': 'why no brake', 'gears?': 'name' },
  'brake-force-unknown': { gear: 'name', kind: 'brake kind', why: 'why no brake' },
  'brake-not-worked-by-driver': {
    gear: 'name',
    kind: 'brake kind',
    why: 'why no brake',
    vehicles: 'name',
  },
  'brake-kinds-do-not-work-together': { kind: 'brake kind', why: 'why no brake', vehicles: 'name' },
  'brake-pipe-broken': { kind: 'brake kind', why: 'why no brake', vehicles: 'name' },
  'wheels-slide': {
    gear: 'name',
    likely: 'yes or no',
    eased: 'yes or no',
    rail: 'rail',
    share: 'ratio',
    'gauge?': 'gauge',
    'others?': 'number',
    'dayRail?': 'rail',
    'dayShare?': 'ratio',
    'dayGauge?': 'gauge',
    'stop?': 'length',
    'held?': 'length',
    'speed?': 'speed',
  },
  'vacuum-limited-by-air': { air: 'pressure' },
  'not-braked': { cars: 'name' },
} as const;

/** What the parts of the brakes have to say: how they fill, hold and fail. */
export const brakePartFindings = {
  assumed: assumptionFindings.assumed as typeof assumptionFindings.assumed,
  'brake-slow-to-fill': { kind: 'brake kind', first: 'time', t10: 'time' },
  'brake-slower-than-stated': { gear: 'name', kind: 'brake kind' },
  'brake-slow-to-release': { kind: 'brake kind', ends: 'yes or no' },
  'brake-part-unknown': { part: 'name', kind: 'brake kind' },
  'reservoir-too-small': { kind: 'brake kind', cars: 'number', pressure: 'gauge' },
  'brake-stronger-than-stated': { kind: 'brake kind', cars: 'number', pressure: 'gauge' },
  'few-applications': { kind: 'brake kind', useful: 'number', reservoirs: 'number' },
  'leaks-off-before-time': { pull: 'force', unmeasured: 'number' },
  'leak-unknown': { gear: 'name', kind: 'brake kind', gears: 'number' },
  'brake-ratio-uneven': { weak: 'name', least: 'ratio' },
  'slides-first': { group: 'name', empty: 'ratio', order: 'name' },
  'brake-lost-with-hose': {
    kind: 'brake kind',
    cars: 'number',
    engineFails: 'supply lost',
    'applications?': 'number',
  },
  'supply-loss-unknown': {
    kind: 'brake kind',
    cars: 'number',
    engineFails: 'supply lost',
    'applications?': 'number',
  },
} as const;
