/**
 * Records in one SQLite file, as it stands beside other papers of a club. Every step is one transaction that is on the
 * disk before it is acknowledged; two programs at one file wait for each other.
 */
import { isAscii } from 'node:buffer';
import { existsSync, statSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { Client, Row as Found, InStatement } from '@libsql/client';
import type { Head, Row } from '../record.ts';
import type { Named, Store } from '../store.ts';
import type { Newest } from '../verify.ts';
import { checkSignature, sha256 } from './sqlite-crypto.ts';

/** Kind of the tables, so that a newer program's store is left alone. */
export const TABLES = 2;

/** Bytes of a page of the file: a record has room in it, with no second page for its end. */
const PAGE = 16_384;

/** So long another program's step is waited for, ms. */
const PATIENCE = 10_000;

const tables = [
  'CREATE TABLE records (hash TEXT PRIMARY KEY, text TEXT NOT NULL, signature TEXT) WITHOUT ROWID',
  'CREATE TABLE newest (author TEXT NOT NULL, hash TEXT NOT NULL, number INTEGER NOT NULL, PRIMARY KEY (author, hash)) WITHOUT ROWID',
  'CREATE TABLE names (person TEXT PRIMARY KEY, salt TEXT NOT NULL, name TEXT NOT NULL) WITHOUT ROWID',
];

/** What a store of before photos lacks. */
const later = [
  'CREATE TABLE IF NOT EXISTS photos (hash TEXT PRIMARY KEY, bytes BLOB NOT NULL)',
  `PRAGMA user_version = ${TABLES}`,
];

export interface SqliteStore extends Store {
  readonly close: () => void;
}

/** Why a file is no store that can be opened. */
export class NoStore extends Error {}

async function clientFor(path: string): Promise<Client> {
  let open: typeof import('@libsql/client/sqlite3').createClient;
  try {
    ({ createClient: open } = await import('@libsql/client/sqlite3'));
  } catch {
    throw new NoStore('no SQLite for this kind of machine: records are kept in the workbench here');
  }
  try {
    // One connection: what is set on it holds for every step.
    return open({ url: pathToFileURL(path).href, concurrency: 1, timeout: PATIENCE });
  } catch (fault) {
    throw new NoStore(wordsOf(fault));
  }
}

/** @param fresh makes a new one, where there is none */
export async function openSqlite(path: string, fresh = false): Promise<SqliteStore> {
  if (existsSync(path) === fresh)
    throw new NoStore(fresh ? 'a file of that name: nothing is put over it' : 'no such file');
  if (!fresh && !statSync(path).isFile())
    throw new NoStore(statSync(path).isDirectory() ? 'a folder' : 'a pipe or device');
  const client = await clientFor(path);
  try {
    // Acknowledged is on the disk: a journal beside the file while it is written, and nothing else afterwards.
    await client.execute('PRAGMA journal_mode = DELETE');
    await client.execute('PRAGMA synchronous = EXTRA');
    if (fresh) {
      // Before the first table: afterwards it stays as it is.
      await client.execute(`PRAGMA page_size = ${PAGE}`);
      await client.batch([...tables, ...later], 'write');
    }
    const kind = Number((await client.execute('PRAGMA user_version')).rows[0]?.[0]);
    if (kind > TABLES) throw new NoStore('a newer Heedway made it, and this one leaves it alone');
    if (kind < 1) throw new NoStore('no store of records');
    if (kind < TABLES) await client.batch(later, 'write');
  } catch (fault) {
    client.close();
    throw fault instanceof NoStore ? fault : new NoStore(wordsOf(fault));
  }
  return storeOn(client);
}

const wordsOf = (fault: unknown): string => {
  const { code, message } = fault as { readonly code?: string; readonly message?: string };
  if (code === 'SQLITE_FULL') return 'the disk is full: nothing was written';
  if (code?.startsWith('SQLITE_IOERR'))
    return 'the disk is full, or cannot be written or read: nothing was written';
  if (code === 'SQLITE_BUSY') return 'another program has been writing into it for 10 seconds';
  if (code === 'SQLITE_NOTADB' || code === 'SQLITE_CORRUPT')
    return 'damaged, or no SQLite file: take the newest file that was exported from it';
  return message ?? String(fault);
};

/** As bytes: a text that is none, since somebody altered the file, would end the program in the library's hands. */
const bytes = (column: string): string => `CAST(${column} AS BLOB)`;

const [exact, lenient] = [true, false].map((fatal) => new TextDecoder('utf-8', { ignoreBOM: true, fatal }));

/** What is no text of ours is told apart from every text that is. */
function textIn(value: unknown): string {
  if (!(value instanceof ArrayBuffer)) return `${value}`;
  try {
    // UTF-8 writes every text in one way: what can be read is what was written.
    return exact.decode(value);
  } catch {
    return `${lenient.decode(value)}\u0000`;
  }
}

type All = <T>(sql: string, read: (row: Found) => T, args?: (string | number)[]) => Promise<T[]>;

/** Rows that are read in one piece: a piece for each costs more than all that is done with it; so does one of many megabytes. */
const MOST_ROWS = 500;

const joined = (column: string): string => `CAST(group_concat(${column}, char(10)) AS BLOB)`;

const page = `SELECT ${joined('text')}, ${joined("hash || coalesce('=' || signature, '')")}
  FROM (SELECT hash, signature, text FROM records WHERE hash > ? ORDER BY hash LIMIT ${MOST_ROWS})`;

/** Undefined: something in the file is not as it should be, and every row is looked at for itself. */
async function inPages(all: All): Promise<Row[] | undefined> {
  const [count] = await all('SELECT count(*) FROM records', (found) => Number(found[0]));
  const rows: Row[] = [];
  while (rows.length < count) {
    const after = rows.at(-1)?.hash ?? '';
    const [read] = await all(page, (found) => rowsIn(found[0], found[1]), [after]);
    if (!read || read.length > MOST_ROWS || !((read.at(-1)?.hash ?? '') > after)) return undefined;
    rows.push(...read);
  }
  return rows.length === count ? rows : undefined;
}

function rowsIn(texts: unknown, names: unknown): Row[] | undefined {
  const [text, name] = [linesIn(texts), linesIn(names)];
  // A line break in either is none of ours.
  if (!text || !name || text.length !== name.length) return undefined;
  const rows: Row[] = [];
  for (let i = 0; i < text.length; i++) {
    const at = name[i].indexOf('=');
    rows.push(
      at < 0
        ? { text: text[i], hash: name[i] }
        : { text: text[i], hash: name[i].slice(0, at), signature: name[i].slice(at + 1) },
    );
  }
  return rows;
}

function linesIn(piece: unknown): string[] | undefined {
  try {
    return decoded(Buffer.from(piece as ArrayBuffer)).split('\n');
  } catch {
    return undefined;
  }
}

/** Most texts are plain ASCII, which needs no decoding. */
const decoded = (bytes: Buffer): string => (isAscii(bytes) ? bytes.toString('latin1') : exact.decode(bytes));

const EACH = `SELECT ${bytes('text')}, ${bytes('hash')}, ${bytes('signature')} FROM records`;

const rowIn = (row: Found): Row => ({
  text: textIn(row[0]),
  hash: textIn(row[1]),
  ...(row[2] === null ? {} : { signature: textIn(row[2]) }),
});

function storeOn(client: Client): SqliteStore {
  const step = async (statements: InStatement[]): Promise<readonly number[]> => {
    try {
      return (await client.batch(statements, 'write')).map(({ rowsAffected }) => rowsAffected);
    } catch (fault) {
      throw new NoStore(wordsOf(fault));
    }
  };
  const all: All = async (sql, read, args = []) => {
    try {
      return (await client.execute({ sql, args })).rows.map(read);
    } catch (fault) {
      throw new NoStore(wordsOf(fault));
    }
  };
  const inserted = ({
    hash,
    text,
    signature = null,
  }: Omit<Row, 'signature'> & { signature?: string | null }) => [hash, text, signature] as const;
  return {
    hash: sha256,
    signature: checkSignature,
    rows: async () => (await inPages(all)) ?? all(EACH, rowIn),
    row: async (hash) => (await all(`${EACH} WHERE hash = ?`, rowIn, [hash]))[0],
    newest: () =>
      all(`SELECT ${bytes('author')}, ${bytes('hash')}, CAST(number AS INTEGER) FROM newest`, (row) => ({
        author: textIn(row[0]),
        hash: textIn(row[1]),
        number: Number(row[2]),
      })),
    add: async (row: Row, { author, hash, number }: Newest, after: Head | undefined) => {
      const moved: InStatement = after
        ? {
            sql: 'UPDATE newest SET hash = ?, number = ? WHERE author = ? AND hash = ?',
            args: [hash, number, author, after.hash],
          }
        : {
            sql: 'INSERT INTO newest (author, hash, number) SELECT ?, ?, ? WHERE NOT EXISTS (SELECT 1 FROM newest WHERE author = ?)',
            args: [author, hash, number, author],
          };
      // Only where that moved something.
      const put = 'INSERT INTO records (hash, text, signature) SELECT ?, ?, ? WHERE changes() = 1';
      const [, added] = await step([moved, { sql: put, args: [...inserted(row)] }]);
      return added === 1;
    },
    take: async (rows, newest, had) => {
      const guard = 'WHERE (SELECT count(*) FROM records) = ?';
      const put = 'INSERT INTO records (hash, text, signature) SELECT ?, ?, ?';
      // The heads first: they are held against how many rows there were, and so is the first row; each other against that before.
      const statements: InStatement[] = [
        { sql: `DELETE FROM newest ${guard}`, args: [had] },
        ...newest.map(({ author, hash, number }) => ({
          sql: `INSERT OR IGNORE INTO newest (author, hash, number) SELECT ?, ?, ? ${guard}`,
          args: [author, hash, number, had],
        })),
        ...rows.map((row, i) =>
          i === 0
            ? { sql: `${put} ${guard}`, args: [...inserted(row), had] }
            : { sql: `${put} WHERE changes() = 1`, args: [...inserted(row)] },
        ),
      ];
      const counts = await step(statements);
      return rows.length === 0 || counts[counts.length - 1] === 1;
    },
    remove: async (hashes) => {
      await step(hashes.map((hash) => ({ sql: 'DELETE FROM records WHERE hash = ?', args: [hash] })));
      // Nor in the file's free pages.
      await client.execute('VACUUM');
    },
    names: () =>
      all(
        `SELECT ${bytes('person')}, ${bytes('salt')}, ${bytes('name')} FROM names WHERE name != ''`,
        (row): Named => ({ person: textIn(row[0]), salt: textIn(row[1]), name: textIn(row[2]) }),
      ),
    name: async ({ person, salt, name }) =>
      void (await step([
        {
          sql: 'INSERT OR IGNORE INTO names (person, salt, name) VALUES (?, ?, ?)',
          args: [person, salt, name],
        },
      ])),
    strike: async (person) => {
      await step([
        { sql: "INSERT OR REPLACE INTO names (person, salt, name) VALUES (?, '', '')", args: [person] },
      ]);
      // What was struck out must not stand in the file's free pages.
      await client.execute('VACUUM');
    },
    keepPhoto: async ({ hash, bytes }) =>
      void (await step([
        { sql: 'INSERT OR REPLACE INTO photos (hash, bytes) VALUES (?, ?)', args: [hash, bytes] },
      ])),
    photo: async (hash) => {
      const sql = 'SELECT CAST(bytes AS BLOB) FROM photos WHERE hash = ?';
      const [bytes] = await all(sql, (row) => new Uint8Array(row[0] as ArrayBuffer), [hash]);
      return bytes;
    },
    dropPhotos: async (hashes) => {
      await step(hashes.map((hash) => ({ sql: 'DELETE FROM photos WHERE hash = ?', args: [hash] })));
    },
    close: () => client.close(),
  };
}
