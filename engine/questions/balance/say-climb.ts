/** Findings about flange climb. */

import { type Amount, amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { PeakScenario } from '../couplers/peaks.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { BalanceData } from './ask.ts';
import type { FlangeWay, NearestClimb } from './climbing.ts';

const SOURCE = 'Nadal 1896; 49 CFR 213.333';

/**
 * What each way of running weighs: on the run it forbids, under the brake, or creeping on cant, it limits how to
 * drive.
 */
const weights: readonly { readonly way: FlangeWay; readonly severity: Severity }[] = [
  { way: 'running', severity: 'forbids' },
  { way: 'creeping', severity: 'limits' },
  { way: 'braking', severity: 'limits' },
  { way: 'engine-braking', severity: 'notes' },
];

export function climbFindings(context: OutingContext, data: BalanceData): Finding[] {
  const said = new Set<number>();
  const findings: Finding[] = [];
  const { nearest, unmeasured: running } = data.flanges;
  const climbs = weights.map(({ way, severity }) => ({ way, severity, climb: nearest[way] }));
  // A flange that must be measured is asked for, though one that was measured be nearer to its limit.
  climbs.splice(1, 0, { way: 'running', severity: 'forbids', climb: running });
  for (const { way, severity, climb } of climbs) {
    // What is wrong on the run is wrong under the brake too, and said once.
    if (!climb || climb.found <= climb.limit || said.has(climb.index)) continue;
    said.add(climb.index);
    const slower = way === 'running' ? slowerFor(data, climb) : undefined;
    findings.push(climbFinding(context, way, slower ? 'limits' : severity, climb, slower));
  }
  if (findings.length === 0 && running) {
    findings.push(
      makeFinding('flange-shape-unknown', 'notes', 'balance', {
        where: { vehicle: idOf(context, running) },
        found: amount(running.found, 'ratio'),
        required: amount(running.limit, 'ratio'),
        margin: marginOf(running.found, running.limit),
        facts: {
          bears: true,
          angle: amount(running.shape.angle, 'angle'),
          friction: amount(running.shape.friction, 'ratio'),
        },
        sum: limitSum(running),
        measure: 'vehicle.flange.angle',
        source: SOURCE,
        sure: 'assumed',
      }),
    );
  }
  return findings;
}

/** The speed at which the flange holds there, where the curve alone is too fast and a flange holds everywhere. */
function slowerFor(
  { flanges: { ceiling }, grid }: BalanceData,
  climb: NearestClimb,
): Amount<'speed'> | undefined {
  const speed = ceiling.speed[grid.indexOf(climb.at)];
  return climb.shape.angleKnown && ceiling.speed.every((v) => v > 0) && Number.isFinite(speed)
    ? amount(speed, 'speed')
    : undefined;
}

/** What a flange weighs whose angle nobody measured: it may ask, never forbid; and little happens at a creep. */
const ofUnmeasured = (way: string, severity: Severity): Severity =>
  severity === 'forbids' ? 'unknown' : way === 'creeping' ? 'notes' : severity;

const idOf = ({ loaded }: OutingContext, climb: NearestClimb): string =>
  loaded.vehicles[climb.index].vehicle.id;

const limitSum = ({ shape: { angle, friction } }: NearestClimb): SumRef => ({
  id: 'nadal-limit',
  inputs: { 'flange-angle': angle, friction },
});

/**
 * @param way how the train runs, or how it is handled
 * @param slower speed at which it would hold
 */
export function climbFinding(
  context: OutingContext,
  way: FlangeWay | PeakScenario,
  severity: Severity,
  climb: NearestClimb,
  slower?: Amount<'speed'>,
): Finding {
  const { vehicle } = context.loaded.vehicles[climb.index];
  const known = climb.shape.angleKnown;
  const { found, limit } = climb;
  return makeFinding(
    known ? 'flange-may-climb' : 'flange-shape-unknown',
    known ? severity : ofUnmeasured(way, severity),
    'balance',
    {
      where: { vehicle: vehicle.id, from: climb.at, to: climb.at },
      ...(Number.isFinite(found) ? { found: amount(found, 'ratio') } : {}),
      required: amount(limit, 'ratio'),
      margin: Number.isFinite(found) ? marginOf(found, limit) : -1,
      facts: {
        way,
        group: vehicle.groups[climb.group].name,
        front: amount(climb.front, 'force'),
        rear: amount(climb.rear, 'force'),
        friction: amount(climb.shape.friction, 'ratio'),
        frictionKnown: climb.shape.frictionKnown,
        bears: false,
        angle: amount(climb.shape.angle, 'angle'),
        ...(slower ? { slower } : {}),
      },
      sum: limitSum(climb),
      ...(known ? {} : { measure: 'vehicle.flange.angle' }),
      source: SOURCE,
      sure: climb.shape.frictionKnown && known ? 'stated' : 'assumed',
    },
  );
}
