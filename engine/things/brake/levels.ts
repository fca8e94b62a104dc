/** Pressures that a train brake works between, by kind: in the pipe, in the cylinders, at the ejector. */
import { STANDARD_ATMOSPHERE as SEA_LEVEL } from '../../base/constants.ts';
import type { BrakeGear, BrakeSupply, Vehicle } from '../vehicle/types.ts';
import { workableVacuum } from './force.ts';
import { type AirKind, airBrakeOf, isVacuumKind } from './kinds/index.ts';

export class Levels {
  private readonly kind: AirKind;
  private readonly atmosphere: number;
  private readonly vehicles: readonly Vehicle[];
  private readonly supply: BrakeSupply | undefined;

  constructor(
    kind: AirKind,
    atmosphere: number,
    vehicles: readonly Vehicle[],
    supply: BrakeSupply | undefined,
  ) {
    this.kind = kind;
    this.atmosphere = atmosphere;
    this.vehicles = vehicles;
    this.supply = supply;
  }

  /** Working pressure or depression of a gear, or the greatest of all gears of the kind, Pa. */
  working(gear?: BrakeGear): number {
    const gears = gear ? [gear] : this.vehicles.flatMap((v) => v.brakes.filter((b) => b.kind === this.kind));
    return gears.reduce((most, { rigging }) => {
      if (!rigging) return most;
      const stated = rigging.workingPressure;
      const here = isVacuumKind(this.kind) ? workableVacuum(stated, this.atmosphere, SEA_LEVEL) : stated;
      return Math.max(most, here.value);
    }, 0);
  }

  /** Absolute pressure in the pipe with the brake applied, or released. */
  pipe(applied: boolean, gear?: BrakeGear): number {
    const { atmosphere, supply } = this;
    const air = { atmosphere, working: this.working(gear), charge: supply?.pressure ?? 0 };
    return airBrakeOf(this.kind).pipe(applied, air);
  }

  /** Least absolute pressure that the ejector or pump reaches here, Pa: its vacuum falls with the day's air.
   * @param ejectorReach greatest vacuum ÷ working vacuum, where nobody said how deep it draws */
  lowest(ejectorReach: number): number {
    const reach = (this.working() * SEA_LEVEL * ejectorReach) / this.atmosphere;
    const greatest = this.supply?.greatestVacuum ?? reach;
    return Math.max(0, this.atmosphere * (1 - greatest / SEA_LEVEL));
  }
}
