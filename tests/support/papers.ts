/** The invented examples as one paper each, to be changed by a test. */
import { readFileSync } from 'node:fs';
import { bundleOuting } from '../../papers/index.ts';

type Json = Record<string, unknown>;

const text = (path: string): string =>
  readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');

/** @param name as `steam-light` */
export async function examplePaper(name: string): Promise<Json> {
  const path = `${name}.json`;
  const read = await bundleOuting({ path, content: text(path) }, async (at) => text(at));
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join('; '));
  return read.value;
}

/** A line of fourteen stations to stop at and fourteen short limits: more than one side of a card holds. */
export async function manyPlaces(): Promise<Json> {
  const paper = await examplePaper('steam-light');
  const each = <T>(make: (i: number) => T): T[] => Array.from({ length: 14 }, (_, i) => make(i));
  const line = {
    ...(paper['line'] as Json),
    places: each((i) => ({ name: `Station ${i + 1}`, kind: 'station', at: `${20 + i * 60} ft`, stop: true })),
    speedLimits: each((i) => ({
      from: `${i * 60} ft`,
      to: `${i * 60 + 20} ft`,
      speed: `${2 + (i % 5)} mph`,
      why: `limit ${i + 1}`,
      source: 'rule',
    })),
  };
  return { ...paper, line };
}

/** A member of a train stands for forty cars at the most. */
const lots = (count: number): number[] => (count > 40 ? [40, ...lots(count - 40)] : [count]);

/** The second member of the light train and its riders are made over. */
export async function withCars(count: number, riders: readonly Json[], car: Json = {}): Promise<Json> {
  const paper = await examplePaper('steam-light');
  const train = paper['train'] as Json;
  const [engine, cars] = train['vehicles'] as Json[];
  const vehicle = { ...(cars['vehicle'] as Json), ...car };
  const [driver] = paper['riders'] as Json[];
  return {
    ...paper,
    train: {
      ...train,
      vehicles: [
        engine,
        ...lots(count).map((some, i) => ({ ...cars, vehicle, count: some, id: `car${i || ''}` })),
      ],
    },
    riders: [driver, ...riders],
  };
}
