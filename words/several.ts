/** "1 curve", "3 curves" */
export const several = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;
