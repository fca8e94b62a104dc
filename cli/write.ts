/** Writing what a person asked for where a person said: a place that cannot be written is a fault of what was typed. */
import { constants } from 'node:fs';
import { open, writeFile } from 'node:fs/promises';
import { UsageFault } from './command.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'no such folder',
  ENOTDIR: 'a file where a folder should be',
  EISDIR: 'a folder',
  EACCES: 'a place where you may not write',
  EPERM: 'a place where you may not write',
  EROFS: 'a disk that cannot be written',
  ENOSPC: 'a disk that is full',
};

/** How a store of records begins. */
const STORE = 'SQLite format 3\0';

/** What was acknowledged is put under nothing else: neither a store of records nor the key beside one. */
async function keepsRecords(path: string): Promise<boolean> {
  try {
    const file = await open(path.replace(/\.key$/, ''), constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
      const { buffer, bytesRead } = await file.read(Buffer.alloc(STORE.length), 0, STORE.length, 0);
      return bytesRead === STORE.length && buffer.toString('latin1') === STORE;
    } finally {
      await file.close();
    }
  } catch {
    return false;
  }
}

export async function writeOut(path: string, content: string | Uint8Array): Promise<void> {
  if (await keepsRecords(path))
    throw new UsageFault(
      `${path}: found a store of records or its key; expected another file: nothing is put over it`,
    );
  try {
    await writeFile(path, content);
  } catch (error) {
    const reason = reasons[(error as NodeJS.ErrnoException).code ?? ''];
    if (reason === undefined) throw error;
    throw new UsageFault(`${path}: found ${reason}; expected a file that can be written`);
  }
}
