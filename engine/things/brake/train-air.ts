/**
 * The train's air laid out as a tree of volumes for one brake kind and one action of the driver.
 *
 * The pipe runs from the engine that supplies it both ways, a volume per vehicle; on each hang the parts of
 * the gears there. Only what answers the driver is laid (`system.ts` says what does).
 */
import type { BrakePartValues } from '../assumed.ts';
import type { LoadedTrain } from '../train/loaded.ts';
import type { BrakeGear, BrakeSupply, Vehicle } from '../vehicle/types.ts';
import { type AirKind, airBrakeOf } from './kinds/index.ts';
import type { AirBrake } from './kinds/kind.ts';
import { Levels } from './levels.ts';
import type { AirNode, Vent } from './network.ts';
import {
  type CylinderParts,
  chokeArea,
  cylinderParts,
  hoseArea,
  hoseOf,
  pipeParts,
  valveArea,
} from './parts.ts';
import { gearStates, suppliedKinds } from './system.ts';

export type Action = 'apply' | 'release';

export interface MissingPart {
  readonly vehicle: number;
  readonly gear?: BrakeGear;
  /** Field, as in `rigging.hoseDiameter`. */
  readonly part: string;
}

/** A gear as laid: where its force comes from. */
export interface GearInTree {
  readonly vehicle: number;
  readonly gear: BrakeGear;
  /** Pressure difference across the piston, Pa. */
  readonly difference: (pressures: Float64Array) => number;
  /** Its passage is open and has not begun to act yet (a pressure wave is still on its way). */
  readonly waits: (pressures: Float64Array) => boolean;
  /** Release of automatic air: pressure of the car's reservoir ÷ its full charge, both above atmosphere. */
  readonly charge?: (pressures: Float64Array) => number;
  /** m² and N, all pistons. */
  readonly area: number;
  readonly spring: number;
  /** Force at the stated working pressure, N. */
  readonly working: number;
  /** Length of pipe from the driver's valve, m. */
  readonly along: number;
  readonly assumed: readonly string[];
}

export interface TrainAir {
  readonly nodes: readonly AirNode[];
  readonly gears: readonly GearInTree[];
  readonly missing: readonly MissingPart[];
}

export function trainAir(
  loaded: LoadedTrain,
  kind: AirKind,
  action: Action,
  atmosphere: number,
  values: BrakePartValues,
): TrainAir {
  const { train } = loaded;
  const answering = gearStates(loaded).filter((s) => s.answers && s.gear.kind === kind && !s.gear.force);
  const engine = train.vehicles.findIndex((v) => suppliedKinds(v).includes(kind));
  if (engine < 0 || answering.length === 0) return { nodes: [], gears: [], missing: [] };
  const hose = train.vehicles.map(hoseOf).find((d) => d !== undefined);
  if (hose === undefined) {
    return {
      nodes: [],
      gears: [],
      missing: answering.map(({ vehicle, gear }) => ({ vehicle, gear, part: 'rigging.hoseDiameter' })),
    };
  }
  const layer = new Layer(loaded, kind, action, atmosphere, values, engine, hose);
  layer.layPipe(new Set(answering.map((s) => s.vehicle)));
  // Without what works the pipe nothing moves: there is no fill to speak of.
  if (layer.missing.length > 0) return { nodes: [], gears: [], missing: layer.missing };
  for (const { vehicle, gear } of answering) layer.layGear(vehicle, gear);
  return layer.finish();
}

class Layer {
  private readonly nodes: AirNode[] = [];
  private readonly gears: GearInTree[] = [];
  readonly missing: MissingPart[] = [];
  private readonly pipe = new Map<number, { node: number; along: number; assumed: readonly string[] }>();
  private readonly vehicles: readonly Vehicle[];
  private readonly supply: BrakeSupply | undefined;
  private readonly levels: Levels;
  private readonly brake: AirBrake;
  private readonly action: Action;
  private readonly atmosphere: number;
  private readonly values: BrakePartValues;
  private readonly engine: number;
  private readonly hose: number;

  constructor(
    loaded: LoadedTrain,
    kind: AirKind,
    action: Action,
    atmosphere: number,
    values: BrakePartValues,
    engine: number,
    hose: number,
  ) {
    this.brake = airBrakeOf(kind);
    this.action = action;
    this.atmosphere = atmosphere;
    this.values = values;
    this.engine = engine;
    this.hose = hose;
    this.vehicles = loaded.train.vehicles;
    this.supply = this.vehicles[engine].brakeSupply;
    this.levels = new Levels(kind, atmosphere, this.vehicles, this.supply);
  }

  finish(): TrainAir {
    return { nodes: this.nodes, gears: this.gears, missing: this.missing };
  }

  private add(node: Omit<AirNode, 'leak' | 'vents'> & { vents?: readonly Vent[] }): number {
    this.nodes.push({ leak: 0, vents: [], ...node });
    return this.nodes.length - 1;
  }

  private lack(vehicle: number, part: string, gear?: BrakeGear): void {
    if (this.missing.some((m) => m.vehicle === vehicle && m.part === part && m.gear === gear)) return;
    this.missing.push({ vehicle, part, ...(gear ? { gear } : {}) });
  }

  /** Pipe volumes from the engine to the furthest vehicle that needs them, both ways. */
  layPipe(needed: ReadonlySet<number>): void {
    const root = this.layRoot();
    const ends = [Math.max(this.engine, ...needed), Math.min(this.engine, ...needed)];
    for (const end of ends) {
      const step = end > this.engine ? 1 : -1;
      let from = root;
      for (let i = this.engine + step; step > 0 ? i <= end : i >= end; i += step) {
        from = this.layPipeOf(i, i - step, from);
      }
    }
  }

  private layPipeOf(index: number, before: number, from: number): number {
    const own = pipeParts(this.vehicles[index], this.hose);
    const last = pipeParts(this.vehicles[before], this.hose);
    const run = (this.vehicles[index].length + this.vehicles[before].length) / 2;
    const node = this.add({
      name: `pipe of ${this.vehicles[index].name}`,
      parent: from,
      area: hoseArea(Math.min(own.diameter, last.diameter), run),
      way: 'both',
      body: { kind: 'rigid', volume: own.volume },
      start: this.levels.pipe(this.action === 'release'),
    });
    const along = (this.pipe.get(before)?.along ?? 0) + run;
    this.pipe.set(index, { node, along, assumed: own.assumed });
    return node;
  }

  /** The engine's own pipe, with what the driver's valve joins it to. */
  private layRoot(): number {
    const own = pipeParts(this.vehicles[this.engine], this.hose);
    const start = this.levels.pipe(this.action === 'release');
    const target = this.levels.pipe(this.action === 'apply');
    const valve = valveArea(this.supply, own.diameter);
    const body = { kind: 'rigid' as const, volume: own.volume };
    const filling = this.brake.carries === 'pressure';
    const emptying = target <= this.atmosphere + 1 && filling;
    const reservoir = filling && !emptying ? this.layReservoir() : -1;
    const common = { name: 'pipe of the engine', body, start };
    const made =
      reservoir >= 0
        ? {
            ...common,
            parent: reservoir,
            area: valve,
            way: 'in' as const,
            laps: { at: target, over: this.values.lapsOver * (target - this.atmosphere) },
          }
        : { ...common, parent: -1, area: 0, way: 'both' as const, ...this.outlet(target, valve, filling) };
    const node = this.add(made);
    this.pipe.set(this.engine, { node, along: 0, assumed: own.assumed });
    return node;
  }

  /** Without a reservoir in play: the atmosphere, a supply without end, or an ejector. */
  private outlet(target: number, valve: number, filling: boolean): Partial<AirNode> {
    if (filling || target >= this.atmosphere - 1) {
      return { vents: [{ area: valve, pressure: target, way: 'both' as const }] };
    }
    const rate = this.supply?.rate;
    if (rate === undefined) this.lack(this.engine, 'brakeSupply.rate');
    // A relief valve keeps the pipe at the working vacuum although the ejector could draw deeper.
    return {
      suction: { rate: rate ?? 0, lowest: this.levels.lowest(this.values.ejectorReach), holds: target },
    };
  }

  private layReservoir(): number {
    const volume = this.supply?.reservoirVolume;
    if (volume === undefined) return -1;
    const pressure = this.supply?.pressure ?? this.levels.working();
    return this.add({
      name: 'main reservoir',
      parent: -1,
      area: 0,
      way: 'both',
      body: { kind: 'rigid', volume },
      start: this.atmosphere + pressure,
      ...(this.supply?.rate === undefined
        ? {}
        : { pump: { freeAir: this.supply.rate, upTo: this.atmosphere + pressure } }),
    });
  }

  layGear(vehicle: number, gear: BrakeGear): void {
    const parts = cylinderParts(gear);
    const pipe = this.pipe.get(vehicle);
    if ('missing' in parts) {
      this.lack(vehicle, parts.missing, gear);
      return;
    }
    if (!pipe) return;
    switch (this.brake.cylinder) {
      case 'triple valve':
        return this.layTriple(vehicle, gear, parts, pipe.node);
      case 'ball valve':
        return this.layBallValve(vehicle, gear, parts, pipe.node);
      case 'straight':
        return this.layPlain(vehicle, gear, parts, pipe.node);
    }
  }

  private note(
    vehicle: number,
    gear: BrakeGear,
    parts: CylinderParts,
    difference: GearInTree['difference'],
    waits: GearInTree['waits'],
    charge?: GearInTree['charge'],
  ): void {
    const pipe = this.pipe.get(vehicle);
    const spring = (gear.rigging?.springForce ?? 0) * (gear.rigging?.cylinders ?? 1);
    this.gears.push({
      vehicle,
      gear,
      difference,
      waits,
      ...(charge ? { charge } : {}),
      area: parts.area,
      spring,
      working: Math.max(0, this.levels.working(gear) * parts.area - spring),
      along: pipe?.along ?? 0,
      assumed: [...parts.assumed, ...(pipe?.assumed ?? [])],
    });
  }

  private layPlain(vehicle: number, gear: BrakeGear, parts: CylinderParts, pipe: number): void {
    const a = this.atmosphere;
    const pull = this.brake.carries === 'vacuum';
    const node = this.add({
      name: `cylinder of ${this.vehicles[vehicle].name}`,
      parent: pipe,
      area: parts.choke,
      way: 'both',
      body: { kind: 'piston', piston: parts.piston, behind: { pressure: a }, pull },
      start: this.levels.pipe(this.action === 'release', gear),
    });
    const difference = (p: Float64Array): number => (pull ? a - p[node] : p[node] - a);
    const waits = (p: Float64Array): boolean =>
      Math.abs(p[pipe] - p[node]) > 0.01 * this.levels.working(gear);
    this.note(vehicle, gear, parts, difference, waits);
  }

  /** Automatic air: reservoir charged from the pipe, let into the cylinder as the pipe falls below it. */
  private layTriple(vehicle: number, gear: BrakeGear, parts: CylinderParts, pipe: number): void {
    const { rigging } = gear;
    if (rigging?.reservoirVolume === undefined) {
      this.lack(vehicle, 'rigging.reservoirVolume', gear);
      return;
    }
    if (this.supply?.pressure === undefined) {
      this.lack(this.engine, 'brakeSupply.pressure');
      return;
    }
    const a = this.atmosphere;
    const charged = a + this.supply.pressure;
    const { tripleBegins, tripleOpens } = this.values;
    const apply = this.action === 'apply';
    const equal = apply ? charged : this.equalisedStart(charged, rigging.reservoirVolume, parts);
    const reservoir = this.add({
      name: `reservoir of ${this.vehicles[vehicle].name}`,
      parent: pipe,
      area: chokeArea(rigging.feedDiameter ?? (rigging.chokeDiameter ?? this.hose) / 3),
      way: 'in',
      body: { kind: 'rigid', volume: rigging.reservoirVolume },
      start: equal,
    });
    const cylinder = this.add({
      name: `cylinder of ${this.vehicles[vehicle].name}`,
      parent: reservoir,
      area: parts.choke,
      way: 'in',
      opening: (p) =>
        apply ? Math.min(1, Math.max(0, (p[reservoir] - p[pipe] - tripleBegins) / tripleOpens)) : 0,
      body: { kind: 'piston', piston: parts.piston, behind: { pressure: a }, pull: false },
      vents: apply ? [] : [{ area: parts.choke, pressure: a, way: 'out' }],
      start: apply ? a : equal,
    });
    const waits = apply
      ? (p: Float64Array): boolean => p[reservoir] - p[cylinder] > 0.01 * (charged - a)
      : (p: Float64Array): boolean => p[pipe] - p[reservoir] > 0.02 * (charged - a);
    const charge = apply ? undefined : (p: Float64Array): number => (p[reservoir] - a) / (charged - a);
    this.note(vehicle, gear, parts, (p) => p[cylinder] - a, waits, charge);
  }

  private equalisedStart(charged: number, volume: number, { piston }: CylinderParts): number {
    return (
      (charged * volume + this.atmosphere * piston.clearance) / (volume + piston.clearance + piston.swept)
    );
  }

  /** Automatic vacuum: train side open to the pipe, chamber behind a ball valve that lets air out only. */
  private layBallValve(vehicle: number, gear: BrakeGear, parts: CylinderParts, pipe: number): void {
    const chamber = gear.rigging?.chamberVolume;
    if (chamber === undefined) {
      this.lack(vehicle, 'rigging.chamberVolume', gear);
      return;
    }
    if (chamber <= parts.piston.swept) {
      this.lack(vehicle, 'rigging.chamberVolume', gear);
      return;
    }
    const a = this.atmosphere;
    const vacuum = this.levels.working(gear);
    const front = this.nodes.length;
    const apply = this.action === 'apply';
    this.add({
      name: `train side of ${this.vehicles[vehicle].name}`,
      parent: pipe,
      area: parts.choke,
      way: 'both',
      body: { kind: 'piston', piston: parts.piston, behind: { node: front + 1 }, pull: false },
      start: apply ? a - vacuum : a,
    });
    this.add({
      name: `chamber of ${this.vehicles[vehicle].name}`,
      parent: front,
      area: parts.choke,
      way: 'out',
      body: { kind: 'rigid', volume: chamber },
      start: apply ? a - vacuum : (a - vacuum) * (chamber / (chamber - parts.piston.swept)),
    });
    const waits = (p: Float64Array): boolean => Math.abs(p[pipe] - p[front]) > 0.01 * vacuum;
    this.note(vehicle, gear, parts, (p) => p[front] - p[front + 1], waits);
  }
}
