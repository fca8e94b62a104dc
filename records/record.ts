/**
 * A record: what somebody said once, as it can never be changed unseen. Its text is canonical; the hash of the text is
 * its name; the text names the author's record before it, so that none can be taken out of the middle; and the author's
 * key signs it, where the device has one. What was wrong is said anew, by a record that names the old one.
 */
import { type Kind, kinds } from '../papers/record/fields.ts';
import { canonical, isCanonical } from './canonical.ts';
import { type Keys, sha256, signed } from './hash.ts';

export type Json = Readonly<Record<string, unknown>>;

/** What a record's text holds. */
export interface Body {
  readonly heedway: 'record';
  readonly version: 1;
  readonly kind: Kind;
  readonly content: Json;
  /** Public key in hexadecimal; of one who has no key `unsigned:` and letters of their own. */
  readonly author: string;
  /** A name of the device, made with its first record. */
  readonly device: string;
  /** The author's how-manieth, from 1. */
  readonly number: number;
  /** Hash of the author's record before it; the first has none. */
  readonly previous?: string;
  /**
   * That record's signature, as it was found right before this was signed: who signs this says so of all before it. Absent of
   * one who has no key, or where it was not found right.
   */
  readonly previousSignature?: string;
  /** When it was so, by whoever says it, and when it was put by: local time with its offset. */
  readonly said: string;
  readonly stored: string;
  /** Version of the program. */
  readonly program: string;
  /** Hash of the record that this one says anew. */
  readonly amends?: string;
}

/** A record as it is kept and handed over. */
export interface Row {
  /** Canonical text of the body. */
  readonly text: string;
  /** SHA-256 of the text. */
  readonly hash: string;
  /** Of the text, by the author's key. */
  readonly signature?: string;
}

/** A row whose text has been read. */
export interface Entry {
  readonly body: Body;
  readonly row: Row;
}

export interface Author {
  readonly name: string;
  readonly device: string;
  /** Absent: what this author writes is unsigned. */
  readonly keys?: Keys;
}

/** What begins the name of an author who has no key. */
export const UNSIGNED = 'unsigned:';
export const isUnsigned = (author: string): boolean => author.startsWith(UNSIGNED);

/** An author's newest record. */
export interface Head {
  readonly number: number;
  readonly hash: string;
}

/** The record that another follows. */
export interface Followed extends Head {
  readonly signature?: string;
}

export interface Said {
  readonly kind: Kind;
  readonly content: Json;
  readonly said: string;
  readonly amends?: string;
}

/**
 * @param after the author's newest record; undefined: this is the first
 * @param stored now, local time with its offset
 */
export async function written(
  { kind, content, said, amends }: Said,
  author: Author,
  after: Followed | undefined,
  stored: string,
  program: string,
): Promise<Row> {
  const body: Body = {
    heedway: 'record',
    version: 1,
    kind,
    content,
    author: author.name,
    device: author.device,
    number: (after?.number ?? 0) + 1,
    ...(after ? { previous: after.hash } : {}),
    ...(after?.signature === undefined ? {} : { previousSignature: after.signature }),
    said,
    stored,
    program,
    ...(amends === undefined ? {} : { amends }),
  };
  const text = canonical(body);
  const hash = await sha256(text);
  return author.keys ? { text, hash, signature: await signed(text, author.keys.sign) } : { text, hash };
}

const HASH = /^[0-9a-f]{64}$/;
const SIGNATURE = /^[0-9a-f]{128}$/;
const TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(Z|[+-]\d\d:\d\d)$/;
const isText = (value: unknown): value is string => typeof value === 'string';
const isHash = (value: unknown): boolean => isText(value) && HASH.test(value);
const isSignature = (value: unknown): boolean => isText(value) && SIGNATURE.test(value);
const isTime = (value: unknown): boolean => isText(value) && TIME.test(value);
/** Fields that every record has. */
const ALWAYS = 10;

/** @param count how many of the known ones are there */
function hasNoOther(json: Json, count: number): boolean {
  let found = 0;
  for (const _ in json) found++;
  return found === count;
}

/**
 * The body in a text; undefined: it is no text that this program wrote.
 * @param exact whether it is looked at for being canonical: what a hash or a signature vouches for needs no look
 */
export function bodyIn(text: string, exact = true): Body | undefined {
  let json: Record<string, unknown>;
  try {
    json = JSON.parse(text);
    if (typeof json !== 'object' || json === null || (exact && !isCanonical(text, json))) return undefined;
  } catch {
    return undefined;
  }
  const {
    kind,
    content,
    author,
    device,
    number,
    previous,
    previousSignature,
    said,
    stored,
    program,
    amends,
  } = json;
  const right =
    json['heedway'] === 'record' &&
    json['version'] === 1 &&
    isText(kind) &&
    Object.hasOwn(kinds, kind) &&
    typeof content === 'object' &&
    content !== null &&
    isText(author) &&
    isText(device) &&
    isText(program) &&
    Number.isSafeInteger(number) &&
    (number as number) >= 1 &&
    (number === 1) === (previous === undefined) &&
    (previous === undefined || isHash(previous)) &&
    (previousSignature === undefined || (previous !== undefined && isSignature(previousSignature))) &&
    (amends === undefined || isHash(amends)) &&
    isTime(said) &&
    (stored === said || isTime(stored)) &&
    hasNoOther(
      json,
      ALWAYS + [previous, previousSignature, amends].filter((one) => one !== undefined).length,
    );
  return right ? (json as unknown as Body) : undefined;
}

/** What stands before the content of a canonical text, and behind it. */
const BEFORE = /^\{(?:"amends":"([0-9a-f]{64})",)?"author":"([0-9a-z:]+)","content":\{/;
const BEHIND =
  /^,"device":"([^"\\]*)","heedway":"record","kind":"([a-z-]+)","number":([1-9]\d{0,14})(?:,"previous":"([0-9a-f]{64})")?(?:,"previousSignature":"([0-9a-f]{128})")?,"program":"([^"\\]*)","said":"([^"\\]*)","stored":"([^"\\]*)","version":1\}$/;

/** Of a body all but its content. */
type Frame = Omit<Body, 'content'>;

/** A body whose content is read when it is asked for: of many thousand most are never asked. */
class Unread {
  #content: Json | undefined;
  readonly #text: string;
  readonly #from: number;
  readonly #to: number;

  /** @param from where its content begins in the text @param to and ends */
  constructor(frame: Frame, { text }: Row, from: number, to: number) {
    Object.assign(this, frame);
    this.#text = text;
    this.#from = from;
    this.#to = to;
  }

  /** What is none says nothing: of no kind's contents is an empty one right. */
  get content(): Json {
    if (this.#content === undefined)
      try {
        this.#content = JSON.parse(this.#text.slice(this.#from, this.#to)) as Json;
      } catch {
        this.#content = {};
      }
    return this.#content;
  }

  /** As it would stand if it had been read: a getter is left out of what is written down. */
  toJSON(): object {
    return { ...this, content: this.content };
  }

  static textOf(body: object): string | undefined {
    return #text in body ? body.#text.slice(body.#from, body.#to) : undefined;
  }
}

const unread = (frame: Frame, row: Row, from: number, to: number): Body =>
  new Unread(frame, row, from, to) as Unread & Frame;

/** Its content as it stands in the canonical text; undefined: it was read already, and its text let go. */
export const contentText = (body: Body): string | undefined => Unread.textOf(body);

/** Keys of a canonical text stand in their order, and no value has a bare quotation mark: the first is the content's, the last what follows it. */
const [CONTENT, DEVICE] = ['"content":', ',"device":"'];

/**
 * A body that was read and found right, without its content: to hold many thousand of those takes longer than to read again what is asked for.
 * @param one the same text for what many say alike
 */
export function laidBy({ content: _, ...frame }: Body, row: Row, one: (text: string) => string): Body {
  const { author, device, said, stored, program } = frame;
  const alike = { author: one(author), device: one(device), program: one(program) };
  const [from, to] = [row.text.indexOf(CONTENT) + CONTENT.length, row.text.lastIndexOf(DEVICE)];
  return unread({ ...frame, ...alike, stored: stored === said ? said : stored }, row, from, to);
}

/**
 * The body of a row that a sound signature vouches for and this same program wrote, its content unread until it is asked for: it was
 * held against its kind before it was signed. Undefined: not plainly one.
 * @param by version of the program @param one the same text for what many say alike
 */
export function bodyUnread(row: Row, by: string, one: (text: string) => string): Body | undefined {
  const before = BEFORE.exec(row.text);
  const at = row.text.lastIndexOf(DEVICE);
  const behind = before && at > 0 ? BEHIND.exec(row.text.slice(at)) : null;
  if (!before || !behind) return undefined;
  const [, amends, author] = before;
  const [, device, kind, digits, previous, previousSignature, program, said, stored] = behind;
  const number = Number(digits);
  const right =
    program === by &&
    Object.hasOwn(kinds, kind) &&
    TIME.test(said) &&
    (stored === said || TIME.test(stored)) &&
    (number === 1) === (previous === undefined) &&
    (previousSignature === undefined || previous !== undefined);
  if (!right) return undefined;
  const frame: Frame = {
    heedway: 'record',
    version: 1,
    kind: one(kind) as Kind,
    author: one(author),
    device: one(device),
    number,
    said,
    stored: stored === said ? said : stored,
    program: by,
    ...(previous === undefined ? {} : { previous }),
    ...(previousSignature === undefined ? {} : { previousSignature }),
    ...(amends === undefined ? {} : { amends }),
  };
  return unread(frame, row, before[0].length - 1, at);
}

/** Day on which it was so, where it was. */
export const dayOf = ({ said }: Pick<Body, 'said'>): string => said.slice(0, 10);
