/** What helps a chain that does not hold what parts. */
import { strongerChain } from '../changes.ts';
import type { Remedies } from '../family.ts';

export const chainsRemedies: Remedies = { 'chain-too-weak': (_, finding) => strongerChain(finding) };
