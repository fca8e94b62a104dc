/** Published limits of duty and rest: examples that a host may take over, never what stands in. */
import json from './hours-rules.json' with { type: 'json' };

export interface PublishedHours {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  /** Fields of a host's paper, each with its value as it is written there. */
  readonly rules: Readonly<Record<string, string | number>>;
}

// Rows that do not state a rule have it as undefined in the type alone.
export const publishedHours = json.rows as unknown as readonly PublishedHours[];

/** As they stand in a host's paper, each with its source. */
export const asHostRules = ({ rules, source }: PublishedHours): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(rules).map(([key, value]) => [key, { value, source }]));
