/** What this question can find, and the kinds of the facts. */
export const chainFindings = {
  'chain-too-weak': {
    by: 'name',
    way: ['rule', 'steady', 'stretch', 'snatch', 'spent'],
    others: 'number',
    'shares?': ['one', 'known', 'not known'],
    'slack?': 'length',
    'pull?': 'force',
    'tail?': ['braked', 'runs'],
    'closer?': 'length',
    'breaks?': 'force',
  },
  'chain-strength-unknown': { way: ['size', 'part'], others: 'number', 'part?': 'name', 'bears?': 'force' },
} as const;
