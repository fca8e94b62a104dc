/**
 * The careful stop of a running train where it is longest, and what makes it so much longer than the likely one: each thing that
 * caution takes for unlucky set back to likely by itself. What a test would tell is named with it, so is what no test mends.
 */
import { turnOf } from '../../engine/answer/chainage.ts';
import type { OpenInquiry } from '../../engine/answer/inquiry.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { modelOf } from '../../engine/motion/model.ts';
import type { Scenario } from '../../engine/motion/scenario.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import type { CarefulStop, Lengthens, StopPart } from '../../words/measured/stop-parts.ts';

/** Where and how fast: chainage of the line, m, and m/s. */
export type At = Pick<CarefulStop, 'at' | 'speed'>;

const parts: Readonly<Record<Lengthens, readonly (keyof Scenario)[]>> = {
  reaction: ['reaction'],
  adhesion: ['adhesion'],
  brakes: ['brake', 'friction'],
  timing: ['timing'],
  rolling: ['resistance'],
  mass: ['mass'],
  grade: ['grade'],
  spot: ['spot', 'spotFactor'],
  driver: ['easing', 'notice', 'skid'],
  wet: ['wet'],
};

const PLACES = 120;

/** The fastest that is permitted anywhere; undefined: none. */
export function speedOf({ speeds }: Answer): number | undefined {
  const most = speeds?.limit.reduce((a, b) => Math.max(a, b), 0) ?? 0;
  return most > 0 ? most : undefined;
}

/**
 * @param fastest where nobody meant a speed
 * @param of where and how fast; where it is longest at the speed that is meant, if nothing is said
 */
export function carefulStop(
  { ready, context }: OpenInquiry,
  fastest?: number,
  of?: At,
): CarefulStop | undefined {
  const speed = of?.speed ?? context.outing.plannedSpeed ?? fastest;
  if (speed === undefined) return undefined;
  const { line, conditions } = context.outing;
  const turn = turnOf(context.outing);
  const { likely, cautious } = ready.models(conditions.railState);
  const s = of ? turn(of.at) : longestAt((place) => stopDistance(cautious, place, speed), line.length);
  const careful = stopDistance(cautious, s, speed);
  const inputs = ready.inputs(conditions.railState);
  const scenario = ready.caution(conditions.railState);
  const adds = ([key, of]: readonly [string, readonly (keyof Scenario)[]]): StopPart => ({
    key: key as Lengthens,
    adds:
      careful -
      stopDistance(modelOf(inputs, { ...scenario, ...Object.fromEntries(of.map((k) => [k, 0])) }), s, speed),
  });
  return {
    at: turn(s),
    speed,
    likely: stopDistance(likely, s, speed),
    careful,
    parts: Object.entries(parts)
      .map(adds)
      .filter((part) => part.adds > SEEN)
      .sort((a, b) => b.adds - a.adds),
  };
}

/** Less than this nobody measures, m. */
const SEEN = 0.05;

function longestAt(stop: (place: number) => number, length: number): number {
  let [place, most] = [0, 0];
  for (let i = 0; i < PLACES; i++) {
    const here = (i * length) / PLACES;
    const far = stop(here);
    if (far > most) [place, most] = [here, far];
  }
  return place;
}
