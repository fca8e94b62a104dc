/** What a host may ask to be in date, and of whom. */
import type { SignedFor } from './duty.ts';

export const inDateKinds = [
  'boiler-hydraulic-test',
  'boiler-steam-test',
  'boiler-external-look',
  'air-reservoir',
  'brake-test',
  'chains',
  'lifting-gear',
  'measuring-tool',
  'track-inspection',
  'first-aid',
  'insurance',
  'driver-competence',
  'guard-competence',
  'lookout-competence',
  'fit-for-duty',
  'inspection',
] as const;
export type InDateKind = (typeof inDateKinds)[number];

/** Every engine, every vehicle, whoever drives, whoever guards, whoever looks out, the club once. */
export const inDateHolders = ['engine', 'vehicle', 'driver', 'guard', 'lookout', 'club'] as const;
export type InDateHolder = (typeof inDateHolders)[number];

export interface InDateRule {
  readonly what: InDateKind;
  readonly of: InDateHolder;
  /** Given by one of these alone; absent: by anybody. */
  readonly by?: readonly string[];
  readonly source: string;
}

/** What a club has on the ground: no part of a train or a line. */
export const groundKinds = ['first-aid-and-fire', 'storage-and-bay'] as const;
export type GroundKind = (typeof groundKinds)[number];

/** What trains do while something of it is rejected, the strictest first. */
export const groundWords = ['hold', 'limits', 'told'] as const;

export interface GroundRule {
  readonly what: GroundKind;
  readonly rejected: (typeof groundWords)[number];
  readonly source: string;
}

/** What was found amiss and is not mended. */
export interface Defect {
  /** Vehicle or line by its name; of what is on the ground, that. */
  readonly of: string;
  /** Absent: of a vehicle or the line. */
  readonly ground?: GroundKind;
  readonly what: string;
  /** It may not be used; else it may, and is to be mended. */
  readonly rejects: boolean;
  /** By a figure of an example list, which is invented: nobody's limit. Absent: by an eye, or the host's own figure. */
  readonly invented?: boolean;
  /** Day on which it was found. */
  readonly since: string;
}

/** A certificate as it stands on the day of the outing; `unknown`: nobody can tell whether it does. */
export interface Shown {
  readonly what: InDateKind;
  /** Name of the vehicle or person; absent: the club's. */
  readonly of?: string;
  readonly state: 'stands' | 'grace' | 'out' | 'unknown';
  /** Last day on which it stands, grace not counted. */
  readonly last?: string;
  /** Who gave it; absent: nobody said. */
  readonly by?: string;
  /** What alone it is for: of a person's competence. */
  readonly signedFor?: SignedFor;
}
