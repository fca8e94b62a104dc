/**
 * Does every vehicle meet the host's sheet? Refused beyond its limits; slow in the band between, where the sheet has one; and
 * what it asks for and nobody measured is asked for.
 */
import { amount, type Kind } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { StandardKey } from '../../outing/types.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { otherKinds } from './kinds.ts';
import { type Compared, type Judged, lookAtStandards } from './look.ts';
import { outsideProfile } from './profile.ts';

export function askStandards(context: OutingContext): Findings<readonly Compared[]> {
  const compared = lookAtStandards(context);
  return {
    findings: [
      ...compared.flatMap((c) => [...beyond(c), ...notMeasured(c)]),
      ...otherKinds(context),
      ...outsideProfile(context),
    ],
    data: compared,
  };
}

const angles: readonly StandardKey[] = ['flangeAngle', 'treadTaper', 'couplerSwing'];
export const kindOf = (key: StandardKey): Kind =>
  key === 'axleLoad' ? 'mass' : angles.includes(key) ? 'angle' : 'length';

const worstOf = (of: readonly Judged[]): Judged => of.reduce((a, b) => (b.left < a.left ? b : a));

/** One line for what is refused and one for what is slow, the worst of each. */
function beyond({ key, judged, standard }: Compared): Finding[] {
  const kind = kindOf(key);
  return (['refused', 'slow'] as const).flatMap((word): Finding[] => {
    const these = judged.filter((j) => j.word === word);
    if (these.length === 0) return [];
    const worst = worstOf(these);
    const { reading, found, bound, side } = worst;
    const facts = {
      of: key,
      side,
      wheelset: reading.wheelset,
      end: reading.end,
      others: these.length - 1,
    };
    const told = {
      where: { vehicle: reading.vehicle },
      found: amount(found, kind),
      required: amount(bound, kind),
      margin: worst.left / Math.max(Math.abs(bound), 1e-9),
      source: standard.source,
    };
    const { slowSpeed } = standard;
    return [
      word === 'refused'
        ? makeFinding('standard-refused', 'forbids', 'host', { ...told, facts })
        : makeFinding('standard-slow', slowSpeed === undefined ? 'unknown' : 'limits', 'host', {
            ...told,
            facts: { ...facts, ...(slowSpeed === undefined ? {} : { speed: amount(slowSpeed, 'speed') }) },
          }),
    ];
  });
}

/** Where in a vehicle's paper the figure stands. */
const fields: Readonly<Record<StandardKey, string>> = {
  backToBack: 'vehicle.wheelsets.backToBack',
  backVariation: 'vehicle.wheelsets.backToBack',
  wheelCheck: 'vehicle.wheelsets.flangeThickness',
  flangeThickness: 'vehicle.wheelsets.flangeThickness',
  flangeHeight: 'vehicle.wheelsets.flangeHeight',
  treadHollow: 'vehicle.wheelsets.hollow',
  wheelWidth: 'vehicle.wheelsets.width',
  flangeAngle: 'vehicle.flange.angle',
  treadTaper: 'vehicle.wheelsets.taper',
  couplerHeight: 'coupling.height',
  couplerHeightLoaded: 'vehicle.suspension.wheelStiffness',
  couplerSwing: 'coupling.swing',
  couplerHold: 'coupling.face',
  bodyWidth: 'vehicle.envelope',
  bodyHeight: 'vehicle.envelope',
  vehicleLength: 'vehicle.length',
  trainLength: 'vehicle.length',
  axleLoad: 'vehicle.tare',
  leastRadius: 'vehicle.ratings.leastRadius',
};

function notMeasured({ key, without, standard }: Compared): Finding[] {
  if (without.length === 0) return [];
  return [
    makeFinding('standard-not-measured', 'unknown', 'host', {
      where: { vehicle: without[0].id },
      facts: { of: key, vehicles: [...new Set(without.map((v) => v.name))].join(', ') },
      measure: fields[key],
      source: standard.source,
    }),
  ];
}
