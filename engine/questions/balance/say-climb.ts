/** Findings about flange climb. */

import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { BalanceData } from './ask.ts';
import type { FlangeWay, NearestClimb } from './climbing.ts';

const SOURCE = 'Nadal 1896; 49 CFR 213.333';

/** What each way of running weighs: on the run it forbids, under the brake it limits how to drive. */
const weights: readonly { readonly way: FlangeWay; readonly severity: Severity }[] = [
  { way: 'running', severity: 'forbids' },
  { way: 'braking', severity: 'limits' },
  { way: 'engine-braking', severity: 'notes' },
];

export function climbFindings(context: OutingContext, data: BalanceData): Finding[] {
  const said = new Set<number>();
  const findings: Finding[] = [];
  for (const { way, severity } of weights) {
    const climb = data.flanges.nearest[way];
    // What is wrong on the run is wrong under the brake too, and said once.
    if (!climb || climb.found <= climb.limit || said.has(climb.index)) continue;
    said.add(climb.index);
    findings.push(climbFinding(context, way, severity, climb));
  }
  const { running } = data.flanges.nearest;
  if (findings.length === 0 && running && !running.shape.angleKnown) {
    findings.push(
      makeFinding('flange-shape-unknown', 'notes', 'balance', {
        where: { vehicle: idOf(context, running) },
        found: amount(running.found, 'ratio'),
        required: amount(running.limit, 'ratio'),
        margin: 1 - running.found / running.limit,
        facts: { bears: 'yes' },
        sum: limitSum(running),
        measure: 'vehicle.flange.angle',
        source: SOURCE,
        sure: 'assumed',
      }),
    );
  }
  return findings;
}

const idOf = ({ loaded }: OutingContext, climb: NearestClimb): string =>
  loaded.vehicles[climb.index].vehicle.id;

const limitSum = ({ shape: { angle, friction } }: NearestClimb): SumRef => ({
  id: 'nadal-limit',
  inputs: { 'flange-angle': angle, friction },
});

/** @param way how the train runs, or how it is handled */
export function climbFinding(
  context: OutingContext,
  way: string,
  severity: Severity,
  climb: NearestClimb,
): Finding {
  const { vehicle } = context.loaded.vehicles[climb.index];
  const known = climb.shape.angleKnown;
  const { found, limit } = climb;
  return makeFinding(
    known ? 'flange-may-climb' : 'flange-shape-unknown',
    known ? severity : severity === 'notes' ? 'notes' : 'unknown',
    'balance',
    {
      where: { vehicle: vehicle.id, from: climb.at, to: climb.at },
      ...(Number.isFinite(found) ? { found: amount(found, 'ratio') } : {}),
      required: amount(limit, 'ratio'),
      margin: Number.isFinite(found) ? 1 - found / limit : -1,
      facts: {
        way,
        group: vehicle.groups[climb.group].name,
        front: amount(climb.front, 'force'),
        rear: amount(climb.rear, 'force'),
        friction: amount(climb.shape.friction, 'ratio'),
        frictionKnown: climb.shape.frictionKnown ? 'yes' : 'no',
        bears: 'no',
      },
      sum: limitSum(climb),
      ...(known ? {} : { measure: 'vehicle.flange.angle' }),
      source: SOURCE,
      sure: climb.shape.frictionKnown && known ? 'stated' : 'assumed',
    },
  );
}
