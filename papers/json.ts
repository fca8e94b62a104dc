/**
 * Reads JSON (RFC 8259) and keeps the place of every value in the text, so that a wrong field deep in a
 * file can be pointed at by row and column. The host's own parser tells neither places nor what it
 * expected, and stops at the first bad word; here a bad word such as NaN is noted and reading goes on.
 */
import { type FieldPath, show, type TextPosition } from './problem.ts';

export interface JsonTrouble extends TextPosition {
  readonly path: FieldPath;
  readonly found: string;
  readonly expected: string;
}

/** Where a value begins, and where its parts do. */
interface Mark {
  readonly offset: number;
  readonly parts?: Map<string | number, Mark>;
}

export interface JsonText {
  readonly value: unknown;
  readonly troubles: readonly JsonTrouble[];
  /** Row and column of the value at the path, or of the nearest one around it. */
  readonly position: (path: FieldPath) => TextPosition;
}

const DEEPEST = 64;
/** More than any file of ours holds: a line of 50,000 points has 150,000 values. */
const MOST_VALUES = 250_000;
const MOST_FIELDS = 500;
/** Faults of one text that are told: nobody mends more at once. */
export const MOST_TOLD = 100;
export const TOO_MANY = { found: `${MOST_TOLD} faults`, expected: 'fewer: those behind are not told' };

export function readJson(text: string): JsonText {
  const reader = new Reader(text);
  const { value, mark } = reader.document();
  const places = placesIn(text);
  return {
    value,
    troubles: reader.troubles.map((trouble) => ({ ...trouble, ...places(trouble.offset) })),
    position: (path) => places(offsetOf(mark, path)),
  };
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++)
    if (text[i] === '\n' || (text[i] === '\r' && text[i + 1] !== '\n')) starts.push(i + 1);
  return starts;
}

/** Finds rows and columns in a text; its line ends are looked for once, when first asked. */
function placesIn(text: string): (offset: number) => TextPosition {
  let starts: number[] | undefined;
  return (offset) => {
    starts ??= lineStarts(text);
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle;
    }
    return { row: low + 1, column: Math.min(offset, text.length) - starts[low] + 1 };
  };
}

function offsetOf(mark: Mark, path: FieldPath): number {
  let at = mark;
  for (const part of path) {
    const next = at.parts?.get(part);
    if (next === undefined) break;
    at = next;
  }
  return at.offset;
}

/** Leaves the recursion at a fault after which nothing sensible can be read. */
class Stop extends Error {}

interface Read {
  readonly value: unknown;
  readonly mark: Mark;
}

class Reader {
  readonly troubles: (Omit<JsonTrouble, keyof TextPosition> & { readonly offset: number })[] = [];
  private values = 0;
  private readonly text: string;
  private at = 0;
  private readonly path: (string | number)[] = [];

  constructor(text: string) {
    this.text = text;
  }

  document(): Read {
    try {
      const read = this.value('a value');
      this.space();
      if (this.at < this.text.length) this.stop('the end of the file');
      return read;
    } catch (error) {
      if (!(error instanceof Stop)) throw error;
      return { value: undefined, mark: { offset: 0 } };
    }
  }

  private note(offset: number, found: string, expected: string): void {
    this.troubles.push({ offset, path: [...this.path], found, expected });
    if (this.troubles.length === MOST_TOLD) {
      this.troubles.push({ offset, path: [], ...TOO_MANY });
      throw new Stop();
    }
  }

  private stop(expected: string, found = this.next()): never {
    this.note(this.at, found, expected);
    throw new Stop();
  }

  /** What stands at the reading place, as shown to people. */
  private next(): string {
    if (this.at >= this.text.length) return 'the end of the file';
    const word = /^[\w.+-]+/.exec(this.text.slice(this.at, this.at + 40));
    return JSON.stringify(word ? word[0] : String.fromCodePoint(this.text.codePointAt(this.at)!));
  }

  private space(): void {
    while (this.at < this.text.length && ' \t\r\n'.includes(this.text[this.at])) this.at++;
    if (this.text.startsWith('//', this.at) || this.text.startsWith('/*', this.at))
      this.stop('JSON without comments (use a "note" field where the file has one)', 'a comment');
  }

  private value(expected: string): Read {
    this.space();
    if (this.path.length > DEEPEST)
      this.stop(`at most ${DEEPEST} levels`, 'lists or groups nested too deeply');
    if (++this.values > MOST_VALUES)
      this.stop(`at most ${MOST_VALUES} in a file`, `more than ${MOST_VALUES} values`);
    const offset = this.at;
    const first = this.text[this.at];
    if (first === '{') return this.object(offset);
    if (first === '[') return this.array(offset);
    if (first === '"') return { value: this.string(), mark: { offset } };
    return { value: this.word(expected), mark: { offset } };
  }

  private object(offset: number): Read {
    const value: Record<string, unknown> = {};
    const parts = new Map<string | number, Mark>();
    this.at++;
    this.space();
    if (this.text[this.at] === '}') this.at++;
    else {
      do {
        this.space();
        if (this.text[this.at] !== '"') this.stop(this.fieldExpected());
        const keyAt = this.at;
        const key = this.string();
        this.path.push(key);
        if (parts.has(key)) this.note(keyAt, `the field ${show(key)} a second time`, 'each field once');
        this.space();
        if (this.text[this.at] !== ':') this.stop('":" after the field name');
        this.at++;
        const read = this.value('a value');
        // Defined, not assigned: a field called __proto__ must stay a plain wrong field.
        Object.defineProperty(value, key, {
          value: read.value,
          enumerable: true,
          writable: true,
          configurable: true,
        });
        parts.set(key, read.mark);
        this.path.pop();
        if (parts.size > MOST_FIELDS)
          this.stop(`at most ${MOST_FIELDS} in a group`, `more than ${MOST_FIELDS} fields`);
      } while (this.more('}'));
    }
    return { value, mark: { offset, parts } };
  }

  private fieldExpected(): string {
    if (/[\s,][\d.]/.test(this.text.slice(this.at - 1, this.at + 1)))
      return 'a field name in double quotes (for a decimal write a point: 1.5, not 1,5)';
    if (this.text[this.at] === '}') return 'another field: remove the comma before "}"';
    return 'a field name in double quotes';
  }

  private array(offset: number): Read {
    const value: unknown[] = [];
    const parts = new Map<string | number, Mark>();
    this.at++;
    this.space();
    if (this.text[this.at] === ']') this.at++;
    else {
      do {
        this.path.push(value.length);
        this.space();
        if (this.text[this.at] === ']') this.stop('another value: remove the comma before "]"');
        const read = this.value('a value');
        parts.set(value.length, read.mark);
        value.push(read.value);
        this.path.pop();
      } while (this.more(']'));
    }
    return { value, mark: { offset, parts } };
  }

  private more(end: '}' | ']'): boolean {
    this.space();
    const next = this.text[this.at];
    if (next !== ',' && next !== end) this.stop(`"," or ${JSON.stringify(end)}`);
    this.at++;
    return next === ',';
  }

  private string(): string {
    const start = this.at;
    let end = start + 1;
    while (end < this.text.length && this.text[end] !== '"' && this.text[end] >= ' ')
      end += this.text[end] === '\\' ? 2 : 1;
    if (this.text[end] !== '"') this.stop("a closing '\"' on the same line", 'text that does not end');
    try {
      const value: string = JSON.parse(this.text.slice(start, end + 1));
      this.at = end + 1;
      return value;
    } catch {
      return this.stop(
        '\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u with four digits',
        'an unknown escape in a text',
      );
    }
  }

  /** A number, true, false, null; anything else that looks like a word is noted and passed over. */
  private word(expected: string): unknown {
    const word = /^[^\s,:[\]{}"]+/.exec(this.text.slice(this.at, this.at + 400))?.[0] ?? '';
    if (word === '') this.stop(expected);
    const offset = this.at;
    this.at += word.length;
    if (/^-?(0|[1-9]\d*)(\.\d+)?([eE][+-]?\d+)?$/.test(word)) return this.number(word, offset);
    if (word === 'true') return true;
    if (word === 'false') return false;
    if (word === 'null') return null;
    this.note(offset, word, wordExpected(word));
    return undefined;
  }

  private number(word: string, offset: number): number | undefined {
    const value = Number(word);
    if (Number.isFinite(value)) return value;
    this.note(offset, word, 'a number that a computer can hold');
    return undefined;
  }
}

function wordExpected(word: string): string {
  if (/^[+-]?(nan|inf(inity)?)$/i.test(word)) return 'a number, or leave the field out if it is not known';
  if (/^[+-]?[\d.]/.test(word))
    return 'a plain number such as 0.5, or a text in double quotes such as "12 ft 6 in"';
  return 'a number, true, false, null or a text in double quotes';
}
