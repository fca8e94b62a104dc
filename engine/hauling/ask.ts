/** What hauling has to say: can it start everywhere, and keep up a speed on the ruling grade? */
import { makeFinding } from '../finding/make.ts';
import type { Finding } from '../finding/types.ts';
import type { HaulResult } from '../outing/answer.ts';
import type { OutingContext } from '../outing/context.ts';
import type { Findings } from '../outing/question.ts';
import { amount } from '../quantity.ts';
import { potentialOf } from '../stopping/prepare.ts';
import { balancingSpeed, startCheck } from './haul.ts';

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
  const speed = balancingSpeed(loaded, potential.slope[node], adhesion, -1);
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
        source: 'common practice, no source',
      }),
    );
  }
  return { findings, data };
}

function unknownPull({ outing }: OutingContext): Finding {
  const engine = outing.train.vehicles.find((v) => v.role === 'engine');
  return makeFinding('traction-unknown', 'unknown', 'hauling', {
    where: engine ? { vehicle: engine.id } : {},
    measure: 'vehicle.traction',
    source: 'vehicle',
  });
}
