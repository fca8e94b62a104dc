/**
 * Do the couplers stay in hold? Heights as stated, less what springs give under people, the line under both vehicles, and
 * what cant and twist tilt them.
 * Less than half a face limits, nothing left forbids. Faces and heights that nobody measured are asked for only where couplers of the
 * usual size might slip by.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Finding, Severity } from '../finding.ts';
import type { FactsOf } from '../findings.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type CrestGap, type Hold, lookAtCrests, missesBy } from './look.ts';

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
  const sink = context.outing.assumed.practice['coupler-sink'];
  return {
    findings: [
      ...slips(gaps),
      ...otherwiseSeated(gaps),
      ...unknown(gaps, usual),
      ...sinksUnknown(gaps, sink.value * context.line.gauge, sink.source),
    ],
    data: { gaps },
  };
}

const added = ({ apart, tilt, stated }: CrestGap): boolean =>
  Math.abs(apart) + tilt > Math.abs(stated ?? 0) + NOTHING;

/** A survey with few points does not know how sharp the track bends: it may ask, not forbid. */
function weighHeld({ held, face }: Hold, sparse: boolean): Severity | undefined {
  if (held <= ROUNDING) return sparse ? 'unknown' : 'forbids';
  return held < face / 2 ? 'limits' : undefined;
}

const factsOf = (
  { other, lie, apart, stated, line, springs, tilt, people }: CrestGap,
  others: number,
): Omit<FactsOf<'coupler-face-unknown'>, 'even' | 'face' | 'doubt'> => ({
  other,
  lie,
  higher: apart > 0 ? 'ahead' : 'behind',
  stated: amount(Math.abs(stated ?? 0), 'length'),
  line: amount(Math.abs(line), 'length'),
  springs: amount(Math.abs(springs), 'length'),
  tilt: amount(tilt, 'length'),
  people,
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

/** What holds as people sit, and would not with a full car beside an empty one. */
function otherwiseSeated(gaps: readonly CrestGap[]): Finding[] {
  const of = gaps.flatMap((g) =>
    g.hold && g.under && g.stated !== null && g.hold.held > ROUNDING && g.under.any <= ROUNDING
      ? [{ ...g, hold: g.hold, under: g.under }]
      : [],
  );
  if (of.length === 0) return [];
  const worst = of.reduce((a, b) => (b.under.any < a.under.any ? b : a));
  const { face } = worst.hold;
  return [
    makeFinding('couplers-slip-by', 'notes', 'fit', {
      where: placeOf(worst),
      found: amount(0, 'length'),
      required: amount(face / 2, 'length'),
      margin: -1,
      facts: { ...factsOf(worst, of.length - 1), people: 'any', face: amount(face, 'length') },
      source: SOURCE,
    }),
  ];
}

/** Cars that carry people on springs which nobody measured: what holds now may not when they have sunk. @param sink m */
function sinksUnknown(gaps: readonly CrestGap[], sink: number, source: string): Finding[] {
  const of = gaps.flatMap((g) =>
    g.springsUnknown && g.hold && g.hold.held > ROUNDING && g.hold.held <= sink + ROUNDING
      ? [{ ...g, hold: g.hold }]
      : [],
  );
  if (of.length === 0) return [];
  const worst = of.reduce((a, b) => (b.hold.held < a.hold.held ? b : a));
  const { held } = worst.hold;
  return [
    makeFinding('coupler-sink-unknown', 'limits', 'fit', {
      where: placeOf(worst),
      found: amount(held, 'length'),
      required: amount(sink, 'length'),
      margin: (held - sink) / sink,
      facts: { other: worst.other, lie: worst.lie, sink: amount(sink, 'length'), others: of.length - 1 },
      sure: 'assumed',
      measure: 'vehicle.suspension.wheelStiffness',
      source,
    }),
  ];
}

/**
 * Beyond half of a face within limits, beyond all of one it is asked for. Of a bend that the survey's spacing alone makes so sharp one
 * step less: nobody knows that it is there. Heights that nobody stated may differ by as much as the trade couples: who says nothing is
 * never told less than who states them within that.
 *
 * @param usual half of a usual knuckle, m: of faces that nobody measured
 */
function unknown(gaps: readonly CrestGap[], usual: number): Finding[] {
  const silent = gaps.filter((g) => (g.hold === null || g.stated === null) && added(g));
  const out = ({ apart, tilt, doubt }: CrestGap): number => Math.abs(apart) + tilt + doubt;
  const misses = ({ hold }: CrestGap) => missesBy(hold, 2 * usual);
  const even = ({ gentle, doubt }: CrestGap): number => gentle + doubt;
  // Bent evenly between the points of the survey it would not ask. Of faces that are known the bend counts as it is surveyed.
  const isSpaced = (g: CrestGap): boolean =>
    g.hold === null && even(g) < misses(g).half && out(g) >= misses(g).half;
  const weigh = (g: CrestGap): Severity | undefined => {
    const { half, all } = misses(g);
    if (out(g) >= all) return isSpaced(g) ? 'limits' : 'unknown';
    return out(g) < half ? undefined : isSpaced(g) ? 'notes' : 'limits';
  };
  const share = (g: CrestGap): number => out(g) / misses(g).half;
  // What one levelling settles, and what is measured at the train.
  const each = [false, true].map((spaced) => silent.filter((g) => isSpaced(g) === spaced));
  return (['unknown', 'limits', 'notes'] as const).flatMap((severity) => {
    return each.flatMap((gaps) => {
      const of = gaps.filter((g) => weigh(g) === severity);
      if (of.length === 0) return [];
      const worst = of.reduce((a, b) => (share(b) > share(a) ? b : a));
      const { hold, doubt } = worst;
      const atTrain = worst.stated === null ? 'coupling.height' : 'coupling.face';
      return [
        makeFinding('coupler-face-unknown', severity, 'fit', {
          where: placeOf(worst),
          found: amount(out(worst), 'length'),
          required: amount(misses(worst).half, 'length'),
          margin: Math.max(-1, 1 - share(worst)),
          facts: {
            ...factsOf(worst, of.length - 1),
            even: amount(even(worst), 'length'),
            ...(hold ? { face: amount(hold.face, 'length') } : {}),
            ...(doubt > 0 ? { doubt: amount(doubt, 'length') } : {}),
          },
          sure: 'assumed',
          measure: isSpaced(worst) ? 'line.profile' : atTrain,
          source: SOURCE,
        }),
      ];
    });
  });
}
