/** That what is amiss is so by a figure of an example list. Behind what is amiss, wherever that is told. */
export const tellInvented = (invented: boolean | undefined): string =>
  invented ? ': by an example’s limit, which is invented, not published' : '';
