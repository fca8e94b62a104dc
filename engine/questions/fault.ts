/** A fault inside a question, told of whichever it is. */
export const faultFindings = {
  'question-failed': { asked: 'name', message: 'name' },
} as const;
