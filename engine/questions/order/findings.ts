/** What this question can find, and the kinds of the facts. */
export const orderFindings = {
  'out-of-date': { what: 'in date', of: 'name', 'last?': 'name' },
  'not-shown': { what: 'in date', of: 'name' },
  'in-grace': { what: 'in date', of: 'name', 'last?': 'name' },
  'not-signed-for-this': {
    what: 'in date',
    of: 'name',
    why: ['line', 'gauge', 'engine', 'weight', 'power', 'by'],
    'engine?': 'name',
    'accepted?': 'name',
  },
  'defect-open': { what: 'name', of: 'name', since: 'name', 'invented?': 'yes or no' },
  'ground-amiss': {
    ground: 'ground',
    what: 'name',
    of: 'name',
    since: 'name',
    rejects: 'yes or no',
    'invented?': 'yes or no',
  },
  'line-closed': { why: 'name', since: 'name' },
  'line-slow': { why: 'name', since: 'name' },
  'limit-off-line': { why: 'name', since: 'name', end: 'length' },
} as const;
