/** The switch that every mutant stands behind. It is bundled with the code: whoever loads the bundle anew has a new one. */
let chosen = 0;

/** By a mutant's number: whether it was come to since this was last cleared. */
export const reached = new Uint8Array(1 << 17);

export const choose = (mutant: number): void => {
  chosen = mutant;
};

/** Whether this mutant is the one that is tried; the code asks at each place where one stands. */
export const wrong$ = (mutant: number): boolean => {
  reached[mutant] = 1;
  return mutant === chosen;
};
