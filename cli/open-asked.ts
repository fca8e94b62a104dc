/**
 * Reading an outing from the disk as it is written: one by itself, or one with what is tried on it. What something is told
 * of comes in by the gate, which puts in what is recorded.
 */
import { type Asked, asking } from '../desk/asked.ts';
import { openTriedFile } from '../desk/trying.ts';
import { readJson } from '../papers/json.ts';
import { decodeText } from '../papers/text.ts';
import { isTried } from '../papers/tried.ts';
import { bundleFile, fromDisk, openFile, openOutingFile, refusal } from './open.ts';

export async function openAsked(path: string): Promise<Asked> {
  const opened = await openFile(path);
  const text = decodeText(opened.content);
  const json = text.ok ? readJson(text.text).value : undefined;
  if (isTried(json)) {
    const { entry, load } = fromDisk(opened);
    const read = await openTriedFile(json, entry.path, load);
    if (!read.ok) throw refusal(read.problems.map((p) => ({ ...p, file: path })));
    return asking(read.value.paper, read.value.outing, read.value.trials);
  }
  return openUntried(path);
}

/** No file with what is tried on an outing. */
export async function openUntried(path: string): Promise<Asked> {
  // Its problems are told with their files.
  const outing = await openOutingFile(path);
  const bundle = await bundleFile(path);
  if (!bundle.ok) throw refusal(bundle.problems);
  return asking(bundle.value, outing);
}
