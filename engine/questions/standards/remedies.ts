/** Changes worth trying where a vehicle does not meet the host's sheet: its wheels pressed, its coupler shimmed, riders or cars left behind. */
import type { Change } from '../../outing/change.ts';
import type { Outing, StandardKey } from '../../outing/types.ts';
import { backsOf } from '../../things/wheel/pair.ts';
import { fewerCars, fewerRidersOn, leaveOne, stepsFrom } from '../changes.ts';
import type { Family, Remedies } from '../family.ts';
import type { Finding } from '../finding.ts';

/** As fine as a fitter sets it, m, and as far as is worth it. */
const STEP = 0.0001;
const MOST_STEPS = 60;
/** Of sums of lengths, m. */
const ROUNDING = 1e-9;

export const standardRemedies: Remedies = {
  'standard-refused': (outing, f) => [...setRight(outing, f), leaveOne(outing, f, 5)],
  'coupler-kind-refused': (outing, f) => [leaveOne(outing, f, 5)],
  'outside-profile': (outing, f) => [leaveOne(outing, f, 5)],
  'standard-slow': (outing, f) => [...setRight(outing, f), leaveOne(outing, f, 5)],
};

function setRight(outing: Outing, finding: Finding): Family[] {
  const { facts, where } = finding;
  if ('of' in facts && facts.of === 'trainLength') return [fewerCars(outing, 4)];
  if ('of' in facts && facts.of === 'axleLoad') return [fewerRidersOn(outing, where.vehicle, 4)];
  const vehicle = outing.train.vehicles.find((v) => v.id === where.vehicle);
  if (!vehicle || !('of' in facts) || !('end' in facts)) return [];
  const { end, wheelset } = facts;
  if (facts.of === 'couplerHeight' && end !== '') {
    // Both ends of one make are shimmed alike: one alone would still be refused by the other.
    const alike = vehicle.front.height === vehicle.rear.height;
    const raised = (of: 'front' | 'rear', by: number): Change => ({
      kind: 'coupler-raised',
      vehicle: vehicle.id,
      end: of,
      by,
    });
    return [
      within(outing, finding, facts.of, 0, (by) =>
        alike ? { kind: 'together', changes: [raised('front', by), raised('rear', by)] } : raised(end, by),
      ),
    ];
  }
  const axle = vehicle.wheelsets?.find((w) => w.name === wheelset);
  if ((facts.of !== 'backToBack' && facts.of !== 'wheelCheck') || !axle) return [];
  const backs = backsOf(axle);
  const flange = facts.of === 'wheelCheck' ? axle.flangeThickness : undefined;
  const spread = (backs ? backs.most - backs.least : 0) + (flange ? flange.high - flange.low : 0);
  return [
    within(outing, finding, facts.of, spread, (by) => ({
      kind: 'wheel-gauge',
      vehicle: vehicle.id,
      wheelset: axle.id,
      by,
    })),
  ];
}

/**
 * Step by step towards the band that is taken at full speed, and no farther than its other side: beyond it the sheet refuses again.
 *
 * @param spread between its least and its most reading, of the figure's unit
 */
function within(
  { host }: Outing,
  finding: Finding,
  of: StandardKey,
  spread: number,
  change: (by: number) => Change,
): Family {
  const {
    least = -Infinity,
    slowBelow = -Infinity,
    most = Infinity,
    slowAbove = Infinity,
  } = host.standards?.[of] ?? {};
  const [from, to] = [Math.max(least, slowBelow) - ROUNDING, Math.min(most, slowAbove) + ROUNDING];
  const found = finding.found?.si ?? 0;
  const way = Math.sign((finding.required?.si ?? 0) - found);
  const takes = (by: number): boolean =>
    [found + way * by, found + way * (by + spread)].every((at) => at >= from && at <= to);
  return {
    size: 3,
    changes: stepsFrom(finding, STEP, MOST_STEPS)
      .filter(takes)
      .map((by) => change(way * by)),
  };
}
