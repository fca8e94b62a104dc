/** Writing what a person asked for where a person said: a place that cannot be written is a fault of what was typed. */
import { writeFile } from 'node:fs/promises';
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

export async function writeOut(path: string, content: string | Uint8Array): Promise<void> {
  try {
    await writeFile(path, content);
  } catch (error) {
    const reason = reasons[(error as NodeJS.ErrnoException).code ?? ''];
    if (reason === undefined) throw error;
    throw new UsageFault(`${path}: found ${reason}; expected a file that can be written`);
  }
}
