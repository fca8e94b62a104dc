/**
 * May it leave? Every question asked of one outing, gathered into one answer.
 *
 * Pure and repeatable: the same outing gives the same answer. Remedies are sought in `remedies.ts`.
 */

import { type Prepared, prepare } from '../motion/prepare.ts';
import { type OutingContext, openOuting } from '../outing/open.ts';
import type { Outing } from '../outing/types.ts';
import type { BalanceLook } from '../questions/balance/look.ts';
import type { WheelMap } from '../questions/balance/wheel-map.ts';
import { askChains } from '../questions/chains/ask.ts';
import { askCouplers } from '../questions/couplers/ask.ts';
import type { Finding } from '../questions/finding.ts';
import { askFlag } from '../questions/gap/ask.ts';
import { askHauling } from '../questions/haul/ask.ts';
import { askHolding } from '../questions/hold/ask.ts';
import { askHost } from '../questions/host/ask.ts';
import { makeFinding, ranked, verdictOf } from '../questions/make.ts';
import { askParting } from '../questions/part/ask.ts';
import type { Ceiling } from '../questions/question.ts';
import { askLoads } from '../questions/ratings/ask.ts';
import { askBrakeGear, askGap, askSight, askSpeeds } from '../questions/speed/ask.ts';
import { runningSpeed } from '../questions/speed/ceilings.ts';
import { brakingPoints } from '../questions/speed/map.ts';
import { runningOf } from '../questions/speed/running.ts';
import type { Answer } from './types.ts';

export interface CheckOptions {
  /** Runs behind each peak in the couplings; absent: as many as its confidence needs. */
  readonly couplerRuns?: number;
}

/** The answer in chainage of the running direction, without car counts: they cost most of the time. */
export function checkOuting(outing: Outing): Answer {
  const context = openOuting(outing);
  if (outing.train.vehicles.length === 0) throw new RangeError('a train needs at least one vehicle');
  return answerPrepared(prepare(context));
}

export function answerPrepared(ready: Prepared, options: CheckOptions = {}): Answer {
  const { context } = ready;
  const { outing } = context;
  const state = outing.conditions.railState;
  const haul = askHauling(context);
  const hold = askHolding(ready);
  const findings: Finding[] = [
    ...askHost(context),
    ...askLoads(context),
    ...haul.findings,
    ...hold.findings,
    ...askBrakeGear(ready),
    ...askSight(ready),
    ...lineFindings(context),
    ...assumptionFindings(outing),
  ];
  const { balance, ceilings, map, models, running } = runningOf(ready);
  const chains = askChains(context, ready.brakes.groups);
  findings.push(
    ...balance.findings,
    ...askSpeeds(ready, map, runningSpeed(context, map.at, wanted(ceilings))),
    ...askGap(ready, map),
    ...chains.findings,
    ...withoutSaid(
      askCouplers(context, ready.brakes.groups, balance.data, options.couplerRuns).findings,
      balance.findings,
    ),
    ...askParting({
      context,
      chains: chains.data,
      cautiousShare: ready.cautiousShare(state),
      speeds: running,
      bodies: balance.data,
    }).findings,
    ...askFlag({ context, model: models.cautious, speeds: running, step: map.step }).findings,
  );
  const all = ranked(findings);
  return {
    verdict: verdictOf(all),
    findings: all,
    speeds: map,
    wheels: wheelMap(balance.data),
    brakingPoints: brakingPoints(context, map, models.cautious),
    cars: [],
    haul: haul.data,
    hold: hold.data,
  };
}

const wheelMap = ({ grid, lightest, required, unbounded }: BalanceLook): WheelMap => ({
  at: grid,
  ...lightest,
  required: required.value,
  unknown: unbounded,
});

/** What is wrong with steady forces is wrong with their peaks too, and said once. */
const withoutSaid = (peaks: readonly Finding[], steady: readonly Finding[]): Finding[] =>
  peaks.filter(
    (p) =>
      !steady.some(
        (f) => f.code === p.code && f.where.vehicle === p.where.vehicle && f.facts['bears'] !== 'yes',
      ),
  );

/** What the driver may expect to run at: the host's own limits, not those that the train's nature sets. */
const wanted = (ceilings: readonly Ceiling[]): Ceiling[] =>
  ceilings.filter(
    (c) => c.reason.kind !== 'balance' && c.reason.kind !== 'flange' && c.reason.kind !== 'curve',
  );

function lineFindings({ outing }: OutingContext): Finding[] {
  const { line } = outing;
  if (line.heightQuality !== 'gps' && line.heightQuality !== 'assumed') return [];
  return [
    makeFinding('heights-poor', 'limits', 'line', {
      facts: { quality: line.heightQuality },
      source: 'survey',
      sure: 'assumed',
      measure: 'line.profile',
    }),
  ];
}

function assumptionFindings({ assumptions }: Outing): Finding[] {
  return assumptions.map((a) =>
    makeFinding('assumed', 'assumed', 'assumptions', {
      facts: { of: a.of, where: a.where, key: a.key },
      source: a.source,
      sure: 'assumed',
    }),
  );
}
