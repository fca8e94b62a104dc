/** The outing as files that a person reads and edits: each paper by itself, the outing naming them. */
import { writeFile } from '../../papers/index.ts';
import type { Json } from './written.ts';

export interface NewFile {
  /** Within the folder. */
  readonly path: string;
  readonly text: string;
}

/** @param paper the outing with all its papers inside */
export function filesOf(paper: Json): NewFile[] {
  const train = paper['train'] as Json;
  const members = train['vehicles'] as Json[];
  const file = (path: string, json: unknown): NewFile => ({ path, text: writeFile(json) });
  return [
    file('outing.json', {
      ...paper,
      line: { file: 'line.json' },
      train: { file: 'train.json' },
      host: { file: 'host.json' },
    }),
    file('line.json', paper['line']),
    file('host.json', paper['host']),
    file('train.json', {
      ...train,
      vehicles: members.map((m) => ({ ...m, vehicle: { file: `${m['id']}.json` } })),
    }),
    ...members.map((m) => file(`${m['id']}.json`, m['vehicle'])),
  ];
}
