/** The invented examples, as one file each, for a first look and for journeys. */
import { bundleOuting } from '../../papers/read.ts';

/** Each is loaded when it is asked for. */
const files = import.meta.glob<unknown>(['../../examples/**/*.json', '!../../examples/tests/**'], {
  import: 'default',
});

const load = async (path: string): Promise<string | undefined> => {
  const found = await files[`../../examples/${path}`]?.();
  return found === undefined ? undefined : JSON.stringify(found);
};

export const demoNames: readonly { readonly file: string; readonly title: string }[] = [
  { file: 'steam-light.json', title: 'Steam with light cars' },
  { file: 'battery-vacuum.json', title: 'Battery engine, vacuum brakes' },
  { file: 'heavy-air.json', title: 'Heavy steam, automatic air' },
  { file: 'busy-afternoon.json', title: 'A busy afternoon after a shower' },
  { file: 'too-long-wet.json', title: 'Too long on a wet rail' },
  { file: 'visit-fits.json', title: 'A visitor and a lamp post' },
  { file: 'late-turn.json', title: 'A driver at it for too long' },
  { file: 'two-roads.json', title: 'A loop and three sidings' },
  { file: 'brake-not-measured.json', title: 'A brake nobody has measured' },
];

export async function demo(file: string): Promise<Record<string, unknown>> {
  const read = await bundleOuting({ path: file, content: (await load(file)) ?? '' }, load);
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  return read.value;
}
