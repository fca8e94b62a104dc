/**
 * Does anything ground over a crest or in a sag, does a wheel lift? Low parts as measured against the rail that comes up to them;
 * a middle axle against the outer two. What nobody measured is asked for only where the line takes as much as published practice
 * leaves in all.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type GroupFit, type HumpFit, lookAtHumps, type PartFit } from './look.ts';

const SOURCE = 'the vehicle placed on the heights of the line: common engineering geometry';
/** Of sums of lengths, m. */
const ROUNDING = 1e-9;

export function askHumps(context: OutingContext): Findings<readonly HumpFit[]> {
  const fits = lookAtHumps(context);
  const { practice } = context.outing.assumed;
  const gauge = context.line.gauge;
  const [below, least] = [practice['clear-below'], practice['flange-least']];
  const clear = { room: below.value * gauge, source: below.source };
  const flange = { height: least.value * gauge, source: least.source };
  return {
    findings: [...strikes(fits, clear), ...notMeasured(fits, clear), ...lifts(fits, flange)],
    data: fits,
  };
}

interface Of<T> {
  readonly fit: HumpFit;
  readonly one: T;
}

/** One finding for each severity, of the worst, with how many more. */
function worstOfEach<T>(
  all: readonly Of<T>[],
  weigh: (of: Of<T>) => Severity | undefined,
  tell: (worst: Of<T>, severity: Severity, others: number) => Finding,
): Finding[] {
  return (['forbids', 'unknown', 'limits', 'notes'] as const).flatMap((severity) => {
    const these = all.filter((of) => weigh(of) === severity);
    return these.length === 0 ? [] : [tell(these[0], severity, these.length - 1)];
  });
}

const whereOf = ({ fit, one }: Of<{ readonly at: number }>): Finding['where'] => ({
  vehicle: fit.vehicle,
  from: one.at,
  to: one.at,
});

interface Clear {
  readonly room: number;
  readonly source: string;
}

/** A survey with few points does not know how sharp the track bends: it may ask, not forbid. */
function strikes(fits: readonly HumpFit[], { room, source }: Clear): Finding[] {
  const all = fits
    .flatMap((fit) => fit.parts.map((one): Of<PartFit> => ({ fit, one })))
    .sort((a, b) => a.one.left - b.one.left);
  return worstOfEach(
    all,
    ({ one }) =>
      one.left <= ROUNDING
        ? one.sparse && one.height - one.sink > ROUNDING
          ? 'unknown'
          : 'forbids'
        : one.left < room - ROUNDING
          ? 'limits'
          : undefined,
    (worst, severity, others) => {
      const { part, height, rise, sink, left, lie } = worst.one;
      return makeFinding('part-strikes-track', severity, 'fit', {
        where: whereOf(worst),
        found: amount(left, 'length'),
        required: amount(room, 'length'),
        margin: Math.max(-1, (left - room) / room),
        facts: {
          part,
          lie,
          height: amount(height, 'length'),
          rise: amount(rise, 'length'),
          sink: amount(sink, 'length'),
          others,
        },
        ...(severity === 'unknown' ? { measure: 'line.profile' } : {}),
        source: severity === 'limits' ? source : SOURCE,
      });
    },
  );
}

/**
 * Where the rail comes up by all that practice leaves under a vehicle, push it over and look; by twice that, nobody can tell. Between
 * far points of a survey neither the track nor the vehicle is known: a note.
 */
function notMeasured(fits: readonly HumpFit[], { room, source }: Clear): Finding[] {
  const all = fits
    .flatMap((fit): Of<NonNullable<HumpFit['most']>>[] =>
      fit.parts.length === 0 && fit.most ? [{ fit, one: fit.most }] : [],
    )
    .sort((a, b) => b.one.rise - a.one.rise);
  return worstOfEach(
    all,
    ({ one }) =>
      one.rise < room ? undefined : one.sparse ? 'notes' : one.rise >= 2 * room ? 'unknown' : 'limits',
    (worst, severity, others) =>
      makeFinding('low-parts-not-measured', severity, 'fit', {
        where: whereOf(worst),
        found: amount(worst.one.rise, 'length'),
        required: amount(room, 'length'),
        margin: Math.max(-1, 1 - worst.one.rise / room),
        facts: { lie: worst.one.lie, others },
        sure: 'assumed',
        measure: 'vehicle.lowParts',
        source,
      }),
  );
}

/** A wheel that hangs by its flange holds nothing: it forbids. Less limits; unknown travel asks where a rigid frame would hang so. */
function lifts(
  fits: readonly HumpFit[],
  usual: { readonly height: number; readonly source: string },
): Finding[] {
  const all = fits
    .flatMap((fit) => fit.groups.map((one): Of<GroupFit> => ({ fit, one })))
    .sort((a, b) => b.one.hangs - a.one.hangs || b.one.mayHang - a.one.mayHang);
  const flangeOf = ({ fit }: Of<GroupFit>): number => fit.flange ?? usual.height;
  return worstOfEach(
    all,
    (of) => {
      const { one } = of;
      if (one.travel === undefined)
        return one.mayHang < flangeOf(of) - ROUNDING ? undefined : one.sparse ? 'notes' : 'unknown';
      if (one.hangs >= flangeOf(of) - ROUNDING) return one.sparse ? 'unknown' : 'forbids';
      return one.hangs > ROUNDING ? 'limits' : undefined;
    },
    (worst, severity, others) => {
      const { one, fit } = worst;
      const hangs = one.travel === undefined ? one.mayHang : one.hangs;
      const flange = flangeOf(worst);
      return makeFinding('wheel-lifts-on-hump', severity, 'fit', {
        where: whereOf(worst),
        found: amount(hangs, 'length'),
        required: amount(flange, 'length'),
        margin: Math.max(-1, 1 - hangs / flange),
        facts: {
          group: one.group,
          lie: one.lie,
          versine: amount(Math.abs(one.versine), 'length'),
          others,
        },
        ...(one.travel === undefined
          ? { measure: 'vehicle.axleGroups.travel' }
          : severity === 'unknown'
            ? { measure: 'line.profile' }
            : {}),
        source: fit.flange === undefined ? usual.source : SOURCE,
      });
    },
  );
}
