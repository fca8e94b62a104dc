/**
 * Does the train clear what stands beside and over its line? Each vehicle on its true chord, with the play of its flanges and
 * the lean of canted track, against each structure as measured. What is touched with the flanges hard over is limited, what
 * is touched whatever they do is forbidden; a vehicle that nobody measured is asked for.
 */
import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { Line, Place, PlaceKind } from '../../things/line/types.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Findings } from '../question.ts';
import { type Clearances, lookAtClearance, type Passing, type Room, type Spread } from './look.ts';
import { askPlatforms } from './platforms.ts';
import { lookAtSidings } from './sidings.ts';

const SOURCE =
  'vehicle and structure as measured, placed on the plan of the line: common engineering geometry';
const PRACTICE = 'common practice, no source';
/** Rounding of sums of lengths, m. */
const ROUNDING = 1e-6;

export function askClearance(context: OutingContext): Findings<Clearances> {
  const data = lookAtClearance(context);
  const row = context.outing.assumed.practice['clear-beside'];
  return {
    findings: [
      ...struck(data.passings, 'body', 'strikes-structure'),
      ...struck(data.passings, 'people', 'rider-strikes-structure'),
      ...near(data.passings, row),
      ...inReach(data.passings, context),
      ...askPlatforms(context),
      ...tooLong(data),
      ...unmeasured(data),
      ...sidingsShort(context),
      ...nothingMeasured(context.line),
    ],
    data,
  };
}

type Part = 'body' | 'people';

const touches = ({ left }: Room): boolean => left < -ROUNDING;

/** Whatever play and people do; or only at their most. */
function weightOf({ low, likely, high }: Spread, part: Part): Severity | undefined {
  if (touches(part === 'body' ? low : likely)) return 'forbids';
  return touches(high) ? 'limits' : undefined;
}

interface At {
  readonly passing: Passing;
  readonly room: Room;
}

/** Other structures of the same weight than the worst. */
const othersThan = (worst: At, all: readonly At[]): number =>
  new Set(all.map(({ passing }) => passing.structure.id)).size - (all.includes(worst) ? 1 : 0);

const least = (of: readonly At[]): At => of.reduce((a, b) => (b.room.left < a.room.left ? b : a));

const told = (worst: At) => ({
  where: { vehicle: worst.passing.vehicle, from: worst.room.at, to: worst.room.at },
  found: amount(worst.room.takes, 'length'),
  required: amount(worst.room.leaves, 'length'),
  margin: marginOf(worst.room.takes, worst.room.leaves),
  source: SOURCE,
});

/** Only what leans it to that side: it leans away as well. */
const swayOf = ({ sway }: Room) => (sway !== undefined && sway > 0 ? { sway: amount(sway, 'length') } : {});

/** What people sit on strikes as surely as they do: said once. */
const beforeThem = ({ body }: Passing, part: Part, severity: Severity): boolean => {
  const its = part === 'people' && body ? weightOf(body, 'body') : undefined;
  return its === 'forbids' || its === severity;
};

/** The nearest that anything of a vehicle comes, at its most. */
const nearest = ({ body, people }: Passing): Room | undefined =>
  [body?.high, people?.high]
    .filter((room) => room !== undefined)
    .reduce<Room | undefined>((a, b) => (a && a.left <= b.left ? a : b), undefined);

function struck(
  passings: readonly Passing[],
  part: Part,
  code: 'strikes-structure' | 'rider-strikes-structure',
): Finding[] {
  return (['forbids', 'limits'] as const).flatMap((severity): Finding[] => {
    const these = passings.flatMap((passing): At[] => {
      const spread = passing[part];
      if (!spread || weightOf(spread, part) !== severity || beforeThem(passing, part, severity)) return [];
      const room = severity === 'limits' ? spread.high : part === 'body' ? spread.low : spread.likely;
      return [{ passing, room }];
    });
    if (these.length === 0) return [];
    const worst = least(these);
    const { structure, side, beyond } = worst.passing;
    const facts = { structure: structure.name, side, others: othersThan(worst, these) };
    return [
      code === 'strikes-structure'
        ? makeFinding(code, severity, 'fit', {
            ...told(worst),
            facts: { ...facts, beyond: amount(Math.max(0, beyond), 'length'), ...swayOf(worst.room) },
          })
        : makeFinding(code, severity, 'fit', { ...told(worst), facts, sure: 'assumed' }),
    ];
  });
}

/** It passes, with less than sway and track that moves take up. */
function near(passings: readonly Passing[], { value, source }: { value: number; source: string }): Finding[] {
  const these = passings.flatMap((passing): At[] => {
    const room = passing.side === 'over' ? passing.body?.high : passing.body && nearest(passing);
    return room && !touches(room) && room.left < value - ROUNDING ? [{ passing, room }] : [];
  });
  if (these.length === 0) return [];
  const worst = least(these);
  return [
    makeFinding('little-room-beside', 'limits', 'fit', {
      ...told(worst),
      found: amount(worst.room.left, 'length'),
      required: amount(value, 'length'),
      margin: (worst.room.left - value) / value,
      facts: {
        structure: worst.passing.structure.name,
        side: worst.passing.side,
        others: othersThan(worst, these),
        ...swayOf(worst.room),
      },
      source,
    }),
  ];
}

/** What people on the train can touch. */
function inReach(passings: readonly Passing[], { outing, loaded }: OutingContext): Finding[] {
  const arm = outing.assumed.person.arm.high;
  const seated = new Set(loaded.vehicles.filter((v) => v.riders.length > 0).map((v) => v.vehicle.id));
  const these = passings.flatMap((passing): At[] => {
    const room = passing.side === 'over' ? undefined : nearest(passing);
    return room && seated.has(passing.vehicle) && room.left < arm ? [{ passing, room }] : [];
  });
  if (these.length === 0) return [];
  const worst = least(these);
  return [
    makeFinding('within-arms-reach', 'notes', 'fit', {
      where: { vehicle: worst.passing.vehicle, from: worst.room.at, to: worst.room.at },
      facts: { structure: worst.passing.structure.name, others: othersThan(worst, these) },
      source: PRACTICE,
    }),
  ];
}

const tooLong = ({ tooLong: of }: Clearances): Finding[] =>
  of === null
    ? []
    : [
        makeFinding('frame-too-long-for-curve', 'forbids', 'fit', {
          where: { vehicle: of.vehicle.vehicle.id, from: of.at, to: of.at },
          source: SOURCE,
        }),
      ];

function unmeasured({ unmeasured: of }: Clearances): Finding[] {
  if (of.length === 0) return [];
  return [
    makeFinding('body-not-measured', 'unknown', 'fit', {
      where: { vehicle: of[0].vehicle.id },
      facts: { vehicles: [...new Set(of.map((v) => v.vehicle.name))].join(', ') },
      measure: 'vehicle.envelope',
      source: SOURCE,
    }),
  ];
}

/** Which sidings this train does not stand clear in; whether it is meant to, the paper does not say. */
function sidingsShort(context: OutingContext): Finding[] {
  return lookAtSidings(context).flatMap(({ siding, clear, without }): Finding[] => {
    const at = siding.spacings[0].at;
    const where = { place: siding.name, from: at, to: siding.spacings[siding.spacings.length - 1].at };
    if (clear === undefined)
      return [
        makeFinding('siding-not-measured', 'notes', 'fit', {
          where,
          facts: { siding: siding.name, vehicles: without },
          measure: siding.radius === undefined ? 'line.sidings.radius' : 'vehicle.envelope',
          source: SOURCE,
        }),
      ];
    const { length } = context.loaded;
    const usable = clear === null ? 0 : clear.to - clear.from;
    if (usable >= length) return [];
    return [
      makeFinding('siding-too-short', 'notes', 'fit', {
        where,
        found: amount(length, 'length'),
        required: amount(usable, 'length'),
        margin: marginOf(length, usable),
        facts: { siding: siding.name, length: amount(usable, 'length') },
        source: SOURCE,
      }),
    ];
  });
}

const standsClose: ReadonlySet<PlaceKind> = new Set(['tunnel', 'bridge', 'station']);
/** A structure belongs to a place that it stands no farther from than this, m: both are told by a tape along the line. */
const ITS_OWN = 5;

/**
 * Where something surely stands near the track, and nobody measured it there: what was measured elsewhere tells nothing
 * of it. Walls and a roof on all sides limit; beside a station or on a bridge it is a note.
 */
function nothingMeasured({ places, structures = [] }: Line): Finding[] {
  const measured = ({ at, to = at }: Place): boolean =>
    structures.some((s) => s.from <= to + ITS_OWN && s.to >= at - ITS_OWN);
  const unmeasured = places.filter((p) => standsClose.has(p.kind) && !measured(p));
  if (unmeasured.length === 0) return [];
  const tunnels = unmeasured.filter((p) => p.kind === 'tunnel');
  const close = [...tunnels, ...unmeasured.filter((p) => p.kind !== 'tunnel')];
  return [
    makeFinding('structures-not-measured', tunnels.length > 0 ? 'limits' : 'notes', 'fit', {
      where: { place: close[0].name, from: close[0].at, to: close[0].to ?? close[0].at },
      facts: { places: close.length },
      measure: 'line.structures',
      source: PRACTICE,
    }),
  ];
}
