/** What hauling has to say: can it start everywhere, and keep up a speed on the ruling grade? */

import { GRAVITY } from '../../base/constants.ts';
import { amount, type Quantity } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import { gradeUnder } from '../../motion/prepare.ts';
import type { OutingContext } from '../../outing/open.ts';
import { adhesionLimit, heightsUnstated, machinePull } from '../../things/traction/pull.ts';
import { resistanceAt, resistanceTerms } from '../../things/train/resistance.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { drivenAdhesion, NUISANCE, pullsAlong } from './draws.ts';
import { carefulKeep, speedKept } from './keep.ts';
import { surgePushed } from './pushed.ts';
import { bookedStops, carefulStart, startsAt, stretches } from './start.ts';
import type { HaulResult } from './types.ts';

export function askHauling(context: OutingContext): Findings<HaulResult | null> {
  const { outing, loaded } = context;
  const state = outing.conditions.railState;
  const pulls = pullsAlong(context, 0.5);
  const careful = carefulStart(context, pulls, state);
  if (!careful) return { findings: [unknownPull(context), ...surgePushed(context)], data: null };
  const adhesion = drivenAdhesion(outing.assumed, careful.rail);
  const hard = stretches(careful, pulls);
  const ruling = carefulKeep(context, pulls, state) ?? careful;
  const speed = speedKept(context, pulls, state, ruling.node);
  const slow = outing.assumed.practice['slow-climb'];
  const data: HaulResult = {
    startsAt: careful.at,
    startPull: careful.pull,
    startNeed: careful.need,
    startFails: careful.fails,
    hardStretches: hard,
    balancingSpeed: speed ?? null,
    rulingAt: ruling.at,
  };
  const findings: Finding[] = surgePushed(context);
  if (hard.length > 0) {
    const asked = startsAt(careful, pulls, bookedStops(context)).filter(({ fails }) => fails > NUISANCE);
    const worst = hard.reduce((a, b) => (b.fails > a.fails ? b : a));
    // Not to start is a nuisance; it limits where the train must stop, or may be made to. What likely stalls on the way
    // does not get round.
    const limits = asked.length > 0 || careful.fails > 0.5;
    const severity = careful.stalls ? 'forbids' : limits ? 'limits' : 'notes';
    findings.push(
      makeFinding('cannot-start', severity, 'hauling', {
        where: { from: worst.from, to: worst.to },
        found: amount(careful.pull, 'force'),
        required: amount(careful.need, 'force'),
        margin: careful.pull / careful.need - 1,
        facts: {
          likelyPull: amount(careful.likelyPull, 'force'),
          likelyNeed: amount(careful.likelyNeed, 'force'),
          fails: amount(careful.fails, 'ratio'),
          stretches: amount(hard.length, 'count'),
          places: asked.map((p) => p.name).join(', '),
        },
        sum: needSum(context, careful.at, careful.need),
        source: adhesion.source ?? 'rail state',
        sure: 'assumed',
      }),
    );
  } else if (speed !== undefined && speed < slow.value) {
    findings.push(
      makeFinding('slow-on-grade', speed === 0 ? 'limits' : 'notes', 'hauling', {
        where: { from: ruling.at, to: ruling.at },
        found: amount(speed, 'speed'),
        required: amount(slow.value, 'speed'),
        sum: {
          ...needSum(
            context,
            ruling.at,
            pulls.curved.slope[ruling.node] + resistanceAt(resistanceTerms(loaded.vehicles, 1), speed),
          ),
          differs: 'part',
        },
        source: slow.source,
      }),
    );
  }
  return {
    findings: [...findings, ...heightsTaken(context, pulls.curved.slope[careful.node], adhesion)],
    data,
  };
}

/** Of engines whose pull may hang on a height that nobody measured: adhesion may limit it, and the weight moves. */
function heightsTaken({ outing, loaded }: OutingContext, slope: number, { low }: Quantity): Finding[] {
  const heights = outing.assumed.engineHeight;
  const grade = slope / (loaded.mass * GRAVITY);
  const hangs = loaded.vehicles.flatMap((engine) => {
    const { traction } = engine.vehicle;
    const machine = traction ? (machinePull(traction, 0, 1) ?? Infinity) : 0;
    return adhesionLimit(engine, low, grade, heights, -1) < machine ? [engine.vehicle] : [];
  });
  const names = (which: keyof typeof heights): string[] =>
    hangs.filter((v) => heightsUnstated(v).includes(which)).map((v) => v.name);
  return [
    ...taken('engine-height/centre', 'height of the centre of gravity', heights.centre, names('centre')),
    ...taken('engine-height/coupler', 'height of the rear coupler', heights.coupler, names('coupler')),
  ];
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
