/** Reading a file of a person's disk: an ordinary one, of a size that can be ours, or a word on why not. */
import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { LARGEST_FILE } from '../papers/text.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  ENOTDIR: 'no such file',
  EISDIR: 'a folder',
  EACCES: 'a file that you may not read',
  EPERM: 'a file that you may not read',
  EMFILE: 'too many files open already',
  ENFILE: 'too many files open already',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'links that lead round in a circle',
  ENXIO: 'a device that does not answer',
};

/** What stands where a file should, by the fault that the system gave. */
export const reasonOf = (error: unknown): string => {
  const { code } = error as NodeJS.ErrnoException;
  return reasons[code ?? ''] ?? `a file that the disk does not give (${code ?? 'no reason told'})`;
};

export type Content = { readonly bytes: Uint8Array } | { readonly unread: string; readonly expected: string };

/** @param most bytes that a file of the kind has */
export async function contentOf(path: string, most = LARGEST_FILE): Promise<Content> {
  let handle: FileHandle | undefined;
  try {
    // Without waiting: a pipe into which nobody writes would never open.
    handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const info = await handle.stat();
    const refuse = (unread: string, expected: string): Content => ({ unread, expected });
    if (info.isDirectory()) return refuse('a folder', 'a file');
    if (!info.isFile()) return refuse('a pipe or device', 'an ordinary file');
    if (info.size > most) return refuse(`a file of ${megabytes(info.size)} MB`, `at most ${most / MB} MB`);
    return { bytes: await all(handle, info.size) };
  } catch (error) {
    return { unread: reasonOf(error), expected: 'a file that can be read' };
  } finally {
    await handle?.close();
  }
}

const MB = 1024 * 1024;
const megabytes = (bytes: number): string => (bytes / MB).toFixed(1);

/** So many bytes, or fewer where it ends before: one that grows meanwhile is read as it was found. */
async function all(handle: FileHandle, size: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(size);
  let filled = 0;
  while (filled < size) {
    const { bytesRead } = await handle.read(bytes, filled, size - filled, filled);
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return bytes.subarray(0, filled);
}
