/**
 * What keeps records, whatever it is made of. It grows, and loses only what has reached its end; of what it is asked it does all or nothing, and what it
 * has acknowledged is on the disk.
 */
import type { Photo } from './photos.ts';
import type { Head, Row } from './record.ts';
import type { Newest, SignatureCheck } from './verify.ts';

/** A name, apart from the records that refer to it. */
export interface Named {
  /** SHA-256 of the name with its salt: all that records know. */
  readonly person: string;
  readonly salt: string;
  readonly name: string;
}

export interface Store {
  /** SHA-256 of a text in UTF-8, in hexadecimal at once, where this platform can without being waited for. */
  readonly hash?: (text: string) => string;
  /** A signature by this platform's own way, where it has one that is quicker than WebCrypto. */
  readonly signature?: SignatureCheck;
  readonly rows: () => Promise<readonly Row[]>;
  /** One of them; undefined: it is not there. */
  readonly row: (hash: string) => Promise<Row | undefined>;
  /** The newest records of each author, as the store knows them beside its rows. */
  readonly newest: () => Promise<readonly Newest[]>;
  /** Puts one by if the author's newest is still `after`; false: another was first, and nothing is written. */
  readonly add: (row: Row, at: Newest, after: Head | undefined) => Promise<boolean>;
  /** Puts by those that are not there; false: others came between, and nothing is written. @param had so many rows */
  readonly take: (rows: readonly Row[], newest: readonly Newest[], had: number) => Promise<boolean>;
  /** Takes out what a record of its removal names, for good. */
  readonly remove: (hashes: readonly string[]) => Promise<void>;
  readonly names: () => Promise<readonly Named[]>;
  /** One that was struck out here stays so, whoever brings it back. */
  readonly name: (named: Named) => Promise<void>;
  /** Strikes a name out. What referred to it stays, and verifies. */
  readonly strike: (person: string) => Promise<void>;
  /** Before the record that names it. */
  readonly keepPhoto: (photo: Photo) => Promise<void>;
  /** Bytes of a photo; undefined: it is not there. */
  readonly photo: (hash: string) => Promise<Uint8Array<ArrayBuffer> | undefined>;
  /** For good, with the records that named them. */
  readonly dropPhotos: (hashes: readonly string[]) => Promise<void>;
}
