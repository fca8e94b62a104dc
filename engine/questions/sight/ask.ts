/** How far the driver sees, where nobody has stated it. */
import { amount } from '../../base/quantity.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { stopDistance } from '../../motion/stop.ts';
import { stopMargin } from '../../outing/open.ts';
import { seenToday } from '../../outing/seen.ts';
import { covers, placesOfAssumedSight, sightIsStated, sightsAhead } from '../../things/line/sights.ts';
import { driverBehind } from '../../things/train/crew.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import { AFTER_DARK } from '../speed/available.ts';
import { slowestDriven } from '../speed/slowest.ts';
import { runsWhere } from '../speed/stretch.ts';
import type { SpeedMap } from '../speed/types.ts';

/**
 * Sight that nobody has stated: of the whole line, or of places that may ask for a stop. Where the train does not
 * stop within what is assumed nobody can tell; where it does, the question is the lesser.
 */
export function askSight(ready: Prepared, map: SpeedMap, wanted: Float64Array): Finding[] {
  const today = seenToday(ready.context.outing);
  const dark =
    today === undefined || today.stated
      ? []
      : [
          sightFinding(ready, map, wanted, {
            code: 'night-sight-unknown',
            what: AFTER_DARK,
            sight: today.distance,
            where: {},
            measure: 'outing.conditions.visibility',
          }),
        ];
  return [...dark, ...byLine(ready, map, wanted)];
}

/** Sight that the line does not tell. */
function byLine(ready: Prepared, map: SpeedMap, wanted: Float64Array): Finding[] {
  const { line, outing } = ready.context;
  const sight = outing.assumed.sight;
  const code = 'sight-unknown';
  if (!sightIsStated(line))
    return [
      sightFinding(ready, map, wanted, {
        code,
        what: 'assumed sight',
        sight,
        where: {},
        measure: 'line.sights',
      }),
    ];
  const places = placesOfAssumedSight(line).map((p) =>
    sightFinding(ready, map, wanted, {
      code,
      what: p.name,
      sight,
      where: { place: p.name, from: p.at, to: p.at },
      measure: `line.places.${p.id}.sight`,
    }),
  );
  return [...places, ...takenAsOpen(ready, map)];
}

/**
 * Who states the short sights states no open track: what is said of one bend limits nothing elsewhere. Where a stop
 * takes longer there than would be assumed of a line that states nothing, whether one sees so far is asked.
 */
function takenAsOpen(ready: Prepared, { at, cautiousStop }: SpeedMap): Finding[] {
  const { line, outing } = ready.context;
  const stated = sightsAhead(line);
  const margin = stopMargin(ready.context);
  const needs = (j: number): number => cautiousStop[j] + margin;
  // A stop without end forbids by itself.
  const open = (j: number): boolean =>
    needs(j) > outing.assumed.sight &&
    Number.isFinite(cautiousStop[j]) &&
    !stated.some((s) => covers(line, s.from, s.to, at[j]));
  const runs = runsWhere(at.length, open, () => true);
  if (runs.length === 0) return [];
  let worst = runs[0].first;
  let { first, last } = runs[0];
  for (const run of runs) {
    for (let j = run.first; j <= run.last; j++) {
      if (needs(j) <= needs(worst)) continue;
      worst = j;
      ({ first, last } = run);
    }
  }
  return [
    makeFinding('sight-taken-as-open', 'notes', 'line', {
      where: { from: at[first], to: at[last] },
      facts: {
        at: amount(at[worst], 'length'),
        stop: amount(needs(worst), 'length'),
        others: runs.length - 1,
      },
      measure: 'line.sights',
      sure: 'assumed',
      source: 'common practice, no source',
    }),
  ];
}

/** A sight that nobody has stated, as it is called among the reasons of the speeds. */
interface Unstated {
  readonly code: 'sight-unknown' | 'night-sight-unknown';
  readonly what: string;
  /** Assumed, m. */
  readonly sight: number;
  readonly where: Finding['where'];
  readonly measure: string;
}

function sightFinding(
  ready: Prepared,
  map: SpeedMap,
  wanted: Float64Array,
  { code, what, sight, where, measure }: Unstated,
): Finding {
  const { at, limit, reason, reasons } = map;
  const { outing } = ready.context;
  // Who means to creep is not let off: nobody drives so slowly, and sight that was paced would say more.
  const slowest = slowestDriven(outing);
  const asksFor = (j: number): number => Math.max(wanted[j], slowest);
  const short = (j: number): boolean =>
    limit[j] < asksFor(j) - 1e-3 &&
    reasons[reason[j]].kind === 'stopping-assumed-sight' &&
    reasons[reason[j]].what === what;
  const runs = runsWhere(at.length, short, () => true);
  const facts = {
    sight: amount(sight, 'length'),
    behind: amount(driverBehind(outing, ready.context.loaded), 'length'),
  };
  const asked = { measure, sure: 'assumed' as const, source: 'common practice, no source' };
  if (runs.length === 0) return makeFinding(code, 'notes', 'line', { where, facts, ...asked });
  const { cautious } = ready.models(map.railState);
  let worst = runs[0].first;
  for (const { first, last } of runs) {
    for (let j = first; j <= last; j++) if (limit[j] < limit[worst]) worst = j;
  }
  return makeFinding(code, 'unknown', 'line', {
    where:
      where.place === undefined ? { from: at[runs[0].first], to: at[runs[runs.length - 1].last] } : where,
    found: amount(limit[worst], 'speed'),
    required: amount(asksFor(worst), 'speed'),
    margin: limit[worst] / asksFor(worst) - 1,
    facts: {
      ...facts,
      at: amount(at[worst], 'length'),
      stop: amount(stopDistance(cautious, at[worst], asksFor(worst)) + stopMargin(ready.context), 'length'),
    },
    ...asked,
  });
}
