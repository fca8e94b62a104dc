/**
 * How hard may one brake today? For each handle the brake at which the first wheels begin to slide at the careful end
 * of today's adhesion, as a gauge shows it where there is a gauge; and how far one goes who holds full brake with
 * sliding wheels instead of easing it.
 */
import { type Amount, amount } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { Prepared } from '../../motion/prepare.ts';
import { stopDistance } from '../../motion/stop.ts';
import { worstRail } from '../../outing/rails.ts';
import { type BrakedGroup, blockForce, frictionAt, workableVacuum } from '../../things/brake/force.ts';
import { isVacuumKind } from '../../things/brake/kinds/index.ts';
import { blockWetness } from '../../things/brake/wet.ts';
import { unsanded } from '../../things/rail.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';

export interface HowHard {
  /** Absent: nobody graduates it. */
  readonly handle?: string;
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
export function howHard({ context, brakes, air }: Prepared): HowHard[] {
  const { assumed, conditions } = context.outing;
  // One handle for the whole line: how hard is said of the worst rail that it meets.
  const railState = worstRail(context, conditions.railState);
  const first = new Map<string, { group: BrakedGroup; ratio: number }>();
  for (const group of brakes.groups) {
    const wet = group.material ? blockWetness(group.material, railState, assumed).value : 1;
    const standing = group.friction ? frictionAt(group.friction, 0, 0) * wet : 1;
    const ratio = (group.block.value * standing) / group.load;
    const key = group.handle ?? `${group.vehicle} ${group.gear.id}`;
    const known = first.get(key);
    if (!known || ratio * adhesionOf(known.group).value > known.ratio * adhesionOf(group).value)
      first.set(key, { group, ratio });
  }
  function adhesionOf({ sanded }: BrakedGroup) {
    return sanded ? assumed.adhesion[railState] : unsanded(assumed, railState);
  }
  return [...first.values()].map(({ group, ratio }): HowHard => {
    const adhesion = adhesionOf(group);
    const share = pick(adhesion, -1) / ratio;
    const gauge = gaugeAt(group, share, air);
    return {
      ...(group.handle === undefined ? {} : { handle: group.handle }),
      group,
      ratio,
      share,
      likelyShare: adhesion.value / ratio,
      ...(gauge ? { gauge } : {}),
    };
  });
}

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

/** One line for each handle on which wheels can slide today. */
export function askSliding({ context }: Prepared, { howHard: all, heldOn: on }: BrakeGearData): Finding[] {
  const { outing } = context;
  const railState = worstRail(context, outing.conditions.railState);
  return all.flatMap(({ handle, group, ratio, share, likelyShare, gauge }) => {
    if (share >= 1) return [];
    const adhesion = group.sanded ? outing.assumed.adhesion[railState] : unsanded(outing.assumed, railState);
    const surely = likelyShare < 1;
    const limit = surely ? adhesion.value : pick(adhesion, -1);
    // Who can ease his brake eases it; what is pushed on, nobody lets go.
    const severity = surely && handle === undefined ? 'limits' : 'notes';
    return [
      makeFinding('wheels-slide', severity, 'brakes', {
        where: { vehicle: outing.train.vehicles[group.vehicle].id },
        found: amount(ratio, 'ratio'),
        required: amount(limit, 'ratio'),
        margin: (adhesion.value - ratio) / adhesion.value,
        facts: {
          gear: group.gear.name,
          likely: surely,
          eased: handle !== undefined,
          rail: railState,
          share: amount(share, 'ratio'),
          ...(gauge ? { gauge } : {}),
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
