/** All that is kept about one person: the name, the records that refer to it, and those that he or she wrote. */
import type { Entry, Json } from './record.ts';
import type { Named } from './store.ts';

export interface About extends Named {
  readonly records: readonly {
    readonly record: string;
    readonly kind: string;
    readonly said: string;
    readonly stored: string;
    readonly why: 'named in it' | 'wrote it';
    readonly content: Json;
  }[];
}

/** Of a departure what it says of others is left out: paper and riders, which nobody is named in. */
function ownPart({ body: { kind, content } }: Entry): Json {
  if (kind !== 'departure') return content;
  const { paper: _paper, riders: _riders, told: _told, ...rest } = content;
  return rest;
}

export function about(named: Named, entries: readonly Entry[]): About {
  const authors = new Set(
    entries.flatMap(({ body }) =>
      body.kind === 'author' && body.content['person'] === named.person ? [body.author] : [],
    ),
  );
  const refers = ({ body }: Entry): boolean => JSON.stringify(body.content).includes(named.person);
  return {
    ...named,
    records: entries.flatMap((entry) => {
      const { body, row } = entry;
      const why = refers(entry) ? 'named in it' : authors.has(body.author) ? 'wrote it' : undefined;
      if (why === undefined) return [];
      const { kind, said, stored } = body;
      return [{ record: row.hash, kind, said, stored, why, content: ownPart(entry) } as const];
    }),
  };
}
