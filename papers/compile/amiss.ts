/**
 * What is amiss with a vehicle or with the line, and where the line is slow or shut: by the names of this outing, however
 * they were spelled where it was found. One of nothing here is a slip of the pen, or of another outing: neither passes in
 * silence. Whatever route over its tracks is run, the line is called by its own name.
 */
import type { Outing } from '../../engine/outing/types.ts';
import type { Defect } from '../../engine/things/in-date.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { Train } from '../../engine/things/train/types.ts';
import { show } from '../problem.ts';
import type { OutingFile } from '../schema/index.ts';
import { meant, sameName } from './named.ts';
import { type Notes, trouble } from './notes.ts';

type Written<K extends 'defects' | 'restrictions'> = NonNullable<OutingFile[K]>[number];

export function amissHere(
  { defects, restrictions }: OutingFile,
  line: Line,
  train: Train,
  notes: Notes,
): Pick<Outing, 'defects' | 'restrictions'> {
  return {
    ...(defects && { defects: defects.flatMap((one, i) => defectsOf(one, i, line, train, notes)) }),
    ...(restrictions && { restrictions: restrictions.map((one, i) => restrictionOf(one, i, line, notes)) }),
  };
}

function defectsOf(
  { of, ground, what, rejects, invented, since }: Written<'defects'>,
  i: number,
  line: Line,
  { vehicles }: Train,
  notes: Notes,
): readonly Defect[] {
  const names = vehicles.map(({ name }) => name);
  const found = { what, rejects, ...(invented ? { invented } : {}), since };
  const mine = sameName(of, line.name) ? [line.name] : meant(of, names);
  // A list of the bay that was gone through of a vehicle is that vehicle's.
  if (mine.length === 0 && ground !== undefined) return [{ of, ground, ...found }];
  if (mine.length === 0)
    trouble(
      notes,
      ['defects', i, 'of'],
      show(of),
      `a vehicle of the train or the line: ${[...names, line.name].map(show).join(', ')}`,
    );
  return mine.map((name) => ({ of: name, ...found }));
}

/** A record is called by its first letters, as everywhere. */
function restrictionOf(
  { record, since, of, ...rest }: Written<'restrictions'>,
  i: number,
  line: Line,
  notes: Notes,
): NonNullable<Outing['restrictions']>[number] {
  if (!sameName(of, line.name))
    trouble(notes, ['restrictions', i, 'of'], show(of), `${show(line.name)}, the line of this outing`);
  return {
    ...rest,
    of: line.name,
    since,
    source: `temporary, since ${since}${record === undefined ? '' : `, record ${record.slice(0, 8)}`}`,
  };
}
