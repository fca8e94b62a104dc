/**
 * Uniform numbers for n rows of which every column falls once into each of n equal parts (a Latin hypercube).
 *
 *   u_ij = (π_j(i) + r_ij)/n      π_j a shuffle of 0 … n − 1 of its own for column j, r uniform in [0, 1)
 *
 * Each number is uniform as before; what adds up from many of them has its percentiles told nearer by the same n rows. Source:
 * McKay, Beckman and Conover, Technometrics 21 (1979), 239 ff.
 */
import { seeded } from './spread.ts';

export class Latin {
  readonly #rows: number;
  readonly #uniform: () => number;
  readonly #columns: Float64Array[] = [];
  #row = -1;
  #column = 0;

  constructor(seed: number, rows: number) {
    this.#rows = rows;
    this.#uniform = seeded(seed);
  }

  /** Begin the next row; after the last the first comes again. */
  next(): void {
    this.#row = (this.#row + 1) % this.#rows;
    this.#column = 0;
  }

  /** The next number of the row. */
  draw(): number {
    const j = this.#column++;
    this.#columns[j] ??= this.#shuffled();
    return this.#columns[j][this.#row];
  }

  /** Fisher and Yates. */
  #shuffled(): Float64Array {
    const n = this.#rows;
    const column = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const j = Math.floor(this.#uniform() * (i + 1));
      column[i] = column[j];
      column[j] = (i + this.#uniform()) / n;
    }
    return column;
  }
}
