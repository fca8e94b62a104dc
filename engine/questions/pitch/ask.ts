/**
 * Do bars and links turn up and down as far as they must? What is stated and does not suffice forbids; what is not
 * stated limits beyond what the stiffest usual one gives: push the two over it by hand first.
 */
import { amount, type Quantity } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding, Severity } from '../finding.ts';
import type { FactsOf } from '../findings.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Findings } from '../question.ts';
import { lookAtPitch, type PitchEnd } from './look.ts';

export interface PitchData {
  readonly ends: readonly PitchEnd[];
}

/** Less than a tenth left is told. */
const NEAR = 0.1;
/** Of sums of angles, rad. */
const ROUNDING = 1e-9;
const SOURCE = 'both vehicles placed on the heights of the line: common engineering geometry';

/** What an end turns, with what is not known of heights and springs, rad. */
interface Weighed {
  readonly end: PitchEnd;
  readonly gives: number;
  readonly doubt: number;
  readonly severity: Severity | undefined;
  readonly code: 'coupler-pitch-short' | 'coupler-pitch-unknown';
}

export function askPitch(context: OutingContext): Findings<PitchData> {
  const { outing, line } = context;
  const usual = outing.assumed.coupler.pitch;
  const height = outing.assumed.practice['half-knuckle'].value * line.gauge;
  const sink = outing.assumed.practice['coupler-sink'].value * line.gauge;
  const ends = lookAtPitch(context);
  const weighed = ends.map((end) =>
    weigh(end, usual, (end.heightsKnown ? 0 : height) + (end.springsUnknown ? sink : 0)),
  );
  return {
    findings: [
      ...(['forbids', 'unknown', 'limits', 'notes'] as const).flatMap((severity) =>
        (['coupler-pitch-short', 'coupler-pitch-unknown'] as const).flatMap((code) => {
          const these = weighed.filter((w) => w.severity === severity && w.code === code);
          // What one levelling settles, and what is measured at the train.
          return [false, true].flatMap((spaced) => tell(these.filter((w) => isSpaced(w) === spaced)));
        }),
      ),
      ...takenFor(weighed, usual),
    ],
    data: { ends },
  };
}

/** @param loose how far the two pins may stand apart beyond what is known, m */
function weigh(end: PitchEnd, usual: Quantity, loose: number): Weighed {
  const gives = end.gives ?? usual.low;
  const doubt = loose / end.bar;
  const known = end.gives !== null && end.heightsKnown && end.shanksKnown;
  const of = (severity: Severity | undefined, short: boolean): Weighed => ({
    end,
    gives,
    doubt,
    severity,
    code: short ? 'coupler-pitch-short' : 'coupler-pitch-unknown',
  });
  if (end.needed > gives + ROUNDING) {
    if (known) return of(end.sparse && end.lie !== 'level' ? 'unknown' : 'forbids', true);
    return of(end.gives === null ? unstated(end, usual) : 'unknown', false);
  }
  // What nobody measured may turn it farther: beside a stated figure that is all that is missing.
  if (doubt > 0 && end.needed + doubt > gives) return of(end.gives === null ? 'notes' : 'limits', false);
  return of(end.needed > (1 - NEAR) * gives && known ? 'notes' : undefined, true);
}

/**
 * Beyond what the stiffest usual bar gives. A bend that the survey's spacing alone makes so sharp is asked for; it limits where it is
 * so sharp that a loose link would strike too, or where bent evenly it strikes all the same.
 */
function unstated({ needed, gentle }: PitchEnd, { low, high }: Quantity): Severity {
  if (gentle > high + ROUNDING) return 'unknown';
  return gentle > low + ROUNDING || needed > high + ROUNDING ? 'limits' : 'notes';
}

/** What is to be measured first. */
function asksOf(weighed: Weighed): Pick<Finding, 'measure'> {
  const { end, code, severity } = weighed;
  if (code === 'coupler-pitch-short') return severity === 'unknown' ? { measure: 'line.profile' } : {};
  if (isSpaced(weighed)) return { measure: 'line.profile' };
  if (!end.heightsKnown) return { measure: 'coupling.height' };
  if (end.gives === null) return { measure: 'coupling.pitch' };
  return { measure: end.shanksKnown ? 'vehicle.suspension.wheelStiffness' : 'coupling.shank' };
}

/** Bent evenly between the points of the survey it would not strike. */
const isSpaced = ({ end: { needed, gentle }, gives }: Weighed): boolean =>
  needed > gives + ROUNDING && gentle <= gives + ROUNDING;

const factsOf = (
  { other, end, way, lie, bar, line, stated, springs, cant }: PitchEnd,
  others: number,
): FactsOf<'coupler-pitch-short'> => ({
  end,
  other,
  way,
  lie,
  bar: amount(bar, 'length'),
  line: amount(line, 'angle'),
  stated: amount(stated, 'angle'),
  springs: amount(springs, 'angle'),
  cant: amount(cant, 'angle'),
  others,
});

function tell(of: readonly Weighed[]): Finding[] {
  if (of.length === 0) return [];
  const left = ({ end, gives }: Weighed): number => marginOf(end.needed, gives);
  const worst = of.reduce((a, b) => (left(b) < left(a) ? b : a));
  const { end, gives, severity = 'notes', doubt } = worst;
  const details = {
    where: { gap: end.gap, vehicle: end.vehicle, from: end.at, to: end.at },
    found: amount(end.needed, 'angle'),
    required: amount(gives, 'angle'),
    source: SOURCE,
    ...asksOf(worst),
  };
  const facts = factsOf(end, of.length - 1);
  return [
    worst.code === 'coupler-pitch-short'
      ? makeFinding('coupler-pitch-short', severity, 'fit', {
          ...details,
          facts,
          margin: Math.max(-1, left(worst)),
        })
      : makeFinding('coupler-pitch-unknown', severity, 'fit', {
          ...details,
          facts: { ...facts, doubt: amount(doubt, 'angle'), even: amount(end.gentle, 'angle') },
          sure: 'assumed',
        }),
  ];
}

/** What stood in for figures that nobody stated, and sufficed. */
const takenFor = (weighed: readonly Weighed[], usual: Quantity): Finding[] =>
  taken(
    'coupler/pitch',
    'how far bars and links turn up and down, at least',
    usual,
    weighed.flatMap(({ end, gives }) =>
      end.gives === null && end.needed <= gives && end.needed > 0 ? [end.name] : [],
    ),
  );
