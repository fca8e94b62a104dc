/**
 * An outing with what is tried on it, as a file: `{"heedway": "tried", "version": 1, "outing": …, "changes": […]}`.
 * The outing stands as its own papers have it, inline; changes are in SI. What a change does is known elsewhere.
 */

import * as z from 'zod/mini';
import type { Change } from '../engine/outing/change.ts';
import type { Outing } from '../engine/outing/types.ts';
import { automaticKinds } from '../engine/things/brake/kinds/index.ts';
import { type FileProblem, fileProblem, show } from './problem.ts';
import { type Load, type Read, readOuting } from './read.ts';

export const TRIED = 'tried';

const id = z.string().check(z.minLength(1), z.maxLength(400));
const ids = z.array(id).check(z.minLength(1), z.maxLength(400));
const upTo = (most: number) => z.number().check(z.gte(0), z.lte(most));
const within = (most: number) => z.number().check(z.gte(-most), z.lte(most));
const place = upTo(1e6);
const speed = upTo(20);
const kind = <K extends Change['kind']>(name: K) => z.literal(name);

const plain = [
  z.strictObject({ kind: kind('fewer-cars'), leave: ids }),
  z.strictObject({ kind: kind('fewer-riders'), leave: ids }),
  z.strictObject({ kind: kind('slower'), from: place, to: place, speed }),
  z.strictObject({ kind: kind('slower-everywhere'), speed }),
  z.strictObject({ kind: kind('brake-car'), vehicle: id, like: id }),
  z.strictObject({
    kind: kind('rail-state'),
    state: z.enum(['sanded', 'dry', 'damp-sanded', 'wet-sanded', 'greasy-sanded']),
  }),
  z.strictObject({ kind: kind('order'), order: ids }),
  z.strictObject({
    kind: kind('seat'),
    moves: z
      .array(z.strictObject({ rider: id, vehicle: id, seat: id }))
      .check(z.minLength(1), z.maxLength(400)),
  }),
  z.strictObject({ kind: kind('ballast'), vehicle: id, mass: upTo(1e5), height: upTo(10) }),
  z.strictObject({ kind: kind('chains') }),
  z.strictObject({
    kind: kind('chain-size'),
    gap: z.int().check(z.gte(0), z.lte(400)),
    grade: z.literal([30, 43, 70, 80]),
    size: z.number().check(z.gt(0), z.lte(0.1)),
  }),
  z.strictObject({ kind: kind('longer-coupling'), gap: z.int().check(z.gte(0), z.lte(400)), by: upTo(2) }),
  z.strictObject({
    kind: kind('coupler-raised'),
    vehicle: id,
    end: z.enum(['front', 'rear']),
    by: within(0.5),
  }),
  z.strictObject({
    kind: kind('part-lifted'),
    vehicle: id,
    part: z.string().check(z.maxLength(200)),
    by: upTo(1),
  }),
  z.strictObject({ kind: kind('wheel-gauge'), vehicle: id, wheelset: id, by: within(0.05) }),
  z.strictObject({ kind: kind('guard-rail'), flangeway: id, by: within(0.05) }),
  z.strictObject({ kind: kind('set-back'), structure: id, by: within(2) }),
  z.strictObject({ kind: kind('raised'), structure: id, by: within(2) }),
  z.strictObject({ kind: kind('alone') }),
  z.strictObject({ kind: kind('guard') }),
  z.strictObject({ kind: kind('parking-brake'), vehicle: id, force: upTo(1e6) }),
  z.strictObject({ kind: kind('driver-brake'), vehicle: id, force: upTo(1e6) }),
  z.strictObject({
    kind: kind('brake-kind'),
    brake: z.enum(automaticKinds),
  }),
] as const;

/** Several at once: one deep, as the search for remedies makes them. */
const together = z.strictObject({
  kind: kind('together'),
  changes: z.array(z.discriminatedUnion('kind', plain)).check(z.minLength(1), z.maxLength(100)),
});

const changeSchema = z.discriminatedUnion('kind', [...plain, together]);

export interface TriedFile {
  readonly paper: Readonly<Record<string, unknown>>;
  readonly outing: Outing;
  readonly changes: readonly Change[];
}

/** Whether it says of itself that it is such a file. */
export const isTried = (json: unknown): json is Record<string, unknown> =>
  typeof json === 'object' && json !== null && (json as { heedway?: unknown }).heedway === TRIED;

export async function readTried(
  json: Record<string, unknown>,
  name: string,
  load: Load,
): Promise<Read<TriedFile>> {
  const problems: FileProblem[] = [];
  const wrong = (path: readonly (string | number)[], found: string, expected: string): void => {
    problems.push(fileProblem(name, { path, found, expected }));
  };
  const odd = Object.keys(json).find((k) => !['heedway', 'version', 'outing', 'changes'].includes(k));
  if (odd !== undefined) wrong([odd], `the unknown field ${show(odd)}`, 'outing and changes');
  if (json['version'] !== 1)
    wrong(['version'], show(json['version']), '1: a newer Heedway may have made this file');
  const { outing: paper, changes } = json;
  const list = Array.isArray(changes) ? changes : [];
  if (list.length === 0 || list.length > 100)
    wrong(['changes'], show(changes), 'a list of 1 to 100 changes that are tried');
  else
    for (const [i, change] of list.entries())
      if (!changeSchema.safeParse(change).success)
        wrong(['changes', i], show(change), 'a change such as {"kind": "rail-state", "state": "sanded"}');
  const read = await readOuting({ path: name, content: JSON.stringify(paper ?? null) }, load);
  if (!read.ok)
    problems.push(
      ...read.problems.map(({ file, path, found, expected, message }) => ({
        file,
        path: path === '' ? 'outing' : `outing.${path}`,
        found,
        expected,
        message: `outing${path === '' ? ': ' : '.'}${message}`,
      })),
    );
  if (problems.length > 0 || !read.ok) return { ok: false, problems };
  return {
    ok: true,
    value: {
      paper: paper as TriedFile['paper'],
      outing: read.value,
      changes: list as readonly Change[],
    },
  };
}
