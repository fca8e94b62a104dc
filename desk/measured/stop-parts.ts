/**
 * The careful stop of a running train where it is longest, and what makes it so much longer than the likely one: each thing that
 * caution takes for unlucky set back to likely by itself. What a test would tell is named with it, so is what no test mends.
 */
import { turnOf } from '../../engine/answer/chainage.ts';
import type { OpenInquiry } from '../../engine/answer/inquiry.ts';
import { cautiousModel } from '../../engine/motion/model.ts';
import type { Scenario } from '../../engine/motion/scenario.ts';
import { stopDistance } from '../../engine/motion/stop.ts';
import { speed as speedOf } from '../../engine/questions/speed/question.ts';
import type { SpeedMap } from '../../engine/questions/speed/types.ts';
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

/** Where a running train's careful stop is longest, and how fast it runs there; undefined: none runs, or none is sure to stop. */
export function longestOf(speeds: SpeedMap | null, planned: number = Infinity): At | undefined {
  if (!speeds) return undefined;
  const { at, limit, cautiousStop } = speeds;
  let longest = -1;
  cautiousStop.forEach((stop, i) => {
    if (limit[i] > 0 && Number.isFinite(stop) && !(longest >= 0 && stop <= cautiousStop[longest]))
      longest = i;
  });
  return longest < 0 ? undefined : { at: at[longest], speed: Math.min(limit[longest], planned) };
}

/** @param of where and how fast, in the line's chainage; where it is longest, if nothing is said */
export function carefulStop(inquiry: OpenInquiry, of?: At): CarefulStop | undefined {
  const { ready, context } = inquiry;
  const { outing } = context;
  const turn = turnOf(outing);
  const own = of
    ? { ...of, at: turn(of.at) }
    : longestOf(inquiry.of(speedOf).data?.map ?? null, outing.plannedSpeed);
  if (!own) return undefined;
  const { at: s, speed } = own;
  const { conditions } = outing;
  const { likely, cautious } = ready.models(conditions.railState);
  const careful = stopDistance(cautious, s, speed);
  const inputs = ready.inputs(conditions.railState);
  const caution = ready.caution(conditions.railState);
  const adds = ([key, of]: readonly [string, readonly (keyof Scenario)[]]): StopPart => {
    const none = Object.fromEntries(of.map((k) => [k, 0]));
    const without = caution.map((one) => ({ ...one, ...none }));
    return { key: key as Lengthens, adds: careful - stopDistance(cautiousModel(inputs, without), s, speed) };
  };
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
