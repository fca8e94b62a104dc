/**
 * The facts of findings. Each question says once, in its `findings.ts`, which findings it can make and what kind each
 * of their facts is; the compiler holds to it whoever makes a finding and whoever words it.
 */
import type { Amount, Kind } from '../base/quantity.ts';
import type { BrakeFault } from '../things/brake/force.ts';
import type { BrakeKind } from '../things/brake/kinds/index.ts';
import type { SupplyOutcome } from '../things/brake/kinds/kind.ts';
import type { Lie } from '../things/coupler/bends.ts';
import type { GroundKind, InDateKind } from '../things/in-date.ts';
import type { RailState } from '../things/rail.ts';
import type { FlangeWay } from './balance/climbing.ts';
import type { PeakScenario } from './couplers/peaks.ts';
import type { Failure } from './failures/left.ts';
import type { Outcome } from './part/types.ts';
import type { SpeedReasonKind } from './speed/types.ts';

/** What a fact may be beside an amount of a kind. */
export interface FactTypes {
  name: string;
  number: number;
  'yes or no': boolean;
  /** Chainage of the running direction; named `at`, by which it is turned into the line's. */
  place: Amount<'length'>;
  /** As the gauge of that brake shows it. */
  gauge: Amount<'vacuum' | 'gaugePressure'>;
  'brake kind': BrakeKind;
  'why no brake': BrakeFault['why'];
  'supply lost': SupplyOutcome;
  rail: RailState;
  'in date': InDateKind;
  ground: GroundKind;
  'speed reason': SpeedReasonKind;
  'way of running': FlangeWay | PeakScenario;
  /** '': none. */
  handling: PeakScenario | '';
  lie: Lie;
  failure: Failure;
  outcome: Outcome;
}

/** An amount, one of the types above, or one of the words listed. */
export type FactKind = Kind | keyof FactTypes | readonly string[];

/** Facts by name; `name?`: not always there. */
export type FactKinds = Readonly<Record<string, FactKind>>;

type FactOf<K> = K extends keyof FactTypes
  ? FactTypes[K]
  : K extends readonly (infer Word)[]
    ? Word
    : K extends Kind
      ? Amount<K>
      : never;

/** The facts that a table of kinds describes. */
export type Facts<T> = {
  readonly [N in keyof T as N extends `${string}?` ? never : N]: FactOf<T[N]>;
} & {
  readonly [N in keyof T as N extends `${infer Name}?` ? Name : never]?: FactOf<T[N]>;
};
