/** The kinds of brake, each described in its own file. */
import { automaticAir } from './automatic-air.ts';
import { automaticVacuum } from './automatic-vacuum.ts';
import { electric } from './electric.ts';
import { engineOnly } from './engine-only.ts';
import type { AirBrake, KindOfBrake } from './kind.ts';
import { mechanical } from './mechanical.ts';
import { simpleVacuum } from './simple-vacuum.ts';
import { straightAir } from './straight-air.ts';
import { surge } from './surge.ts';

interface Kinds {
  readonly 'engine-only': KindOfBrake;
  readonly 'straight-air': AirBrake;
  readonly 'automatic-air': AirBrake;
  readonly 'simple-vacuum': AirBrake;
  readonly 'automatic-vacuum': AirBrake;
  readonly electric: KindOfBrake;
  readonly mechanical: KindOfBrake;
  readonly surge: KindOfBrake;
}

const kinds: Kinds = {
  'engine-only': engineOnly,
  'straight-air': straightAir,
  'automatic-air': automaticAir,
  'simple-vacuum': simpleVacuum,
  'automatic-vacuum': automaticVacuum,
  electric,
  mechanical,
  surge,
};

export type BrakeKind = keyof Kinds;
/** Kinds whose pipe carries air. */
export type AirKind = { [K in BrakeKind]: Kinds[K] extends AirBrake ? K : never }[BrakeKind];

export const brakeKinds: readonly BrakeKind[] = Object.keys(kinds) as BrakeKind[];

export const brakeOf = (kind: BrakeKind): KindOfBrake => kinds[kind];
export const airBrakeOf = (kind: AirKind): AirBrake => kinds[kind];

/** Kinds that a train may be made over to: they come on by themselves. */
export const automaticKinds: readonly BrakeKind[] = brakeKinds.flatMap(
  (kind) => kinds[kind].madeAutomatic ?? [],
);

/** Reaches along the train from the engine. */
export const isThrough = (kind: BrakeKind): boolean => kinds[kind].worked === 'through';
export const isVacuumKind = (kind: BrakeKind): boolean => kinds[kind].carries === 'vacuum';
export const isElectric = (kind: BrakeKind): boolean => kinds[kind].carries === 'current';
export const isPushed = (kind: BrakeKind): boolean => kinds[kind].worked === 'push';
export const isByArm = (kind: BrakeKind): boolean => kinds[kind].worked === 'arm';
export const isAirKind = (kind: BrakeKind): kind is AirKind =>
  kinds[kind].carries === 'pressure' || isVacuumKind(kind);

/** Where its air for applications is kept, of which a number can be counted. */
export const keptIn = (kind: BrakeKind): AirBrake['kept'] =>
  isAirKind(kind) ? airBrakeOf(kind).kept : undefined;

export const airKinds: readonly AirKind[] = brakeKinds.filter(isAirKind);
