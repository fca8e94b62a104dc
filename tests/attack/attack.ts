/** The attack: so many inputs from one seed, each for itself to be had again, and what came of them. */
import { chanceOf } from './mutate.ts';
import { attackServer } from './server.ts';
import { type Outcome, type Target, targets } from './targets.ts';

export interface Tally {
  readonly name: string;
  tried: number;
  accepted: number;
  refused: number;
  answered: number;
  /** Longest time of one input, s of processor. */
  longest: number;
  /** What must never be: the input's seed and the words. */
  readonly crashes: string[];
  readonly slow: string[];
  readonly notFinite: string[];
  readonly unsafe: string[];
}

export interface Attacked {
  readonly seed: number;
  readonly count: number;
  readonly tallies: readonly Tally[];
  /** s of processor. */
  readonly seconds: number;
  /** Most memory, MB. */
  readonly memory: number;
}

/** s: nothing that is handed in may take longer. */
const SLOW = 2;

const tallyOf = (name: string): Tally => ({
  name,
  tried: 0,
  accepted: 0,
  refused: 0,
  answered: 0,
  longest: 0,
  crashes: [],
  slow: [],
  notFinite: [],
  unsafe: [],
});

const processor = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

async function attackOnce(target: Pick<Target, 'attack'>, tally: Tally, seed: number): Promise<void> {
  const before = processor();
  let outcome: Outcome | undefined;
  try {
    outcome = await target.attack(chanceOf(seed));
  } catch (error) {
    tally.crashes.push(
      `${seed}: ${error instanceof Error ? error.stack?.split('\n').slice(0, 4).join(' ') : error}`,
    );
  }
  let took = processor() - before;
  // The first of its kind is slow by code that is not yet compiled. What hangs does so again.
  if (took > SLOW && outcome) {
    const anew = processor();
    await target.attack(chanceOf(seed));
    took = Math.min(took, processor() - anew);
  }
  tally.tried++;
  tally.longest = Math.max(tally.longest, took);
  if (took > SLOW) tally.slow.push(`${seed}: ${took.toFixed(1)} s`);
  if (!outcome) return;
  tally[outcome.end]++;
  if (outcome.crash) tally.crashes.push(`${seed}: ${outcome.crash}`);
  if (outcome.notFinite) tally.notFinite.push(`${seed}: ${outcome.notFinite}`);
  if (outcome.unsafe) tally.unsafe.push(`${seed}: ${outcome.unsafe}`);
}

/** Inputs of all kinds that are tried before the clock is looked at. */
const ROUND = 10_000;

/**
 * All kinds by turns, so that a run that is ended early has tried each.
 *
 * @param say hears how far it is, and says whether to go on
 */
export async function attack(
  count: number,
  seed: number,
  say: (done: number) => boolean = () => true,
): Promise<Attacked> {
  const before = processor();
  let memory = 0;
  let next = seed * 10_000_019;
  let done = 0;
  const tallies = targets.map(({ name }) => tallyOf(name));
  const server = tallyOf('request to the page server');
  const look = (): void => {
    if (++done % 500 === 0) memory = Math.max(memory, process.memoryUsage.rss() / 1e6);
  };
  for (let goes = true; goes && done < count; goes = say(done)) {
    const upTo = Math.min(count, done + ROUND);
    const round = upTo - done;
    for (const [i, target] of targets.entries())
      for (let left = Math.round(round * target.share); left > 0; left--, look())
        await attackOnce(target, tallies[i], next++);
    await attackServer(upTo - done, async (request) => {
      await attackOnce({ attack: request }, server, next++);
      look();
    });
  }
  return { seed, count: done, tallies: [...tallies, server], seconds: processor() - before, memory };
}

/** One input again, by the number that a fault was told with. */
export const again = (name: string, seed: number): Promise<Outcome> | undefined =>
  targets.find((t) => t.name === name)?.attack(chanceOf(seed));
