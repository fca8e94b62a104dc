/** Whether a number of cars is stopped: within what is seen from running speed, or at all. */

import { amount } from '../base/quantity.ts';
import { once } from '../base/remember.ts';
import { leastBrake } from '../motion/held.ts';
import { cautiousModel, type MapModels, modelOf, type StopModel } from '../motion/model.ts';
import type { Prepared } from '../motion/prepare.ts';
import { likely } from '../motion/scenario.ts';
import { stopDistance } from '../motion/stop.ts';
import { type OutingContext, stopMargin } from '../outing/open.ts';
import type { Finding } from '../questions/finding.ts';
import { askSpeeds } from '../questions/speed/ask.ts';
import { availableAlong, seenBy } from '../questions/speed/available.ts';
import { expectedSpeed, runningSpeed } from '../questions/speed/ceilings.ts';
import { fastestAllowed, hardestPull, holdsFall, overcomes } from '../questions/speed/holds.ts';
import { speedMap } from '../questions/speed/map.ts';
import { slowestDriven } from '../questions/speed/slowest.ts';
import type { RailState } from '../things/rail.ts';
import { driverBehind } from '../things/train/crew.ts';
import type { Fails, Looked } from './looked.ts';
import type { CountLimit } from './types.ts';

interface Stops {
  readonly limits: () => Fails;
  readonly forbids: () => Fails;
}

export function stopsOf(looked: Looked, state: RailState): Stops {
  const { ready, late } = looked;
  const exact = once(() => stopsWith(looked, ready(), state));
  const weak = once(() => {
    const asLate = late();
    return asLate && stopsWith(looked, asLate, state);
  });
  const does = (of: 'limits' | 'forbids'): boolean => {
    const asLate = weak();
    return asLate !== undefined && asLate[of]() === undefined;
  };
  return {
    limits: () => (does('limits') ? undefined : exact().limits()),
    forbids: () => (does('forbids') ? undefined : exact().forbids()),
  };
}

function stopsWith(looked: Looked, ready: Prepared, state: RailState): Stops {
  const { own } = looked;
  const { brakes } = ready;
  if (brakes.faults.some((f) => f.why === 'force-unknown')) return always('unknown');
  if (brakes.groups.length === 0) return always({ what: 'no-brake' });
  const models = own
    ? ready.models(state)
    : {
        likely: modelOf(ready.inputs(state), likely, false),
        cautious: cautiousModel(ready.inputs(state), looked.cautionOf(state)),
      };
  const quick = once(() => quickLook(looked, ready, models.cautious));
  const close = once(() => closeLook(looked, ready, models, state));
  const forbids = (): Fails => (own || !quick().surely ? close() : undefined);
  return { limits: () => quick().fails ?? forbids(), forbids };
}

const always = (fails: Fails): Stops => ({ limits: () => fails, forbids: () => fails });

/**
 * First place where the brake does not hold, else that where the cautious stop from running speed lacks most room.
 * Surely: nor does a stop from anything faster that is permitted fail.
 */
function quickLook(
  { grid, ceilings }: Looked,
  { context }: Prepared,
  model: StopModel,
): { readonly fails: Fails; readonly surely: boolean } {
  const { line, outing } = context;
  const margin = stopMargin(context);
  const eyes = driverBehind(outing, context.loaded);
  // The end of the line slows every train; it is not what limits the count.
  const { distance, reason, reasons } = availableAlong(line, grid, margin, seenBy(outing), eyes, false);
  const speed = runningSpeed(context, grid, ceilings);
  const most = runningSpeed({ ...context, outing: { ...outing, plannedSpeed: Infinity } }, grid, ceilings);
  const brake = leastBrake(model, fastestAllowed(ceilings, grid.length));
  const stops = (j: number, v: number): number => {
    const d = stopDistance(model, grid[j], v);
    return d < Infinity && holdsFall(model, brake, grid[j]) ? d : Infinity;
  };
  let short = 0;
  let worst = -1;
  for (let j = 0; j < grid.length; j++) {
    const d = stops(j, speed[j]);
    if (d === Infinity) return { fails: fallAt(context, model, brake, grid[j]), surely: false };
    if (d - distance[j] > short) {
      short = d - distance[j];
      worst = j;
    }
  }
  if (worst < 0) {
    // A plan slower than anybody drives says nothing of what is permitted.
    const slowest = slowestDriven(context.outing);
    const surely =
      speed.every((v) => v >= slowest) &&
      (model.holdsEverywhere || most.every((v, j) => v <= speed[j] || stops(j, v) < Infinity));
    return { fails: undefined, surely };
  }
  const { kind, what } = reasons[reason[worst]];
  const named = (kind === 'stopping-sight' && what === 'sight') || kind === 'stopping-visibility' ? '' : what;
  const has = distance[worst] + margin;
  const [need, there] = [amount(has + short, 'length'), amount(has, 'length')];
  return { fails: { what: kind, named, at: grid[worst], need, has: there }, surely: false };
}

/** The fall that the brake does not hold, on the way of a stop from a place. */
function fallAt({ line }: OutingContext, model: StopModel, brake: number, from: number): CountLimit {
  const hardest = hardestPull(model, from, Infinity);
  if (!overcomes(hardest, brake)) return { what: 'cannot-stop', at: from };
  const { at, pull, lost } = hardest;
  return {
    what: 'cannot-stop',
    at: line.loop ? at % line.length : Math.min(at, line.length),
    need: amount(pull, 'force'),
    has: amount(brake - lost, 'force'),
  };
}

/** What the verdict itself would say forbids. */
function closeLook(looked: Looked, ready: Prepared, models: MapModels, state: RailState): Fails {
  const { grid, ceilings } = looked;
  const { context } = ready;
  // Where the fall under the train alone is too much no speed need be looked for.
  const brake = leastBrake(models.cautious, fastestAllowed(ceilings, grid.length));
  const end = grid[grid.length - 1];
  const steepest = hardestPull(models.cautious, 0, end);
  if (overcomes(steepest, brake)) return fallAt(context, models.cautious, brake, steepest.at);
  const map = speedMap(context, state, models, grid, ceilings);
  const wanted = expectedSpeed(context, grid, ceilings);
  const forbidding = askSpeeds({ ...ready, models: () => models }, map, wanted, ceilings).filter(
    forbidsStopping,
  );
  // That it runs away says more than that it would have to creep.
  const finding = forbidding.find(({ code }) => code !== 'too-slow-to-drive') ?? forbidding[0];
  if (!finding) return undefined;
  const { where, found, required } = finding;
  const start = where.from ?? 0;
  if (finding.code === 'cannot-stop') return { what: finding.facts.reason, at: start };
  const lack = required && found ? { need: required, has: found } : {};
  if (finding.code === 'too-slow-to-drive') return { what: finding.facts.reason, at: start, ...lack };
  const at = finding.code === 'brake-does-not-hold-fall' ? finding.facts.at.si : start;
  return { what: 'cannot-stop', at, ...lack };
}

/** What forbids for want of brake; that no speed is permitted, or none is safe in a curve, is another matter. */
const forbidsStopping = (finding: Finding): boolean =>
  finding.severity === 'forbids' &&
  (finding.code === 'brake-does-not-hold-fall' ||
    finding.code === 'no-brake-answers' ||
    ((finding.code === 'cannot-stop' || finding.code === 'too-slow-to-drive') &&
      finding.facts.reason.startsWith('stopping')));
