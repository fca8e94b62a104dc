/**
 * Do the couplers stay in hold? Heights as stated, less what springs give under people, and the line under both vehicles.
 * Less than half a face limits, nothing left forbids. Faces that nobody measured are asked for only where couplers of the usual size
 * might slip by.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Finding, Severity } from '../finding.ts';
import type { FactsOf } from '../findings.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type CrestGap, type Hold, lookAtCrests } from './look.ts';

export interface CrestsData {
  readonly gaps: readonly CrestGap[];
}

const SOURCE = 'both vehicles placed on the heights of the line: common engineering geometry';
/** Added by line and springs, less is as the couplers stand in the yard, m. */
const NOTHING = 1e-4;
/** Of sums of lengths, m. */
const ROUNDING = 1e-9;

export function askCrests(context: OutingContext): Findings<CrestsData> {
  const gaps = lookAtCrests(context);
  const usual = context.outing.assumed.practice['half-knuckle'].value * context.line.gauge;
  return { findings: [...slips(gaps), ...unknown(gaps, usual)], data: { gaps } };
}

const added = ({ apart, stated }: CrestGap): boolean => Math.abs(apart) > Math.abs(stated ?? 0) + NOTHING;

/** A survey with few points does not know how sharp the track bends: it may ask, not forbid. */
function weighHeld({ held, face }: Hold, sparse: boolean): Severity | undefined {
  if (held <= ROUNDING) return sparse ? 'unknown' : 'forbids';
  return held < face / 2 ? 'limits' : undefined;
}

const factsOf = (
  { other, lie, apart, stated, line, springs }: CrestGap,
  others: number,
): FactsOf<'coupler-face-unknown'> => ({
  other,
  lie,
  higher: apart > 0 ? 'ahead' : 'behind',
  stated: amount(Math.abs(stated ?? 0), 'length'),
  line: amount(Math.abs(line), 'length'),
  springs: amount(Math.abs(springs), 'length'),
  others,
});

const placeOf = ({ gap, vehicle, at }: CrestGap): Finding['where'] => ({ gap, vehicle, from: at, to: at });

function slips(gaps: readonly CrestGap[]): Finding[] {
  const known = gaps.flatMap((g) =>
    g.hold && g.stated !== null && added(g) ? [{ ...g, hold: g.hold }] : [],
  );
  return (['forbids', 'unknown', 'limits'] as const).flatMap((severity) => {
    const of = known.filter(({ hold, sparse }) => weighHeld(hold, sparse) === severity);
    if (of.length === 0) return [];
    const worst = of.reduce((a, b) => (b.hold.held < a.hold.held ? b : a));
    const { held, face } = worst.hold;
    return [
      makeFinding('couplers-slip-by', severity, 'fit', {
        where: placeOf(worst),
        found: amount(Math.max(0, held), 'length'),
        required: amount(face / 2, 'length'),
        margin: Math.max(-1, (held - face / 2) / (face / 2)),
        facts: { ...factsOf(worst, of.length - 1), face: amount(face, 'length') },
        ...(severity === 'unknown' ? { measure: 'line.profile' } : {}),
        source: SOURCE,
      }),
    ];
  });
}

/** @param usual half of a usual knuckle, m */
function unknown(gaps: readonly CrestGap[], usual: number): Finding[] {
  const silent = gaps.filter((g) => (g.hold === null || g.stated === null) && added(g));
  const weigh = ({ apart, stated }: CrestGap): Severity | undefined => {
    if (Math.abs(apart) >= 2 * usual) return 'unknown';
    // Heights that nobody measured are not known to differ.
    return Math.abs(apart) < usual ? undefined : stated === null ? 'notes' : 'limits';
  };
  return (['unknown', 'limits', 'notes'] as const).flatMap((severity) => {
    const of = silent.filter((g) => weigh(g) === severity);
    if (of.length === 0) return [];
    const worst = of.reduce((a, b) => (Math.abs(b.apart) > Math.abs(a.apart) ? b : a));
    return [
      makeFinding('coupler-face-unknown', severity, 'fit', {
        where: placeOf(worst),
        found: amount(Math.abs(worst.apart), 'length'),
        required: amount(usual, 'length'),
        margin: Math.max(-1, 1 - Math.abs(worst.apart) / usual),
        facts: factsOf(worst, of.length - 1),
        sure: 'assumed',
        measure: worst.stated === null ? 'coupling.height' : 'coupling.face',
        source: SOURCE,
      }),
    ];
  });
}
