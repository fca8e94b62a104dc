/** Chains of one outing, gap by gap, as data and as a table. */

import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import type { Outing } from '../engine/outing/types.ts';
import { chains } from '../engine/questions/chains/question.ts';
import type { ChainRow } from '../engine/questions/chains/row.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { WordTable } from '../words/table.ts';
import { say, type Voice, vehicleAt } from '../words/voice.ts';

export interface ChainsView {
  readonly rows: readonly ChainRow[];
  readonly findings: readonly Finding[];
}

export function lookAtChains(outing: Outing): ChainsView {
  const { findings, data } = inquire(outing).of(chains);
  return { rows: data, findings: ranked(findings) };
}

export function chainTable({ rows }: ChainsView, voice: Voice): WordTable {
  const force = (si: number | null | undefined, toward: 'up' | 'down'): string =>
    si === null || si === undefined ? 'not known' : say(voice, { si, kind: 'force' }, toward);
  return {
    title: 'Chains, should the train part',
    head: [
      'behind',
      'bears',
      'weakest',
      'steady load',
      'first peak of the catch',
      'must break at',
      'breaks at',
      'verdict',
      'smallest size by grade',
    ],
    rows: rows.map((r) => [
      vehicleAt(voice, r.gap),
      r.chain ? `${force(r.chain.workingLoad?.value, 'down')}${sideBySide(r.chain)}` : 'none',
      r.chain?.workingLoad?.by ?? '',
      force(r.steadyOnOne, 'up'),
      r.snatch === null ? '' : force(r.snatch.force, 'up'),
      r.work === null ? '' : force(r.work.breaks, 'up'),
      r.chain ? force(r.chain.breaks, 'down') : '',
      r.verdict,
      r.smallest.map((s) => `${s.grade}: ${say(voice, { si: s.size, kind: 'length' }, 'up')}`).join(', '),
    ]),
  };
}

const sideBySide = ({ count, difference }: NonNullable<ChainRow['chain']>): string =>
  count === 1 ? '' : difference === null ? `, of ${count} the shorter alone` : `, each of ${count}`;
