import { assumptionFindings } from '../assumptions/findings.ts';
import { balanceFindings } from '../balance/findings.ts';

/** What this question can find, and the kinds of the facts; flanges under peaks as under steady forces. */
export const couplerFindings = {
  'coupler-overloaded': { way: ['steady', 'peak'], scenario: 'handling', known: 'yes or no' },
  'coupler-strength-unknown': { scenario: 'handling', gaps: 'number' },
  'coupler-jerk-tips': { way: 'way of running' },
  assumed: assumptionFindings.assumed as typeof assumptionFindings.assumed,
  'flange-may-climb': balanceFindings['flange-may-climb'] as (typeof balanceFindings)['flange-may-climb'],
  'flange-shape-unknown': balanceFindings[
    'flange-shape-unknown'
  ] as (typeof balanceFindings)['flange-shape-unknown'],
} as const;
