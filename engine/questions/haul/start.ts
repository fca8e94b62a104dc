/**
 * Can it start? By joint draws: failing to start is a nuisance, so the careful figure is that of one draw in twenty.
 */
import { speedNamed } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { RailState } from '../../things/rail.ts';
import {
  carefulAt,
  DRAWS,
  type Draws,
  drawHaul,
  failsAt,
  headAt,
  lackingWork,
  mostFailing,
  NUISANCE,
  nodesOf,
  type Pulls,
  resistance,
  rollingAt,
} from './draws.ts';

/** How a train starts, or keeps a speed, at one place. */
export interface HaulAt {
  /** Head chainage, m. */
  readonly at: number;
  readonly node: number;
  /** Pull and need of the careful draw, N. */
  readonly pull: number;
  readonly need: number;
  /** Share of draws that fail there. */
  readonly fails: number;
  /** Rail under the driven wheels there. */
  readonly rail: RailState;
  /** It is adhesion, not the machine, that sets the pull. */
  readonly grip: boolean;
}

export interface Start extends HaulAt {
  readonly likelyPull: number;
  readonly likelyNeed: number;
  /** Likely need of the train that crawls there already, N: where it is more than the pull, it stalls. */
  readonly crawlNeed: number;
  /** It likely stalls there: crawling, or where the rail is bad for a stretch, with the speed that it comes with. */
  readonly stalls: boolean;
  readonly drawn: Draws;
}

export const haulAt = (draws: Draws, pulls: Pulls, node: number): HaulAt => {
  const rail = draws.railAt(node);
  return {
    at: headAt(pulls, node),
    node,
    ...carefulAt(draws, pulls, node),
    fails: failsAt(draws, pulls, node),
    rail,
    grip: draws.morePull(rail) > draws.likelyPull(rail),
  };
};

/**
 * The start where most fail.
 *
 * @returns undefined where an engine's pull is not known
 */
export function carefulStart(
  context: OutingContext,
  pulls: Pulls,
  state: RailState,
  draws: number = DRAWS,
): Start | undefined {
  const drawn = drawHaul(context, pulls, state, draws, 0);
  if (!drawn) return undefined;
  const { outing, loaded } = context;
  const node = mostFailing(drawn, pulls)?.node ?? drawn.steepest;
  const { curved } = pulls;
  const crawlNeed = (j: number): number => curved.slope[j] + rollingAt(context, 0);
  const lacks = (j: number): number => crawlNeed(j) - drawn.likelyPull(drawn.railAt(j));
  return {
    ...haulAt(drawn, pulls, node),
    likelyPull: drawn.likelyPull(drawn.railAt(node)),
    likelyNeed: curved.slope[node] + resistance(context, () => 0, 0),
    crawlNeed: crawlNeed(node),
    // Bad rail that is not the day's is run over with what speed there is.
    stalls:
      drawn.railAt(node) === state
        ? lacks(node) > 0
        : lackingWork(lacks, node, pulls) > (loaded.effectiveMass * (speedNamed(outing) ?? 0) ** 2) / 2,
    drawn,
  };
}

/** Where a train is booked to stop, or may be made to. */
export interface Booked {
  readonly name: string;
  /** Head chainage, m. */
  readonly at: number;
}

/** The run begins with the whole train on the line, on a loop at its origin. */
export const START_OF_RUN = 'the start of the run';

/** Booked stops, signals, crossings and the start of the run. */
export function bookedStops({ line, loaded }: Pick<OutingContext, 'line' | 'loaded'>): Booked[] {
  const asked = line.places.filter(
    ({ stop, kind }) => stop === true || kind === 'signal' || kind === 'crossing',
  );
  const start = line.loop ? 0 : Math.min(line.length, loaded.length);
  return [{ name: START_OF_RUN, at: start }, ...asked.map(({ name, at }) => ({ name, at }))];
}

/** How starts fare at the stops, each at the worse of the nodes beside it. */
export function startsAt(
  { drawn }: Start,
  pulls: Pulls,
  stops: readonly Booked[],
): (Booked & { readonly node: number; readonly fails: number })[] {
  const { from, step } = pulls.curved;
  const last = nodesOf(pulls) - 1;
  const look = (place: number) => {
    const node = Math.max(0, Math.min(last, place));
    return { node, fails: failsAt(drawn, pulls, node) };
  };
  return stops.map((stop) => {
    const place = (stop.at - from) / step;
    const [before, after] = [look(Math.floor(place)), look(Math.ceil(place))];
    return { ...stop, ...(after.fails > before.fails ? after : before) };
  });
}

/** Stretches of the line, m, on which one start in twenty or more fails. */
export function stretches({ drawn }: Start, pulls: Pulls): { from: number; to: number; fails: number }[] {
  const found: { from: number; to: number; fails: number }[] = [];
  const end = nodesOf(pulls);
  for (let j = 0; j < end; j++) {
    const fails = failsAt(drawn, pulls, j);
    if (fails <= NUISANCE) continue;
    const at = headAt(pulls, j);
    const last = found.at(-1);
    if (last && at - last.to <= TOGETHER)
      found[found.length - 1] = { ...last, to: at, fails: Math.max(last.fails, fails) };
    else found.push({ from: at, to: at, fails });
  }
  return found;
}

/** Stretches this near to each other are one, m. */
const TOGETHER = 5;
