/** Stops over rail in more than one state: engine and witness side by side, on outings with stretches of bad and good rail. */

import type { Outing } from '../../../engine/outing/types.ts';
import type { RailStretch } from '../../../engine/things/line/types.ts';
import type { RailState } from '../../../engine/things/rail.ts';
import { wetter, worseRail } from '../../../engine/things/rail.ts';
import { chance } from '../chance.ts';
import { type Ground, groundOf, running } from '../ground.ts';
import { type Hand, hand, likelyDeal, tableOf } from '../hand.ts';
import { type Rail, stopByPlace } from '../places.ts';
import { wayAhead } from '../stop.ts';
import { answering } from '../train.ts';
import { stopWord } from './engine.ts';
import { randomOuting } from './outings.ts';

const states: readonly RailState[] = ['dry', 'damp', 'wet', 'greasy'];

/** With one to three stretches, apart, each seen today, in a state other than the rest. */
export function withStretches(seed: number): Outing {
  const uniform = chance(seed + 303);
  const base = randomOuting(seed);
  const rail = states[Math.floor(uniform() * states.length)];
  const others = states.filter((s) => s !== rail);
  const { length } = base.line;
  const count = 1 + Math.floor(uniform() * 3);
  const railStretches = Array.from({ length: count }, (_, i): RailStretch => {
    const room = length / count;
    const long = Math.min(0.8 * room, 0.3 + 40 * uniform() ** 2);
    const from = i * room + uniform() * (room - long);
    return { from, to: from + long, state: others[Math.floor(uniform() * others.length)] };
  });
  return { ...base, conditions: { ...base.conditions, railState: rail, railStretches } };
}

/** Each rail of the outing with its hand, the day's own first. */
export function railsOf(
  { conditions, line }: Outing,
  ground: Ground,
  handOn: (state: RailState) => Hand,
): (Rail & { readonly state: RailState })[] {
  const stretches = conditions.railStretches ?? [];
  const stateAt = (x: number): RailState => {
    const on = line.loop ? ((x % line.length) + line.length) % line.length : x;
    const chainage = running(ground, on);
    return stretches.find((s) => s.from <= chainage && chainage <= s.to)?.state ?? conditions.railState;
  };
  const met = [...new Set([conditions.railState, ...stretches.map((s) => s.state)])];
  return met.map((state) => ({ state, hand: handOn(state), at: (x) => stateAt(x) === state }));
}

export interface PlaceCompared {
  readonly seed: number;
  readonly at: number;
  readonly speed: number;
  readonly engine: number;
  readonly witness: number;
}

/** Stops that begin a little before, in and just behind a stretch. */
export function comparePlaces(seed: number, places: number): PlaceCompared[] {
  const uniform = chance(seed + 404);
  const { outing, likelyStop } = stopWord(withStretches(seed));
  const ground = groundOf(outing);
  const { conditions, line, assumed } = outing;
  const stretches = conditions.railStretches ?? [];
  const handOn = (railState: RailState) => {
    const table = tableOf({ ...outing, conditions: { ...conditions, railState } }, answering(outing));
    return { ...hand(table, likelyDeal), curve: assumed.curveConstant.low };
  };
  const rails = railsOf(outing, ground, (state) => {
    // Drier rail dries no blocks.
    const { frictions } = handOn(wetter(conditions.railState, state));
    return { ...handOn(state), frictions };
  }).sort((a, b) => (worseRail(assumed.adhesion, a.state, b.state) === a.state ? 1 : -1));
  const { cars } = tableOf(outing, answering(outing));
  return Array.from({ length: places }, () => {
    const { from, to } = stretches[Math.floor(uniform() * stretches.length)];
    const head = running(ground, from + uniform() * (to - from)) - 25 * uniform() + 15 * uniform();
    const at = Math.min(line.length - 1, Math.max(0, head));
    const speed = 0.5 + 4 * uniform();
    return {
      seed,
      at,
      speed,
      engine: likelyStop(at, speed),
      witness: stopByPlace(wayAhead(ground, cars, at), rails, speed).distance,
    };
  });
}
