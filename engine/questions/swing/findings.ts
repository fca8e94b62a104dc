import { assumptionFindings } from '../assumptions/findings.ts';

const bend = {
  end: ['front', 'rear'],
  other: 'name',
  lie: 'lie',
  bar: 'length',
  play: 'angle',
  others: 'number',
} as const;
const unstated: typeof bend & { readonly shanks: readonly ['known', 'assumed'] } = {
  ...bend,
  shanks: ['known', 'assumed'],
};

/** What this question can find, and the kinds of the facts. */
export const swingFindings = {
  'coupler-swing-short': bend as typeof bend,
  'coupler-swing-unknown': unstated as typeof unstated,
  assumed: assumptionFindings.assumed as typeof assumptionFindings.assumed,
} as const;
