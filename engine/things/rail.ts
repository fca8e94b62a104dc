/** What the rails are like today. */
export const railStates = ['dry', 'damp', 'wet', 'greasy', 'sanded'] as const;
export type RailState = (typeof railStates)[number];
