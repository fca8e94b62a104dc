/** Whoever works the train: each once, and a rider by the rider's name. */
import { assumed } from '../../data/index.ts';
import type { CrewMember } from '../../engine/things/duty.ts';
import type { OutingFile } from '../schema/index.ts';
import { slug } from './line.ts';
import { type Notes, trouble } from './notes.ts';

type Written = NonNullable<OutingFile['crew']>[number];

export function crewOf({ crew = [], riders = [] }: OutingFile, notes: Notes): CrewMember[] {
  const names = new Map(riders.map(({ name }) => [slug(name), name]));
  return crew.map((written, i) => {
    const id = slug(written.name);
    if (crew.findIndex(({ name }) => slug(name) === id) < i)
      trouble(notes, ['crew', i, 'name'], `"${written.name}" again`, 'each person once');
    return { id, name: names.get(id) ?? written.name, ...saidOf(written) };
  });
}

function saidOf({ age, weight, looksOutAt, hours, sober, fit }: Written): Omit<CrewMember, 'id' | 'name'> {
  const { record: _record, ...worked } = hours ?? {};
  return {
    mass: weight ?? assumed('mass/adult'),
    ...(age === undefined ? {} : { age }),
    ...(looksOutAt === undefined ? {} : { looksOutAt }),
    ...(hours === undefined ? {} : { hours: worked }),
    ...(sober === undefined ? {} : { sober }),
    ...(fit === undefined ? {} : { fit }),
  };
}
