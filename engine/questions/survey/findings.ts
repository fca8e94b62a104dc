/** What this question can find, and the kinds of the facts. */
export const surveyFindings = {
  'heights-poor': { quality: ['gps', 'assumed'] },
} as const;
