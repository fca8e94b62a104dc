/**
 * An outing held open for the hand: stops and gaps at any place and speed, cheap enough to be asked
 * on every frame while the train is dragged along the strip.
 */

import { senseOf, turnOf } from '../engine/answer/chainage.ts';
import { once } from '../engine/base/remember.ts';
import {
  cautiousModel,
  emptyTrace,
  type MapModels,
  modelOf,
  type StopModel,
} from '../engine/motion/model.ts';
import { prepare } from '../engine/motion/prepare.ts';
import { type Caution, likely as likelyScenario } from '../engine/motion/scenario.ts';
import { stopInto } from '../engine/motion/stop.ts';
import type { StopFigure } from '../engine/motion/stop-result.ts';
import { openTimed, stopMargin, type TimedOuting } from '../engine/outing/open.ts';
import { gapNeeded } from '../engine/questions/gap/needed.ts';

export interface StopAtHand {
  readonly likely: StopFigure;
  readonly cautious: StopFigure;
  /** Gap needed to the train ahead, m. */
  readonly gap: number;
}

export interface StopsAtHand {
  /** +1: chainage grows in the running direction; −1: it falls. */
  readonly sense: 1 | -1;
  readonly trainLength: number;
  /** Stop from a chainage of the line and a speed. @param caution as found with the answer: to seek it is dear */
  readonly stop: (at: number, speed: number, caution: Caution) => StopAtHand;
}

export function openStopsAtHand(timed: TimedOuting): StopsAtHand {
  const context = openTimed(timed);
  const { outing } = context;
  const ready = prepare(context);
  const running = turnOf(outing);
  const margin = stopMargin(context);
  const least = outing.host.leastGap?.value;
  const inputs = once(() => ready.inputs(outing.conditions.railState));
  let made: { readonly caution: Caution; readonly models: MapModels } | undefined;
  const modelsWith = (caution: Caution): MapModels => {
    if (made?.caution !== caution)
      made = {
        caution,
        models: {
          likely: modelOf(inputs(), likelyScenario, false),
          cautious: cautiousModel(inputs(), caution),
        },
      };
    return made.models;
  };
  return {
    sense: senseOf(outing),
    trainLength: context.loaded.length,
    stop: (at, speed, caution) => {
      const { likely, cautious } = modelsWith(caution);
      const careful = figure(cautious, running(at), speed);
      return {
        likely: figure(likely, running(at), speed),
        cautious: careful,
        gap: gapNeeded(careful.distance, margin, least),
      };
    },
  };
}

export function figure(model: StopModel, at: number, speed: number): StopFigure {
  const trace = emptyTrace();
  stopInto(model, at, speed, trace);
  return trace;
}
