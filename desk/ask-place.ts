/**
 * Where in the outing's papers the figure goes that a finding asks for: so that "cannot tell" is a field to fill in
 * and not a dead end.
 */

import type { Finding } from '../engine/questions/finding.ts';
import { slug } from '../papers/compile/line.ts';
import type { FieldPath } from '../papers/problem.ts';
import { fieldPath } from '../words/field.ts';

type Json = Readonly<Record<string, unknown>>;

/** Which of the vehicles written down each vehicle of the train is: one counted twice is written once. */
function membersOf(paper: Json): { readonly id: string; readonly member: number; readonly vehicle: Json }[] {
  const members = ((paper['train'] as Json | undefined)?.['vehicles'] as Json[] | undefined) ?? [];
  return members.flatMap((m, member) => {
    const vehicle = m['vehicle'] as Json;
    const count = Number(m['count'] ?? 1);
    const base = String(m['id'] ?? slug(String(m['name'] ?? vehicle['name'])));
    return Array.from({ length: count }, (_, i) => ({
      id: count > 1 ? `${base}-${i + 1}` : base,
      member,
      vehicle,
    }));
  });
}

/**
 * The place in an outing's paper with everything inside; undefined where it asks for no single field.
 * @param measure as `Finding.measure`
 */
export function askPlace(paper: Json, measure: string, where: Finding['where']): FieldPath | undefined {
  const [first] = measure.split('.');
  const [, ...keys] = fieldPath(measure);
  if (first === 'line' && keys[0] === 'places') return placeOfLine(paper, keys);
  if (first === 'line' || first === 'train' || first === 'host') return [first, ...keys];
  if (first === 'riders') return ['riders'];
  if (first === 'outing') return keys[0] === 'crew' ? placeOfCrew(paper, keys) : keys;
  const train = membersOf(paper);
  const at = train.findIndex(({ id }) => id === where.vehicle);
  if (at < 0) return undefined;
  if (first === 'coupling') return couplingPlace(train, at, keys);
  return [...vehiclePath(train[at].member), ...inVehicle(keys)];
}

/** `places.loop-points.sight`: by the name of the place. */
function placeOfLine(paper: Json, [list, id, ...rest]: readonly string[]): FieldPath | undefined {
  const places = ((paper['line'] as Json | undefined)?.['places'] as Json[] | undefined) ?? [];
  const at = places.findIndex(({ name }) => slug(String(name)) === id);
  return at < 0 ? undefined : ['line', list, at, ...rest];
}

/** `crew.<who>.hours.rest`: by the name; of somebody who is not listed yet, the list. */
function placeOfCrew(paper: Json, [list, id, ...rest]: readonly string[]): FieldPath {
  const at = ((paper[list] as Json[] | undefined) ?? []).findIndex(({ name }) => slug(String(name)) === id);
  return at < 0 ? [list] : [list, at, ...rest];
}

const vehiclePath = (member: number): FieldPath => ['train', 'vehicles', member, 'vehicle'];

type Member = ReturnType<typeof membersOf>[number];

/** Behind the vehicle; the chain on the end on which it hangs. */
function couplingPlace(train: readonly Member[], at: number, keys: readonly string[]): FieldPath {
  const [, ...within] = keys;
  const hangs = (vehicle: Json | undefined, end: string): boolean =>
    (vehicle?.[end] as Json | undefined)?.['chain'] !== undefined;
  const next = train[at + 1];
  if (within[0] === 'chain' && next && !hangs(train[at].vehicle, 'rear') && hangs(next.vehicle, 'front'))
    return [...vehiclePath(next.member), 'front', ...within];
  return [...vehiclePath(train[at].member), 'rear', ...within];
}

/** `brakes.air-1.force` → brakes, 0, force: the reading numbers brakes from 1. */
function inVehicle(keys: readonly string[]): FieldPath {
  const [list, id, ...rest] = keys;
  const number = /-(\d+)$/.exec(id ?? '');
  return list === 'brakes' && number ? ['brakes', Number(number[1]) - 1, ...rest] : keys;
}
