/** A fact of a finding whose code a test does not ask: an amount, a name, a number; undefined where it has none such. */
import type { Finding } from '../../engine/questions/finding.ts';

export const factOf = (finding: Finding | undefined, name: string): unknown =>
  (finding?.facts as Readonly<Record<string, unknown>> | undefined)?.[name];
