/** A figure that is asked for: what it is, how one comes by it, what not knowing it costs. */
import type { Kind } from '../../engine/base/quantity.ts';

export type FieldKey =
  | 'engine.kind'
  | 'engine.gauge'
  | 'engine.weight'
  | 'engine.pull'
  | 'engine.power'
  | 'engine.cylinders'
  | 'engine.bore'
  | 'engine.stroke'
  | 'engine.wheel'
  | 'engine.pressure'
  | 'engine.brake'
  | 'engine.holds'
  | 'engine.parks'
  | 'engine.name'
  | 'cars.count'
  | 'cars.weight'
  | 'cars.brake'
  | 'cars.pull'
  | 'cars.holds'
  | 'cars.parks'
  | 'cars.worked'
  | 'cars.seats'
  | 'cars.length'
  | 'cars.seatHeight'
  | 'cars.bearing'
  | 'cars.chains'
  | 'cars.chainSize'
  | 'cars.name'
  | 'people.adults'
  | 'people.heavy'
  | 'people.youths'
  | 'people.children'
  | 'people.weighed'
  | 'people.driver'
  | 'people.driverOn'
  | 'line.grade'
  | 'line.gradeLength'
  | 'line.curve'
  | 'line.sight'
  | 'line.length'
  | 'line.shape'
  | 'line.speed'
  | 'line.rail'
  | 'line.name';

/** Texts as a person gave them, by the field's key; what was not answered is absent. */
export type Replies = Readonly<Partial<Record<FieldKey, string>>>;

/**
 * What leaves it out brings: `paper`, nothing can be reckoned at all; `word`, no word but "cannot tell"; `more`, a
 * word that is the more careful for it.
 */
export type Need = 'paper' | 'word' | 'more';

interface Asked {
  readonly label: string;
  /** How one comes by it. */
  readonly how: string;
  /** What not knowing it costs. */
  readonly cost: string;
  readonly need: Need;
  readonly flag: string;
  /** In sight even where nobody need answer it. */
  readonly front?: true;
  /** What most people would write, in imperial and in metric units. */
  readonly usual?: readonly [imperial: readonly string[], metric: readonly string[]];
  /** Asked only where the other replies make it matter. */
  readonly when?: (replies: Replies) => boolean;
}

export type Field = Asked &
  (
    | {
        readonly form: 'figure';
        readonly kind: Kind;
        /** The field of a paper that it is written into, whose range it has; absent: it is counted, not written. */
        readonly fills?: string;
        /** The only sensible unit of a bare number; absent: there are two, and it must be written. */
        readonly bare?: readonly [imperial: string, metric: string];
        /** Words that stand for an answer, as "none". */
        readonly words?: readonly string[];
        /** That of the words which says that it is there and nobody measured it. */
        readonly unmeasured?: string;
        /** Several figures with commas between. */
        readonly several?: true;
        readonly most?: number;
      }
    | {
        readonly form: 'choice';
        readonly values: readonly string[];
        /** What a choice comes to, where one may not expect it. */
        readonly comesTo?: Readonly<Record<string, string>>;
      }
    | { readonly form: 'text' }
  );

/** Units of bare numbers. */
export const PULL: readonly [string, string] = ['lbf', 'N'];
export const MASS: readonly [string, string] = ['lb', 'kg'];
export const LONG: readonly [string, string] = ['ft', 'm'];
export const SMALL: readonly [string, string] = ['in', 'mm'];
export const NUMBER: readonly [string, string] = ['', ''];
