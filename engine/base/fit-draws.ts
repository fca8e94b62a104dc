/**
 * Positions of figures that were measured together, drawn together.
 *
 *   p = T(Φ(Σ f·z / |f|))
 *
 * z independent normal numbers of the fit, f the figure's row of the Cholesky factor of their correlations, Φ the normal share,
 * T the triangle's position (spread.ts): each figure by itself is drawn as any other, and two of them go together as the
 * fit says. Source: a normal copula (Sklar's theorem; R. Nelsen, An Introduction to Copulas, from memory).
 */
import { normalDeviate, normalShare } from './numerics/normal.ts';
import type { SharedFit } from './quantity.ts';
import { hash, seeded, triangular } from './spread.ts';

interface Stream {
  readonly draw: () => number;
  z: number;
  /** Number of the draw that it stands at. */
  at: number;
}

/** Uniform numbers are whole ÷ 2³²: half a step on there is neither 0 nor 1. */
const HALF_STEP = 2 ** -33;

export class FitDraws {
  readonly #seed: number;
  readonly #streams = new Map<string, Stream[]>();
  #at = 0;

  constructor(seed: number) {
    this.#seed = seed;
  }

  next(): void {
    this.#at++;
  }

  position({ id, factors }: SharedFit): number {
    const streams = this.#streamsOf(id, factors.length);
    let [sum, square] = [0, 0];
    factors.forEach((f, k) => {
      sum += f * this.#normal(streams[k]);
      square += f * f;
    });
    return triangular(normalShare(sum / Math.sqrt(square)));
  }

  /** One stream for each normal number: who asks for fewer of them leaves the others as they were. */
  #streamsOf(id: string, least: number): Stream[] {
    const known = this.#streams.get(id) ?? [];
    for (let k = known.length; k < least; k++)
      known.push({ draw: seeded(this.#seed + hash(`${id} ${k}`)), z: 0, at: 0 });
    this.#streams.set(id, known);
    return known;
  }

  #normal(stream: Stream): number {
    for (; stream.at < this.#at; stream.at++) stream.z = normalDeviate(stream.draw() + HALF_STEP);
    return stream.z;
  }
}
