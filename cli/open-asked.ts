/** Opening what is asked about: an outing file, or one with what is tried on it. */
import { resolve } from 'node:path';
import { type Asked, asking } from '../desk/asked.ts';
import { openTriedFile } from '../desk/trying.ts';
import { readJson } from '../papers/json.ts';
import { decodeText } from '../papers/text.ts';
import { isTried } from '../papers/tried.ts';
import { bundleFile, loadFromDisk, openFile, openOutingFile, refusal } from './open.ts';

export async function openAsked(path: string): Promise<Asked> {
  const { content } = await openFile(path);
  const text = decodeText(content);
  const json = text.ok ? readJson(text.text).value : undefined;
  if (isTried(json)) {
    const read = await openTriedFile(json, resolve(path), loadFromDisk);
    if (!read.ok) throw refusal(read.problems.map((p) => ({ ...p, file: path })));
    return asking(read.value.paper, read.value.outing, read.value.trials);
  }
  const outing = await openOutingFile(path);
  const bundle = await bundleFile(path);
  if (!bundle.ok) throw refusal(bundle.problems);
  return asking(bundle.value, outing);
}
