/** All that is kept about one person: the name, the records that refer to it, those that he or she wrote, and the photos of all these. */
import { type Photo, photosNamed, toBase64 } from './photos.ts';
import type { Entry, Json } from './record.ts';
import type { Named } from './store.ts';

export interface About {
  readonly name: string;
  /** Whom records refer to by that name: two devices that were put together have one each. */
  readonly persons: readonly Named[];
  readonly records: readonly {
    readonly record: string;
    readonly kind: string;
    readonly said: string;
    readonly stored: string;
    readonly why: 'named in it' | 'wrote it' | 'typed in it';
    readonly content: Json;
    /** What has the name in it, where that is in the paper of a departure, which is left out. */
    readonly typed?: readonly string[];
  }[];
}

/** Of a departure what it says of others is left out: paper and riders, which nobody is named in. */
function ownPart({ body: { kind, content } }: Entry): Json {
  if (kind !== 'departure') return content;
  const { paper: _paper, riders: _riders, told: _told, ...rest } = content;
  return rest;
}

const authorsOf = (persons: ReadonlySet<string>, entries: readonly Entry[]): ReadonlySet<string> =>
  new Set(
    entries.flatMap(({ body }) =>
      body.kind === 'author' && persons.has(`${body.content['person']}`) ? [body.author] : [],
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

/** Texts in which somebody typed the name itself, where a person could be referred to or where there was room for any text. */
function typedTexts(json: unknown, name: string): readonly string[] {
  if (typeof json === 'string')
    return !OUR_WORD.test(json) && stands(folded(name), folded(json)) ? [json] : [];
  if (typeof json !== 'object' || json === null) return [];
  return Object.values(json).flatMap((one) => typedTexts(one, name));
}

/** Whether the name stands anywhere in a paper. */
export const standsIn = (paper: Json, name: string): boolean => typedTexts(paper, name).length > 0;

/** As words of its own. */
function stands(name: string, text: string): boolean {
  if (name === '') return false;
  for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1))
    if (!IN_A_WORD.test(text[at - 1] ?? ' ') && !IN_A_WORD.test(text[at + name.length] ?? ' ')) return true;
  return false;
}

/** In the paper by which a train left people are numbered; what a line, a vehicle or a host is called stands in it as it was typed. */
const inItsPaper = ({ body: { kind, content } }: Entry, name: string): readonly string[] =>
  kind === 'departure' ? [...new Set(typedTexts(content['paper'], name))] : [];

/** Records in which the name itself was typed: struck out, it stands there all the same. */
export const typedIn = (name: string, entries: readonly Entry[]): readonly Entry[] =>
  entries.filter((entry) => typedTexts(ownPart(entry), name).length + inItsPaper(entry, name).length > 0);

/** All whom a name is known of here, however it is cased and spaced. */
export const allNamed = (name: string, names: readonly Named[]): readonly Named[] =>
  names.filter((one) => folded(one.name) === folded(name));

/** @param named one name, of one person or of more whom records cannot tell apart by it */
export function about(named: readonly Named[], entries: readonly Entry[]): About {
  const { name } = named[0];
  const persons = new Set(named.map(({ person }) => person));
  const authors = authorsOf(persons, entries);
  const refers = ({ body }: Entry): boolean => {
    const text = JSON.stringify(body.content);
    return named.some(({ person }) => text.includes(person));
  };
  return {
    name,
    persons: named,
    records: entries.flatMap((entry) => {
      const { body, row } = entry;
      const typed = inItsPaper(entry, name);
      const why = refers(entry)
        ? 'named in it'
        : typed.length + typedTexts(ownPart(entry), name).length > 0
          ? 'typed in it'
          : authors.has(body.author)
            ? 'wrote it'
            : undefined;
      if (why === undefined) return [];
      const { kind, said, stored } = body;
      const content = ownPart(entry);
      return [
        {
          record: row.hash,
          kind,
          said,
          stored,
          why,
          content,
          ...(typed.length > 0 ? { typed } : {}),
        } as const,
      ];
    }),
  };
}
