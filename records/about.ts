/** All that is kept about one person: the name, the records that refer to it, those that he or she wrote, and the photos of all these. */
import { type Photo, photosNamed, toBase64 } from './photos.ts';
import type { Entry, Json } from './record.ts';
import type { Named } from './store.ts';

export interface About extends Named {
  readonly records: readonly {
    readonly record: string;
    readonly kind: string;
    readonly said: string;
    readonly stored: string;
    readonly why: 'named in it' | 'wrote it' | 'typed in it';
    readonly content: Json;
  }[];
}

/** Of a departure what it says of others is left out: paper and riders, which nobody is named in. */
function ownPart({ body: { kind, content } }: Entry): Json {
  if (kind !== 'departure') return content;
  const { paper: _paper, riders: _riders, told: _told, ...rest } = content;
  return rest;
}

const authorsOf = (person: string, entries: readonly Entry[]): ReadonlySet<string> =>
  new Set(
    entries.flatMap(({ body }) =>
      body.kind === 'author' && body.content['person'] === person ? [body.author] : [],
    ),
  );

/** A photo with the records that name it. */
export interface AboutPhoto {
  readonly photo: string;
  readonly records: readonly string[];
  /** The picture, a JPEG in base64. */
  readonly jpeg: string;
}

/** @param photos those that are kept: of them goes along what a record of this person's names */
export function withPhotos(all: About, entries: readonly Entry[], photos: readonly Photo[]) {
  const own = new Set(all.records.map(({ record }) => record));
  const named = photosNamed(entries);
  return {
    ...all,
    photos: photos.flatMap(({ hash, bytes }): AboutPhoto[] => {
      const records = (named.get(hash) ?? []).map(({ row }) => row.hash).filter((record) => own.has(record));
      return records.length === 0 ? [] : [{ photo: hash, records, jpeg: toBase64(bytes) }];
    }),
  };
}

/** Texts of any case and spacing are the same name; one that is a word of ours is none. */
const folded = (text: string): string => text.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').trim();
const OUR_WORD = /^[a-z-]+$/;
const IN_A_WORD = /[\p{L}\p{N}]/u;

/** Whether somebody typed the name itself where a person could be referred to, or where there was room for any text. */
function isTyped(json: unknown, name: string): boolean {
  if (typeof json === 'string') return !OUR_WORD.test(json) && stands(folded(name), folded(json));
  if (typeof json !== 'object' || json === null) return false;
  return Object.values(json).some((one) => isTyped(one, name));
}

/** As words of its own. */
function stands(name: string, text: string): boolean {
  if (name === '') return false;
  for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1))
    if (!IN_A_WORD.test(text[at - 1] ?? ' ') && !IN_A_WORD.test(text[at + name.length] ?? ' ')) return true;
  return false;
}

/** Records in which the name itself was typed: struck out, it stands there all the same. */
export const typedIn = (name: string, entries: readonly Entry[]): readonly Entry[] =>
  entries.filter((entry) => isTyped(ownPart(entry), name));

export function about(named: Named, entries: readonly Entry[]): About {
  const { name } = named;
  const authors = authorsOf(named.person, entries);
  const refers = ({ body }: Entry): boolean => JSON.stringify(body.content).includes(named.person);
  return {
    ...named,
    records: entries.flatMap((entry) => {
      const { body, row } = entry;
      const why = refers(entry)
        ? 'named in it'
        : isTyped(ownPart(entry), name)
          ? 'typed in it'
          : authors.has(body.author)
            ? 'wrote it'
            : undefined;
      if (why === undefined) return [];
      const { kind, said, stored } = body;
      return [{ record: row.hash, kind, said, stored, why, content: ownPart(entry) } as const];
    }),
  };
}
