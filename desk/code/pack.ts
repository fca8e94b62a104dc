/**
 * Any paper in as few bytes as can be: its keys and values one after another, each by the odds of what stood in such a
 * place before. Both sides first learn the primer: papers as they are typically written, which cost nothing any more.
 *
 * It knows no field: what a paper may hold can grow, and an old code is read as it was made. Nothing is left out or
 * rounded: texts and figures come back letter by letter.
 */
import primer from '../../data/code-primer.json' with { type: 'json' };
import { Broken, type Coder, hashed, Learner, Odds, Reader, Writer } from './odds.ts';

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** Kinds of symbol. */
const [KEY, TYPE, LETTER, DIGIT] = [0, 1, 2, 3];
const types = ['null', 'false', 'true', 'number', 'text', 'list', 'group', 'again', 'end'] as const;
type Type = (typeof types)[number];

const typeOf = (value: Json): Type =>
  value === null
    ? 'null'
    : Array.isArray(value)
      ? 'list'
      : typeof value === 'object'
        ? 'group'
        : typeof value === 'string'
          ? 'text'
          : typeof value === 'number'
            ? 'number'
            : value
              ? 'true'
              : 'false';

const KEY_BITS = 8;
/** Instead of a key: no more of them; one that has not been met yet. */
const [LAST, SPELLED] = [0, 1];

/** Bytes of a text, and what ends it; that byte in a text stands behind another. */
const [END, RAW] = [0, 1];
const MOST_DEEP = 40;
/** Parts and letters, all in all, in what is read: more is no outing, however small it was packed. */
const MOST_SIZE = 1_000_000;
/** Symbols of which it is read. */
const MOST_SYMBOLS = 250_000;

const textHash = (text: string, from = 7): number => {
  let h = from;
  for (let i = 0; i < text.length; i++) h = hashed(h, text.charCodeAt(i));
  return h;
};

/** Where a value stands. */
interface At {
  /** By the keys that lead there. */
  readonly path: number;
  readonly key: number;
  /** What stood last in the same group. */
  readonly before: number;
  readonly deep: number;
}

interface Stood {
  readonly value: Json;
  readonly hash: number;
  readonly text: string;
}
const NOTHING: Stood = { value: null, hash: 1, text: '' };

/** What both sides know of what was coded so far. */
class Shared {
  protected readonly keys: string[];
  protected readonly numbers: Map<string, number>;
  /** What stood last in each place. */
  private readonly last: Map<number, Stood>;
  protected readonly coder: Coder;

  constructor(coder: Coder, known?: Shared) {
    this.coder = coder;
    this.keys = known ? [...known.keys] : ['', ''];
    this.numbers = new Map(known?.numbers);
    this.last = new Map(known?.last);
  }

  protected lastAt = (at: At): Stood => this.last.get(at.path) ?? NOTHING;

  protected stood(at: At, value: Json, text: string): number {
    const hash = textHash(text, 11);
    this.last.set(at.path, { value, hash, text });
    return hash;
  }

  protected met(key: string): number {
    const number = this.keys.length;
    if (number < 2 ** KEY_BITS) {
      this.keys.push(key);
      this.numbers.set(key, number);
    }
    return number;
  }

  protected type(type: Type | undefined, at: At): Type {
    const last = this.lastAt(at);
    const was = last.value === null ? 0 : 1 + types.indexOf(typeOf(last.value));
    const { path, key, before } = at;
    const got = this.coder.symbol(type === undefined ? 0 : types.indexOf(type), 4, TYPE, [
      hashed(path, 20),
      hashed(hashed(path, before), 21),
      hashed(hashed(path, was), 22),
      hashed(key, 23),
      hashed(hashed(path, last.hash), 24),
      hashed(hashed(key, before), 25),
    ]);
    if (got >= types.length) throw new Broken();
    return types[got];
  }

  protected key(number: number | undefined, at: At, before: number, last: readonly number[]): number {
    const { path } = at;
    const [one, two] = last;
    return this.coder.symbol(number ?? 0, KEY_BITS, KEY, [
      hashed(hashed(path, one), 30),
      hashed(hashed(hashed(path, one), two), 31),
      hashed(hashed(hashed(path, one), before), 32),
      hashed(hashed(at.key, one), 33),
      hashed(one, 34),
      hashed(hashed(hashed(path, one), this.lastAt(at).hash), 35),
      hashed(path, 36),
    ]);
  }

  /** One byte after another, to the end of the text. */
  protected letters(bytes: readonly number[] | undefined, at: At, kind: number): number[] {
    const last = this.lastAt(at);
    const was = last.text;
    const { path, key, before } = at;
    const got: number[] = [];
    let [whole, word, wordBefore, one, two, three, four] = [5, 0, 0, 0, 0, 0, 0];
    let same = 1;
    for (let i = 0; ; i++) {
      const next = i < was.length ? was.charCodeAt(i) : 0;
      const then = i + 1 < was.length ? was.charCodeAt(i + 1) : 0;
      const byte = this.coder.symbol(bytes ? (bytes[i] ?? END) : 0, 8, kind, [
        hashed(hashed(path, whole), 1),
        hashed(hashed(hashed(path, last.hash), whole), 2),
        hashed(hashed(hashed(path, before), whole), 3),
        hashed(hashed(key, whole), 4),
        hashed(whole, 5),
        hashed(hashed(hashed(next, then), same), hashed(path, 6)),
        hashed(hashed(one, two), hashed(three, four)),
        hashed(hashed(one, two), hashed(three, 8)),
        hashed(hashed(one, two), 9),
        hashed(hashed(one, key), 10),
        hashed(word, 11),
        hashed(hashed(word, wordBefore), 12),
        hashed(hashed(hashed(key, before), whole), 13),
        hashed(one, 14),
      ]);
      if (byte === END) return got;
      got.push(byte);
      same = byte === next ? same : 0;
      whole = hashed(whole, byte);
      [four, three, two, one] = [three, two, one, byte];
      if (byte === 32 || (byte >= 48 && byte < 58)) {
        if (word !== 0) wordBefore = word;
        word = byte === 32 ? 0 : 1;
      } else word = hashed(word, byte | 32);
    }
  }
}

const inner = (at: At, number: number, before: number): At => ({
  path: hashed(at.path, number),
  key: number,
  before,
  deep: at.deep + 1,
});
const TOP: At = { path: 3, key: 0, before: 0, deep: 0 };
const ELEMENT = 2 ** KEY_BITS;

const encoder = new TextEncoder();
const escaped = (text: string): number[] =>
  Array.from(encoder.encode(text)).flatMap((b) => (b <= RAW ? [RAW, b + 2] : [b]));

/** Tells a paper to the coder. */
class Packer extends Shared {
  write(value: Json, at: At = TOP): number {
    const own = typeOf(value);
    const last = this.lastAt(at).value;
    const text = JSON.stringify(value);
    const big = own === 'list' || own === 'group';
    if (big && last !== null && text === JSON.stringify(last)) {
      this.type('again', at);
      return this.stood(at, value, text);
    }
    this.type(own, at);
    if (own === 'number') this.letters(escaped(text), at, DIGIT);
    if (own === 'text') this.letters(escaped(value as string), at, LETTER);
    if (own === 'list') this.list(value as readonly Json[], at);
    if (own === 'group') this.group(value as Record<string, Json>, at);
    return this.stood(at, value, own === 'text' ? (value as string) : text);
  }

  private list(values: readonly Json[], at: At): void {
    let before = at.before;
    for (const value of values) before = this.write(value, inner(at, ELEMENT, before));
    this.type('end', inner(at, ELEMENT, before));
  }

  private group(group: Record<string, Json>, at: At): void {
    let before = 0;
    let last: number[] = [0, 0];
    for (const [key, value] of Object.entries(group)) {
      let number = this.numbers.get(key);
      this.key(number ?? SPELLED, at, before, last);
      if (number === undefined) {
        this.letters(escaped(key), { ...at, path: SPELLED, before: 0 }, LETTER);
        number = this.met(key);
      }
      before = this.write(value, inner(at, number, before));
      last = [number, last[0]];
    }
    this.key(LAST, at, before, last);
  }
}

/** Hears one from it. */
class Unpacker extends Packer {
  private size = 0;

  private more(by: number): void {
    this.size += by;
    if (this.size > MOST_SIZE) throw new Broken();
  }

  read(at: At = TOP): { readonly value: Json; readonly hash: number } | undefined {
    if (at.deep > MOST_DEEP) throw new Broken();
    const type = this.type(undefined, at);
    if (type === 'end') return undefined;
    this.more(1);
    const value = this.value(type, at);
    return { value, hash: this.stood(at, value, typeof value === 'string' ? value : JSON.stringify(value)) };
  }

  private value(type: Exclude<Type, 'end'>, at: At): Json {
    switch (type) {
      case 'null':
        return null;
      case 'true':
      case 'false':
        return type === 'true';
      case 'number': {
        const text = this.text(at, DIGIT);
        const value = Number(text);
        if (String(value) !== text || !Number.isFinite(value)) throw new Broken();
        return value;
      }
      case 'text':
        return this.text(at, LETTER);
      case 'list':
        return this.readList(at);
      case 'group':
        return this.readGroup(at);
      case 'again': {
        const { value } = this.lastAt(at);
        this.more(sizeOf(value));
        return value;
      }
    }
  }

  private text(at: At, kind: number): string {
    const bytes: number[] = [];
    const got = this.letters(undefined, at, kind);
    for (let i = 0; i < got.length; i++) bytes.push(got[i] === RAW ? got[++i] - 2 : got[i]);
    try {
      return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(Uint8Array.from(bytes));
    } catch {
      throw new Broken();
    }
  }

  private readList(at: At): Json[] {
    const values: Json[] = [];
    let before = at.before;
    for (;;) {
      const next = this.read(inner(at, ELEMENT, before));
      if (!next) return values;
      values.push(next.value);
      before = next.hash;
    }
  }

  private readGroup(at: At): Json {
    const entries: [string, Json][] = [];
    let before = 0;
    let last: number[] = [0, 0];
    for (;;) {
      let number = this.key(undefined, at, before, last);
      if (number === LAST) return Object.fromEntries(entries);
      let key = this.keys[number];
      if (number === SPELLED) {
        key = this.text({ ...at, path: SPELLED, before: 0 }, LETTER);
        number = this.met(key);
      }
      if (key === undefined) throw new Broken();
      const next = this.read(inner(at, number, before));
      if (!next) throw new Broken();
      entries.push([key, next.value]);
      before = next.hash;
      last = [number, last[0]];
    }
  }
}

const sizeOf = (value: Json): number =>
  typeof value === 'object' && value !== null
    ? Object.values(value).reduce<number>((sum, part) => sum + sizeOf(part as Json), 1)
    : typeof value === 'string'
      ? 1 + value.length
      : 1;

/** First, a check on all that follows: a code with a letter wrong would tell something, too. */
const CHECK = 4;
const checkOf = (paper: Json): number => textHash(JSON.stringify(paper), 2);

/** Letters of JSON, at the most, that are packed: more fills no code. */
const MOST_LETTERS = 100_000;

/** What is known before the first word: learned once. */
let learned: { readonly odds: Odds; readonly by: Packer } | undefined;

function known(): { readonly odds: Odds; readonly by: Packer } {
  if (!learned) {
    const odds = new Odds();
    const by = new Packer(new Learner(odds));
    by.write(primer as Json);
    learned = { odds, by };
  }
  return { odds: learned.odds.copy(), by: learned.by };
}

/** The paper in bytes; undefined where it is too large for any code. */
export function packed(paper: unknown): Uint8Array | undefined {
  const text = JSON.stringify(paper);
  if (text.length > MOST_LETTERS) return undefined;
  const json = JSON.parse(text) as Json;
  const { odds, by } = known();
  const writer = new Writer(odds);
  new Packer(writer, by).write(json);
  const bytes = writer.end();
  const whole = new Uint8Array(CHECK + bytes.length);
  new DataView(whole.buffer).setUint32(0, checkOf(json));
  whole.set(bytes, CHECK);
  return whole;
}

/** The paper in those bytes; undefined where they hold none. */
export function unpacked(bytes: Uint8Array): unknown {
  if (bytes.length <= CHECK) return undefined;
  const { odds, by } = known();
  try {
    const paper = new Unpacker(new Reader(odds, bytes.subarray(CHECK), MOST_SYMBOLS), by).read()?.value;
    const check = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0);
    return paper !== undefined && checkOf(paper) === check ? paper : undefined;
  } catch (error) {
    if (error instanceof Broken) return undefined;
    throw error;
  }
}
