/** What this question can find, and the kinds of the facts. */
export const assumptionFindings = {
  assumed: { of: 'name', where: 'name', key: 'name' },
} as const;
