/**
 * Do these wheels run on this track? Each wheelset against each frog, guard rail and gauge of the line, pair by pair. What
 * was not measured and meets a measured frog is asked for; where the line states none it is noted.
 */
import { amount } from '../../base/quantity.ts';
import type { SumRef } from '../../base/sum.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type Line, MAIN } from '../../things/line/types.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { aslantBinds } from './aslant.ts';
import { framesBind } from './frame.ts';
import {
  comparedOn,
  isAcross,
  lookAtWheels,
  type Measured,
  type Met,
  type WheelsetFit,
  without,
} from './look.ts';
import { wornWheels } from './worn.ts';

export interface WheelsData {
  readonly wheelsets: readonly WheelsetFit[];
}

const SOURCE = '49 CFR 213.143 by the pair: wheels and track both as measured';
const GEOMETRY = 'common engineering geometry: wheels and track both as measured';
const PRACTICE = 'common practice, no source';
/** Rounding of sums of lengths, m. */
const ROUNDING = 1e-9;

export function askWheels(context: OutingContext): Findings<WheelsData> {
  const wheelsets = lookAtWheels(context);
  const near = context.outing.assumed.practice['wheel-near'].value * context.line.gauge;
  return {
    findings: [
      ...strikes(wheelsets, near),
      ...binds(wheelsets, near),
      ...tight(wheelsets),
      ...drops(wheelsets, context),
      ...floors(wheelsets, near),
      ...varies(wheelsets, context),
      ...diametersDiffer(wheelsets, context),
      ...wornWheels(context),
      ...framesBind(context),
      ...aslantBinds(context),
      ...notMeasured(context),
      ...widthsNotMeasured(context, wheelsets),
      ...frogsNotMeasured(context.line, wheelsets),
    ],
    data: { wheelsets },
  };
}

interface At<M extends Met> {
  readonly fit: WheelsetFit;
  readonly met: M;
}

/** Those of a weight with the worst first: what does not pass forbids, what has little left is noted. */
function weighed<M extends Met>(
  of: readonly WheelsetFit[],
  met: (fit: WheelsetFit) => M | null,
  weigh: (met: M) => Severity | undefined,
  tell: (worst: At<M>, severity: Severity, others: number, all: readonly At<M>[]) => Finding,
): Finding[] {
  const all = of
    .flatMap((fit): At<M>[] => {
      const at = met(fit);
      return at ? [{ fit, met: at }] : [];
    })
    .sort((a, b) => a.met.left - b.met.left);
  return (['forbids', 'unknown', 'limits', 'notes'] as const).flatMap((severity) => {
    const these = all.filter((a) => weigh(a.met) === severity);
    return these.length === 0 ? [] : [tell(these[0], severity, these.length - 1, these)];
  });
}

const byNear =
  (near: number) =>
  ({ left }: Met): Severity | undefined =>
    left < -ROUNDING ? 'forbids' : left < near - ROUNDING ? 'notes' : undefined;

const whereOf = ({ fit, met }: At<Met>): Finding['where'] => ({
  vehicle: fit.vehicle,
  from: met.from,
  to: met.to,
});

/** Of a pair: where it meets, what of the wheelset is held against what of the track, and what is left. */
const pairOf = (worst: At<Met>) => ({
  where: whereOf(worst),
  found: amount(worst.met.found, 'length'),
  required: amount(worst.met.bears, 'length'),
  margin: worst.met.left / worst.met.bears,
});

/** A wheelset where it is widest; not a number where nobody measured it: of such a one no finding can be made. */
const widest = ({ backs, wheelset }: WheelsetFit) => ({
  back: backs?.most ?? Number.NaN,
  flange: wheelset.flangeThickness?.high ?? Number.NaN,
});

/** Wheel check against guard check: beyond it the flange meets the point of the frog. */
const strikes = (of: readonly WheelsetFit[], near: number): Finding[] =>
  weighed(
    of,
    ({ frog }) => frog,
    byNear(near),
    (worst, severity, others) => {
      const { fit, met } = worst;
      const { back, flange } = widest(fit);
      return makeFinding('wheel-strikes-frog', severity, 'fit', {
        ...pairOf(worst),
        facts: {
          wheelset: fit.wheelset.name,
          place: met.place,
          back: amount(back, 'length'),
          flange: amount(flange, 'length'),
          known: met.measured ? 'measured' : 'by gap',
          others,
        },
        sum: { id: 'wheel-check', inputs: { 'back-to-back': back, flange, 'guard-check': met.bears } },
        source: SOURCE,
      });
    },
  );

/** Back to back against guard face: narrower, and the wheels jam on guard rail and wing or climb them. */
const binds = (of: readonly WheelsetFit[], near: number): Finding[] =>
  weighed(
    of,
    ({ guard }) => guard,
    byNear(near),
    (worst, severity, others) => {
      const { fit, met } = worst;
      return makeFinding('wheelset-binds-at-guard', severity, 'fit', {
        ...pairOf(worst),
        facts: {
          wheelset: fit.wheelset.name,
          place: met.place,
          known: met.measured ? 'measured' : 'by gap',
          others,
        },
        source: SOURCE,
      });
    },
  );

/** Wider over its flanges than the rails are apart. */
const tight = (of: readonly WheelsetFit[]): Finding[] =>
  weighed(
    of,
    ({ gauge }) => gauge,
    ({ left }) => (left < -ROUNDING ? 'forbids' : undefined),
    (worst, severity, others) => {
      const { fit, met } = worst;
      const { back, flange } = widest(fit);
      return makeFinding('wheelset-binds-in-gauge', severity, 'fit', {
        ...pairOf(worst),
        facts: {
          wheelset: fit.wheelset.name,
          place: met.place,
          back: amount(back, 'length'),
          flange: amount(flange, 'length'),
          others,
        },
        sum: { id: 'flange-play', inputs: { gauge: met.bears, widening: 0, 'back-to-back': back, flange } },
        source: GEOMETRY,
      });
    },
  );

/** Where the gauge is widest, with one flange against its rail: how much of the other tread still lies on its own. */
function drops(of: readonly WheelsetFit[], { outing, line }: OutingContext): Finding[] {
  const row = outing.assumed.practice['wheel-tread'];
  const need = row.value * line.gauge;
  return weighed(
    of,
    ({ tread }) => tread,
    ({ left }) => (left < -ROUNDING ? 'forbids' : left < need - ROUNDING ? 'limits' : undefined),
    (worst, severity, others) => {
      const { fit, met } = worst;
      return makeFinding('wheel-drops-in', severity, 'fit', {
        where: whereOf(worst),
        found: amount(met.left, 'length'),
        required: amount(need, 'length'),
        margin: (met.left - need) / need,
        facts: { wheelset: fit.wheelset.name, widening: amount(met.widening, 'length'), others },
        sum: treadSum(fit, met),
        source: severity === 'forbids' ? GEOMETRY : row.source,
      });
    },
  );
}

const treadSum = ({ backs, wheelset }: WheelsetFit, met: { gauge: number; widening: number }): SumRef => ({
  id: 'tread-on-rail',
  inputs: {
    gauge: met.gauge,
    widening: met.widening,
    'back-to-back': backs?.least ?? Number.NaN,
    flange: wheelset.flangeThickness?.low ?? Number.NaN,
    width: wheelset.width ?? Number.NaN,
  },
});

/** Flange height against the depth of the gap: deeper, and the wheel rides up on its flange. */
const floors = (of: readonly WheelsetFit[], near: number): Finding[] =>
  weighed(
    of,
    ({ floor }) => floor,
    byNear(near),
    (worst, severity, others) => {
      const { fit, met } = worst;
      return makeFinding('flange-strikes-floor', severity, 'fit', {
        ...pairOf(worst),
        facts: { wheelset: fit.wheelset.name, place: met.place, others },
        source: '49 CFR 213.137 by the pair: flange and gap both as measured',
      });
    },
  );

/** Back to back that changes round the wheels: a bent axle, or a wheel that works loose. */
function varies(of: readonly WheelsetFit[], { outing, line }: OutingContext): Finding[] {
  const row = outing.assumed.practice['wheel-runout'];
  const most = row.value * line.gauge;
  const odd = of
    .flatMap((fit) => (fit.backs ? [{ fit, ...fit.backs, by: fit.backs.most - fit.backs.least }] : []))
    .filter(({ by }) => by > most + ROUNDING)
    .sort((a, b) => b.by - a.by);
  if (odd.length === 0) return [];
  const [{ fit, by, least, most: widest }] = odd;
  return [
    makeFinding('back-to-back-varies', 'limits', 'fit', {
      where: { vehicle: fit.vehicle },
      found: amount(by, 'length'),
      required: amount(most, 'length'),
      margin: (most - by) / most,
      facts: {
        wheelset: fit.wheelset.name,
        least: amount(least, 'length'),
        most: amount(widest, 'length'),
        others: odd.length - 1,
      },
      source: row.source,
    }),
  ];
}

/** Two wheels on one axle roll through the same turns: the larger runs ahead, and the flange of the smaller grinds. */
function diametersDiffer(wheelsets: readonly WheelsetFit[], { outing, line }: OutingContext): Finding[] {
  const row = outing.assumed.practice['wheel-diameter'];
  const most = row.value * line.gauge;
  const odd = wheelsets
    .map((fit) => ({ fit, by: spreadOf(fit.wheelset.diameters ?? []) }))
    .filter(({ by }) => by > most + ROUNDING)
    .sort((a, b) => b.by - a.by);
  if (odd.length === 0) return [];
  const [{ fit, by }] = odd;
  return [
    makeFinding('wheel-diameters-differ', 'limits', 'fit', {
      where: { vehicle: fit.vehicle },
      found: amount(by, 'length'),
      required: amount(most, 'length'),
      margin: (most - by) / most,
      facts: { wheelset: fit.wheelset.name, others: odd.length - 1 },
      source: row.source,
    }),
  ];
}

const spreadOf = (of: readonly number[]): number => (of.length === 0 ? 0 : Math.max(...of) - Math.min(...of));

/** What is asked for, as it is called and as its field is. */
const fields = {
  backToBack: { of: 'back to back', measure: 'vehicle.wheelsets.backToBack' },
  flangeThickness: { of: 'flange thickness', measure: 'vehicle.wheelsets.flangeThickness' },
  flangeHeight: { of: 'flange height', measure: 'vehicle.wheelsets.flangeHeight' },
} as const;

/** Asked for where the line has something to hold it against; else a note for the whole train. */
function notMeasured({ line, outing }: OutingContext): Finding[] {
  const compared = comparedOn(line);
  const asked: readonly Measured[] = compared.size > 0 ? [...compared] : ['backToBack'];
  return asked.flatMap((of) => {
    const lacking = without(outing.train.vehicles, of);
    if (lacking.length === 0) return [];
    return [
      makeFinding('wheels-not-measured', compared.size > 0 ? 'unknown' : 'notes', 'fit', {
        where: { vehicle: lacking[0].id },
        facts: { vehicles: [...new Set(lacking.map((v) => v.name))].join(', '), of: fields[of].of },
        measure: fields[of].measure,
        source: compared.size > 0 ? SOURCE : PRACTICE,
      }),
    ];
  });
}

/**
 * Of wheels of which nobody measured the width: from how wide on they would do. Where even the narrowest that is published would drop
 * in it is asked for, where such a one has too little tread left it limits; else a note where the gauge is anywhere wider than the line's.
 */
function widthsNotMeasured({ outing, line }: OutingContext, wheelsets: readonly WheelsetFit[]): Finding[] {
  const { 'wheel-tread': tread, 'wheel-narrow': narrow } = outing.assumed.practice;
  const [wanted, narrowest] = [tread.value * line.gauge, narrow.value * line.gauge];
  return weighed(
    wheelsets,
    ({ width }) => width,
    ({ left, widening, place }) =>
      narrowest + left < -ROUNDING
        ? 'unknown'
        : narrowest + left < wanted - ROUNDING
          ? 'limits'
          : widening > 0 || place !== ''
            ? 'notes'
            : undefined,
    (worst, severity, _others, all) =>
      makeFinding('wheels-not-measured', severity, 'fit', {
        where: whereOf(worst),
        required: amount(wanted - worst.met.left, 'length'),
        facts: {
          vehicles: [...new Set(all.map(({ fit }) => fit.name))].join(', '),
          of: 'width',
          narrowest: amount(narrowest, 'length'),
        },
        measure: 'vehicle.wheelsets.width',
        source: severity === 'notes' ? PRACTICE : narrow.source,
      }),
  );
}

/** Between the tips of points and their frog, at most, m. */
const TURNOUT = 5;

/** Those that have none of the others near by: each other goes with one alone, the nearest pairs first. */
function alone<T extends { readonly at: number }>(
  of: readonly T[],
  others: readonly { readonly at: number }[],
): T[] {
  const pairs = of
    .flatMap((one) => others.map((other) => ({ one, other, by: Math.abs(one.at - other.at) })))
    .filter(({ by }) => by <= TURNOUT)
    .sort((a, b) => a.by - b.by);
  const paired = new Set<object>();
  for (const { one, other } of pairs) if (!paired.has(one) && !paired.has(other)) paired.add(one).add(other);
  return of.filter((one) => !paired.has(one));
}

/** Turnouts of which no frog was measured, where the wheels were: places so called, and points at which tracks leave. */
function frogsNotMeasured(line: Line, wheelsets: readonly WheelsetFit[]): Finding[] {
  if (wheelsets.length === 0) return [];
  const { places, flangeways = [], tracks = [] } = line;
  const points = tracks.flatMap(({ name, start, end }) =>
    [start, ...(end ? [end] : [])].flatMap(({ track, at }) => (track === MAIN ? [{ name, at }] : [])),
  );
  const called = places.filter((p) => p.kind === 'switch');
  const measured = flangeways.filter((way) => isAcross(line, way));
  const turnouts = alone([...called, ...alone(points, called)], measured).sort((a, b) => a.at - b.at);
  if (turnouts.length === 0) return [];
  return [
    makeFinding('flangeways-not-measured', 'notes', 'fit', {
      where: { place: turnouts[0].name, from: turnouts[0].at, to: turnouts[0].at },
      facts: { places: turnouts.length },
      measure: 'line.flangeways',
      source: PRACTICE,
    }),
  ];
}
