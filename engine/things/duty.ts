/** People at work: what each may do, how long each is at it, and what each declares. */
import type { Quantity } from '../base/quantity.ts';

/** What drives an engine: coal or oil by steam, a battery or wire, petrol or diesel. */
export const powers = ['steam', 'electric', 'petrol'] as const;
export type Power = (typeof powers)[number];

export const duties = ['driver', 'guard', 'lookout'] as const;
export type Duty = (typeof duties)[number];

/** What a sign-off is limited to; what it does not say it does not limit. */
export interface SignedFor {
  readonly powers?: readonly Power[];
  /** Engines by their names. */
  readonly engines?: readonly string[];
  /** m */
  readonly gauge?: number;
  /** Of the engine, empty, in working order, kg. */
  readonly heaviest?: number;
  /** The line by its name. */
  readonly line?: string;
}

/** As they will be when the outing is over, s; `days`: how many in a row with that of the outing. */
export interface Hours {
  readonly onDuty?: number;
  readonly driving?: number;
  readonly sinceBreak?: number;
  /** Before this turn. */
  readonly rest?: number;
  /** How long the turn before it was. */
  readonly turnBefore?: number;
  /** On duty in any 24 hours, and in seven days. */
  readonly inDay?: number;
  readonly inWeek?: number;
  readonly days?: number;
}

/** Somebody who works the train, or stands by to. */
export interface CrewMember {
  /** As of the rider of that name. */
  readonly id: string;
  readonly name: string;
  /** Years; of a rider the rider's own counts. */
  readonly age?: number;
  /** What would be reckoned with if he or she came aboard. */
  readonly mass: Quantity;
  /** Where he or she looks out. */
  readonly looksOutAt?: string;
  readonly hours?: Hours;
  /** Says that nothing was drunk or taken that dulls; absent: not said. */
  readonly sober?: boolean;
  readonly fit?: boolean;
}
