/**
 * How hard may one brake today, and where the rail is worse than the day's, there? For each handle the brake at which the first wheels begin to slide at the careful end
 * of today's adhesion, as a gauge shows it where there is a gauge; and how far one goes who holds full brake with
 * sliding wheels instead of easing it.
 */
import { type Amount, amount } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { stopDistance } from '../../motion/stop.ts';
import type { OutingContext } from '../../outing/open.ts';
import { type RailPiece, railsAlong, railsMet } from '../../outing/rails.ts';
import { type BrakedGroup, blockForce, frictionAt, workableVacuum } from '../../things/brake/force.ts';
import { isVacuumKind } from '../../things/brake/kinds/index.ts';
import { blockWetness } from '../../things/brake/wet.ts';
import { brakedOnSand, type RailState, unsanded } from '../../things/rail.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export interface Bears {
  readonly rail: RailState;
  /** The first to slide. */
  readonly group: BrakedGroup;
  /** Its full brake at a stand ÷ load. */
  readonly ratio: number;
  /** Share of full brake at which it begins to slide, at the careful end of today's adhesion. */
  readonly share: number;
  /** The same at the likely figure. */
  readonly likelyShare: number;
  /** What the gauge shows then. */
  readonly gauge?: Amount<'vacuum' | 'gaugePressure'>;
}

/** Of the rail that bears least. */
export interface HowHard extends Bears {
  /** Absent: nobody graduates it. */
  readonly handle?: string;
  /** What the day's own rail bears. */
  readonly day: Bears;
}

/** Where and how fast, and the careful stops of one who eases and of one who holds full brake, m. */
export interface HeldOn {
  readonly at: number;
  readonly speed: number;
  readonly eased: number;
  readonly held: number;
}

export interface BrakeGearData {
  readonly howHard: readonly HowHard[];
  readonly heldOn: HeldOn | null;
}

/** Every handle, and every gear that has none, whatever its brakes: the first group to slide of each. */
export function howHard(ready: Prepared): HowHard[] {
  const { context } = ready;
  const day = context.outing.conditions.railState;
  const own = bearsOn(ready, day);
  const others = railsMet(context, day).flatMap((state) => (state === day ? [] : [bearsOn(ready, state)]));
  return [...own].map(([key, bears]): HowHard => {
    const all = [bears, ...others.flatMap((on) => on.get(key) ?? [])];
    const least = all.reduce((a, b) => (b.share < a.share ? b : a));
    const { handle } = least.group;
    return { ...least, ...(handle === undefined ? {} : { handle }), day: bears };
  });
}

/** By handle, on one rail. */
function bearsOn({ context, brakes, air }: Prepared, rail: RailState): Map<string, Bears> {
  const { assumed } = context.outing;
  const first = new Map<string, Bears>();
  for (const group of brakes.groups) {
    const wet = group.material ? blockWetness(group.material, rail, assumed).value : 1;
    const standing = group.friction ? frictionAt(group.friction, 0, 0) * wet : 1;
    const ratio = (group.block.value * standing) / group.load;
    const adhesion = adhesionOf(context, group, rail);
    const key = group.handle ?? `${group.vehicle} ${group.gear.id}`;
    const likelyShare = adhesion.value / ratio;
    if (likelyShare >= (first.get(key)?.likelyShare ?? Infinity)) continue;
    const share = pick(adhesion, -1) / ratio;
    const gauge = gaugeAt(group, share, air);
    first.set(key, { rail, group, ratio, share, likelyShare, ...(gauge ? { gauge } : {}) });
  }
  return first;
}

const adhesionOf = ({ outing: { assumed } }: OutingContext, { sanded }: BrakedGroup, rail: RailState) =>
  sanded ? brakedOnSand(assumed, rail) : unsanded(assumed, rail);

/** Pressure or vacuum that gives a share of the full block force; absent where the force is not from a cylinder. */
function gaugeAt(
  { gear }: BrakedGroup,
  share: number,
  air: { readonly pressure: number; readonly seaLevel: number },
): Amount<'vacuum' | 'gaugePressure'> | undefined {
  const { rigging } = gear;
  if (!rigging || gear.force || share >= 1) return undefined;
  const vacuum = isVacuumKind(gear.kind);
  const working = vacuum
    ? workableVacuum(rigging.workingPressure, air.pressure, air.seaLevel)
    : rigging.workingPressure;
  const full = blockForce(rigging, working).value * (gear.forceShare ?? 1);
  const perPascal = blockForce({ ...rigging, springForce: 0 }, working).value / working.value;
  const spring = full < perPascal * working.value ? (rigging.springForce ?? 0) / area(rigging.bore) : 0;
  return amount((share * full) / perPascal + spring, vacuum ? 'vacuum' : 'gaugePressure');
}

const area = (bore: number): number => (Math.PI / 4) * bore * bore;

/** On the steepest fall, at running speed. */
export function heldOn(ready: Prepared): HeldOn {
  const state = ready.context.outing.conditions.railState;
  const worst = ready.steepest;
  return {
    ...worst,
    eased: stopDistance(ready.models(state).cautious, worst.at, worst.speed),
    held: stopDistance(ready.heldOn(state), worst.at, worst.speed),
  };
}

/** The first piece of such rail, and the name of a place that is most of it, as a tunnel is. */
function whereIs(context: OutingContext, rail: RailState): { where: Finding['where']; others: number } {
  const pieces = railsAlong(context, context.outing.conditions.railState).filter((p) => p.state === rail);
  const [piece] = pieces;
  const overlap = ({ from, to }: RailPiece, at: number, end: number): number =>
    Math.min(to, end) - Math.max(from, at);
  const place = context.line.places.find(
    ({ at, to = at }) => overlap(piece, at, to) > 0.5 * Math.max(piece.to - piece.from, to - at),
  );
  return {
    where: { from: piece.from, to: piece.to, ...(place ? { place: place.name } : {}) },
    others: pieces.length - 1,
  };
}

/** One line for each handle on which wheels can slide today, anywhere. */
export function askSliding({ context }: Prepared, { howHard: all, heldOn: on }: BrakeGearData): Finding[] {
  const { outing } = context;
  return all.flatMap(({ handle, group, rail, ratio, share, likelyShare, gauge, day }) => {
    if (share >= 1) return [];
    const adhesion = adhesionOf(context, group, rail);
    const surely = likelyShare < 1;
    const limit = surely ? adhesion.value : pick(adhesion, -1);
    // Who can ease his brake eases it; what is pushed on, nobody lets go.
    const severity = surely && handle === undefined ? 'limits' : 'notes';
    const there = rail === day.rail ? undefined : whereIs(context, rail);
    return [
      makeFinding('wheels-slide', severity, 'brakes', {
        where: { vehicle: outing.train.vehicles[group.vehicle].id, ...there?.where },
        found: amount(ratio, 'ratio'),
        required: amount(limit, 'ratio'),
        margin: (adhesion.value - ratio) / adhesion.value,
        facts: {
          gear: group.gear.name,
          likely: surely,
          eased: handle !== undefined,
          rail,
          share: amount(share, 'ratio'),
          ...(gauge ? { gauge } : {}),
          ...(there ? { others: there.others, dayRail: day.rail, dayShare: amount(day.share, 'ratio') } : {}),
          ...(there && day.gauge ? { dayGauge: day.gauge } : {}),
          ...(on && handle !== undefined && on.held > on.eased && on.held < Infinity
            ? {
                stop: amount(on.eased, 'length'),
                held: amount(on.held, 'length'),
                speed: amount(on.speed, 'speed'),
              }
            : {}),
        },
        sum: { id: 'adhesion-limit', inputs: { adhesion: limit, load: group.load } },
        sure: group.block.how,
        source: adhesion.source ?? 'rail state',
      }),
    ];
  });
}
