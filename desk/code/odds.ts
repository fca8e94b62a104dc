/**
 * What comes next, by odds, and the coder that spends as few bits on it as it was likely: binary arithmetic coding
 * (Witten, Neal, Cleary 1987) with several contexts mixed in the logistic domain (Mahoney 2005).
 *
 * A code that is read years later on another device must be predicted to the last bit as it was made: nothing here but
 * + − × ÷ of doubles, which every engine rounds alike; no Math.exp, no Math.log. **Never to be changed**: codes on paper
 * would be read no more.
 */
import { once } from '../../engine/base/remember.ts';

/** Places for what was seen in a context; one that is full gives way. */
const SLOT_BITS = 20;
const SLOTS = 1 << SLOT_BITS;
/** So many places are looked through for a context. */
const PROBES = 24;
/** Odds beyond e^±CLIP are taken as that. */
const CLIP = 8;
const STEPS = 4096;
/** What one observation may weigh in a slot that has seen very many, as 1 ÷ count. */
const MOST_SEEN = 60;
const LEARNING = 0.015;

/** e^x for |x| ≤ 20, by its series and squaring. */
function exp(x: number): number {
  const t = x / 1024;
  let e = 1 + t * (1 + (t / 2) * (1 + (t / 3) * (1 + t / 4)));
  for (let i = 0; i < 10; i++) e *= e;
  return e;
}

const squash = (x: number): number => 1 / (1 + exp(-Math.max(-CLIP, Math.min(CLIP, x))));

/** ln(p ÷ (1 − p)) at the middles of equal steps of p: squash turned round, by halving. Only who packs a code waits for it. */
const stretches = once(() =>
  Float64Array.from({ length: STEPS }, (_, i) => {
    const p = (i + 0.5) / STEPS;
    let [low, high] = [-CLIP, CLIP];
    for (let k = 0; k < 30; k++) {
      const middle = (low + high) / 2;
      if (squash(middle) < p) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }),
);

/** Contexts that are mixed at once, at the most. */
const MOST_CONTEXTS = 14;
/** Kinds of symbol: each has its own weights. */
const KINDS = 8;

export const hashed = (a: number, b: number): number => {
  let h = Math.imul(a ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(b + 0x165667b1, 0xc2b2ae35);
  h ^= h >>> 15;
  h = Math.imul(h, 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 0;
};

/** Probabilities of the next bit, learned from all bits before. */
export class Odds {
  /** Whose each place is; the probability of a one there, less a half; and how often it was seen. */
  private readonly owner = new Uint32Array(SLOTS);
  private readonly p = new Float32Array(SLOTS);
  private readonly seen = new Uint8Array(SLOTS);
  private readonly weights = new Float64Array(KINDS * 4 * MOST_CONTEXTS).fill(0.35);
  private readonly stretched = stretches();
  private readonly slots = new Int32Array(MOST_CONTEXTS);
  private readonly inputs = new Float64Array(MOST_CONTEXTS);
  private count = 0;
  private set = 0;
  private mixed = 0.5;

  copy(): Odds {
    const copy = new Odds();
    copy.owner.set(this.owner);
    copy.p.set(this.p);
    copy.seen.set(this.seen);
    copy.weights.set(this.weights);
    return copy;
  }

  /** Probability that the next bit is a one, in 1 … 65535 of 65536. */
  next(kind: number, contexts: readonly number[], node: number): number {
    this.count = contexts.length;
    let known = 0;
    for (let i = 0; i < this.count; i++) {
      const slot = this.slotOf(hashed(contexts[i] + i, node) | 1);
      this.slots[i] = slot;
      const seen = this.seen[slot];
      this.inputs[i] = seen === 0 ? 0 : this.stretched[Math.floor((this.p[slot] + 0.5) * (STEPS - 1) + 0.5)];
      if (seen > 0 && i < 3) known++;
    }
    this.set = (kind * 4 + known) * MOST_CONTEXTS;
    let sum = 0;
    for (let i = 0; i < this.count; i++) sum += this.inputs[i] * this.weights[this.set + i];
    this.mixed = squash(sum);
    const scaled = Math.floor(this.mixed * 65536);
    return Math.min(65520, Math.max(16, scaled));
  }

  private slotOf(context: number): number {
    const first = context >>> (32 - SLOT_BITS);
    for (let i = 0; i < PROBES; i++) {
      const slot = (first + i) & (SLOTS - 1);
      const owner = this.owner[slot];
      if (owner === context >>> 0) return slot;
      if (owner === 0) {
        this.owner[slot] = context;
        return slot;
      }
    }
    this.owner[first] = context;
    this.p[first] = 0;
    this.seen[first] = 0;
    return first;
  }

  learn(bit: number): void {
    const error = (bit - this.mixed) * LEARNING;
    for (let i = 0; i < this.count; i++) {
      const slot = this.slots[i];
      this.weights[this.set + i] += error * this.inputs[i];
      const seen = this.seen[slot];
      this.p[slot] += (bit - 0.5 - this.p[slot]) / (seen + 1.25);
      if (seen < MOST_SEEN) this.seen[slot] = seen + 1;
    }
  }
}

/** Codes a symbol of so many bits and says which it was. */
export interface Coder {
  symbol(value: number, bits: number, kind: number, contexts: readonly number[]): number;
}

abstract class Coding implements Coder {
  private readonly odds: Odds;

  constructor(odds: Odds) {
    this.odds = odds;
  }

  symbol(value: number, bits: number, kind: number, contexts: readonly number[]): number {
    let node = 1;
    for (let i = bits - 1; i >= 0; i--) {
      const ones = this.odds.next(kind, contexts, node);
      const bit = this.bit((value >>> i) & 1, ones);
      this.odds.learn(bit);
      node = node * 2 + bit;
    }
    return node - 2 ** bits;
  }

  /** @param ones probability of a one, of 65536 */
  protected abstract bit(bit: number, ones: number): number;
}

/** Where the interval between low and high is parted. */
const parted = (low: number, high: number, ones: number): number =>
  low + Math.floor((high - low) / 65536) * ones + Math.floor((((high - low) % 65536) * ones) / 65536);

/** Learns and writes nothing: what is known on both sides. */
export class Learner extends Coding {
  protected bit(bit: number): number {
    return bit;
  }
}

export class Writer extends Coding {
  private low = 0;
  private high = 0xffffffff;
  private readonly bytes: number[] = [];

  protected bit(bit: number, ones: number): number {
    const middle = parted(this.low, this.high, ones);
    if (bit === 1) this.high = middle;
    else this.low = middle + 1;
    while ((this.low ^ this.high) >>> 24 === 0) {
      this.bytes.push(this.high >>> 24);
      this.low = (this.low << 8) >>> 0;
      this.high = ((this.high << 8) | 255) >>> 0;
    }
    return bit;
  }

  /** As few bytes as tell the interval: what is read behind the end is nought. */
  end(): Uint8Array {
    let [size, end] = [4, this.high];
    for (const kept of [1, 2, 3]) {
      const low = 2 ** (8 * (4 - kept));
      const cut = Math.floor(this.high / low) * low;
      if (cut >= this.low) {
        [size, end] = [kept, cut];
        break;
      }
    }
    for (let i = 0; i < size; i++) this.bytes.push((end >>> (24 - 8 * i)) & 255);
    return Uint8Array.from(this.bytes);
  }
}

/** The bytes tell no such thing. */
export class Broken extends Error {}

export class Reader extends Coding {
  private low = 0;
  private high = 0xffffffff;
  private at = 0;
  private value = 0;
  private readonly bytes: Uint8Array;
  /** How much may still be read out of it. */
  private left: number;

  /** @param most symbols, at the most */
  constructor(odds: Odds, bytes: Uint8Array, most: number) {
    super(odds);
    this.bytes = bytes;
    this.left = most;
    for (let i = 0; i < 4; i++) this.value = ((this.value << 8) | this.byte()) >>> 0;
  }

  override symbol(value: number, bits: number, kind: number, contexts: readonly number[]): number {
    if (--this.left < 0) throw new Broken();
    return super.symbol(value, bits, kind, contexts);
  }

  private byte(): number {
    const at = this.at++;
    if (at > this.bytes.length + 4) throw new Broken();
    return at < this.bytes.length ? this.bytes[at] : 0;
  }

  protected bit(_: number, ones: number): number {
    const middle = parted(this.low, this.high, ones);
    const is = this.value <= middle ? 1 : 0;
    if (is === 1) this.high = middle;
    else this.low = middle + 1;
    while ((this.low ^ this.high) >>> 24 === 0) {
      this.low = (this.low << 8) >>> 0;
      this.high = ((this.high << 8) | 255) >>> 0;
      this.value = ((this.value << 8) | this.byte()) >>> 0;
    }
    return is;
  }
}
