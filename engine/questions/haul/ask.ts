/** What hauling has to say: can it start everywhere, and keep up a speed on the ruling grade? */

import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { SumRef } from '../../base/sum.ts';
import { gradeUnder, potentialOf } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { adhesionLimit } from '../../things/traction/pull.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { balancingSpeed, startCheck } from './haul.ts';
import type { HaulResult } from './types.ts';

/** Slower than this on the ruling grade is said, m/s (2 mph). */
const SLOW = 2 * 0.44704;

export function askHauling(context: OutingContext): Findings<HaulResult | null> {
  const { outing, line, loaded } = context;
  const adhesion = outing.assumed.adhesion[outing.conditions.railState];
  const potential = potentialOf(line, loaded, outing.assumed.curveConstant.high, 0.5, 0);
  const careful = startCheck(loaded, potential, line.length, adhesion, outing.assumed, -1);
  const likely = startCheck(loaded, potential, line.length, adhesion, outing.assumed, 0);
  if (careful.pull === undefined || likely.pull === undefined) {
    return { findings: [unknownPull(context)], data: null };
  }
  const node = Math.round((careful.at - potential.from) / potential.step);
  const linePull = potential.slope[node];
  const speed = balancingSpeed(loaded, linePull, adhesion, -1);
  const data: HaulResult = {
    startsAt: careful.at,
    startPull: careful.pull,
    startNeed: careful.need,
    balancingSpeed: speed ?? null,
    rulingAt: careful.at,
  };
  const findings: Finding[] = [];
  const where = { from: careful.at, to: careful.at };
  if (careful.pull < careful.need) {
    const surely = likely.pull < likely.need;
    findings.push(
      makeFinding('cannot-start', surely ? 'forbids' : 'limits', 'hauling', {
        where,
        found: amount(careful.pull, 'force'),
        required: amount(careful.need, 'force'),
        margin: careful.pull / careful.need - 1,
        facts: { likelyPull: amount(likely.pull, 'force'), likelyNeed: amount(likely.need, 'force') },
        sum: adhesionSum(context, linePull, careful.pull) ?? needSum(context, careful.at, careful.need),
        source: adhesion.source ?? 'rail state',
        sure: 'assumed',
      }),
    );
  } else if (speed !== undefined && speed < SLOW) {
    findings.push(
      makeFinding('slow-on-grade', speed === 0 ? 'limits' : 'notes', 'hauling', {
        where,
        found: amount(speed, 'speed'),
        required: amount(SLOW, 'speed'),
        sum: {
          ...needSum(
            context,
            careful.at,
            linePull + resistanceAt(resistanceTerms(loaded.vehicles, 1), speed),
          ),
          differs: 'part',
        },
        source: 'common practice, no source',
      }),
    );
  }
  return { findings, data };
}

/** The adhesion of all engines, with the load on their driven wheels as the grade moves it, where it sets the pull. */
function adhesionSum({ outing, loaded }: OutingContext, linePull: number, pull: number): SumRef | undefined {
  const adhesion = pick(outing.assumed.adhesion[outing.conditions.railState], -1);
  const load =
    loaded.vehicles.reduce(
      (sum, v) =>
        v.vehicle.traction ? sum + adhesionLimit(v, adhesion, linePull / (loaded.mass * GRAVITY)) : sum,
      0,
    ) / adhesion;
  return pull < adhesion * load * (1 - 1e-9)
    ? undefined
    : { id: 'adhesion-limit', inputs: { adhesion, load } };
}

/** What the train needs at a place: grade, and all that resists besides, curves with it. */
function needSum({ line, loaded }: OutingContext, at: number, need: number): SumRef {
  const grade = gradeUnder(line, loaded, at);
  const rate = need / (loaded.mass * GRAVITY) - grade;
  return { id: 'small-gauge-resistance', inputs: { mass: loaded.mass, rate, grade } };
}

function unknownPull({ outing }: OutingContext): Finding {
  const engine = outing.train.vehicles.find((v) => v.role === 'engine');
  return makeFinding('traction-unknown', 'unknown', 'hauling', {
    where: engine ? { vehicle: engine.id } : {},
    measure: 'vehicle.traction',
    source: 'vehicle',
  });
}
