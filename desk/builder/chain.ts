/** Which chain? The smallest of each grade that holds at every gap, proved by hanging it, and what to buy. */
import { wordOf } from '../../engine/answer/answer.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { applyChange } from '../../engine/outing/change.ts';
import type { Outing } from '../../engine/outing/types.ts';
import type { ChainRow } from '../../engine/questions/chains/row.ts';
import type { Verdict } from '../../engine/questions/finding.ts';
import { type ChainGrade, chainDesignFactor, chainGrades } from '../../engine/things/chain/formulas.ts';
import type { WordTable } from '../../words/table.ts';
import { tellVerdict } from '../../words/verdict.ts';
import { say, type Voice, vehicleAt } from '../../words/voice.ts';
import { lookAtChains } from '../chains.ts';
import type { Task } from './task.ts';

/** One size of one grade at every gap. */
export interface ChainBuy {
  readonly grade: ChainGrade;
  /** Diameter of the wire, m; null: no size of the catalogue holds at some gap. */
  readonly size: number | null;
  readonly workingLoad: number;
  /** Number of chains, and length of all together hook to hook, m. */
  readonly pieces: number;
  readonly length: number;
  /** Hung at every gap and asked again: gaps at which it does not hold, and at which one catch spends it. */
  readonly fails: readonly number[];
  readonly spent: readonly number[];
}

export interface ChainAnswer extends Task {
  readonly rows: readonly ChainRow[];
  readonly buys: readonly ChainBuy[];
  readonly verdict?: Verdict;
}

/** Of a gap where none is hung. */
const lengthOf = (row: ChainRow, outing: Outing): number =>
  (row.chain?.length ?? outing.assumed.chainCatch.length).high;

export function askChain(outing: Outing, voice: Voice): ChainAnswer {
  const { rows } = lookAtChains(outing);
  if (rows.length === 0)
    return { rows, buys: [], said: ['One vehicle alone has no gap to chain.'], tables: [] };
  const buys = chainGrades.map((grade) => buyOf(outing, rows, grade));
  // The lightest that one catch does not spend; else the lightest that holds.
  const good = buys.filter((b) => b.size !== null && b.fails.length === 0);
  const best = good.find((b) => b.spent.length === 0) ?? good[0];
  const verdict = best && wordOf(inquire(hung(outing, best)));
  return {
    rows,
    buys,
    ...(verdict === undefined ? {} : { verdict }),
    said: best ? bestWords(best, outing, verdict, voice) : noneWords(rows, voice),
    tables: [buyTable(buys, voice), gapTable(rows, outing, voice)],
  };
}

/** The largest that a gap asks for, at every gap. */
function buyOf(outing: Outing, rows: readonly ChainRow[], grade: ChainGrade): ChainBuy {
  const needed = rows.map((r) => r.smallest.find((s) => s.grade === grade));
  const largest = needed.reduce((a, b) => (a && b ? (b.size > a.size ? b : a) : undefined));
  const buy = {
    grade,
    size: largest?.size ?? null,
    workingLoad: largest?.workingLoad ?? 0,
    pieces: rows.length,
    length: rows.reduce((sum, r) => sum + lengthOf(r, outing), 0),
  };
  if (buy.size === null) return { ...buy, fails: [], spent: [] };
  const again = lookAtChains(hung(outing, buy)).rows;
  const gaps = (as: (verdict: ChainRow['verdict']) => boolean): number[] =>
    again.filter((r) => as(r.verdict)).map((r) => r.gap);
  return {
    ...buy,
    fails: gaps((v) => v !== 'holds' && v !== 'holds, then replace'),
    spent: gaps((v) => v === 'holds, then replace'),
  };
}

const hung = (outing: Outing, { grade, size }: Pick<ChainBuy, 'grade' | 'size'>): Outing =>
  size === null
    ? outing
    : applyChange(
        { ...outing, train: { ...outing.train, chainsFastened: true } },
        { kind: 'chain-size', grade, size },
      );

const inches = (voice: Voice, si: number): string => say(voice, { si, kind: 'length' }, 'up');
const force = (voice: Voice, si: number, toward: 'up' | 'down'): string =>
  say(voice, { si, kind: 'force' }, toward);

const gradeWords = (grade: ChainGrade): string => `grade ${grade}`;

function bestWords(buy: ChainBuy, outing: Outing, verdict: Verdict | undefined, voice: Voice): string[] {
  const now = wordOf(inquire(outing));
  const { size, workingLoad, grade, pieces } = buy;
  return [
    `Buy ${gradeWords(grade)}, ${inches(voice, size ?? 0)}, for every gap: ${pieces === 1 ? 'one chain' : `${pieces} chains`}, ${inches(voice, buy.length)} in all from hook to hook (at the longest), marked for a working load of ${force(voice, workingLoad, 'down')} or more.`,
    `Hooks, links and what they are bolted to must be marked for as much, and break at no less than ${force(voice, workingLoad * chainDesignFactor(grade), 'up')}.`,
    ...(buy.spent.length > 0 ? ['After a catch it is spent: carry a spare, or buy a size larger.'] : []),
    'Hang each as short as the sharpest curve lets you, with no more than 1 in (25 mm) of slack (common practice, no source).',
    ...(verdict === undefined
      ? []
      : [
          `With these the outing's word is: ${tellVerdict(verdict)}${verdict === now ? ', as now' : ` (now: ${tellVerdict(now)})`}.`,
        ]),
  ];
}

const noneWords = (rows: readonly ChainRow[], voice: Voice): string[] => {
  const worst = rows.reduce((a, b) => (b.mustBreakAt[70] > a.mustBreakAt[70] ? b : a));
  return [
    `No one chain of the catalogue holds at every gap: the hardest is behind ${vehicleAt(voice, worst.gap)}, with ${inches(voice, worst.slack)} of slack. Hang it shorter, brake the cars behind it so that they stop by themselves, or leave cars behind.`,
  ];
};

function buyTable(buys: readonly ChainBuy[], voice: Voice): WordTable {
  return {
    title: 'One chain for every gap, by grade',
    head: ['grade', 'size', 'working load', 'breaks at', 'chains', 'length in all', 'hung and asked again'],
    rows: buys.map((b) =>
      b.size === null
        ? [`${b.grade}`, 'none is large enough', '', '', '', '', '']
        : [
            `${b.grade}`,
            inches(voice, b.size),
            force(voice, b.workingLoad, 'down'),
            force(voice, b.workingLoad * chainDesignFactor(b.grade), 'down'),
            `${b.pieces}`,
            inches(voice, b.length),
            provedWords(b, voice),
          ],
    ),
    note: 'A chain without a grade mark counts as grade 30 (49 CFR 393.108).',
  };
}

function provedWords({ fails, spent }: ChainBuy, voice: Voice): string {
  const behind = (gaps: readonly number[]): string => gaps.map((g) => vehicleAt(voice, g)).join(', ');
  if (fails.length > 0) return `does not hold behind ${behind(fails)}`;
  if (spent.length > 0) return `holds; after a catch behind ${behind(spent)} replace it`;
  return 'holds at every gap';
}

function gapTable(rows: readonly ChainRow[], outing: Outing, voice: Voice): WordTable {
  return {
    title: 'Gap by gap',
    head: ['behind', 'hung now', 'steady load', 'slack', 'length', ...chainGrades.map((g) => `grade ${g}`)],
    rows: rows.map((r) => [
      vehicleAt(voice, r.gap),
      r.verdict,
      force(voice, r.steady, 'up'),
      inches(voice, r.slack),
      inches(voice, lengthOf(r, outing)),
      ...chainGrades.map((grade) => {
        const row = r.smallest.find((s) => s.grade === grade);
        return row ? inches(voice, row.size) : 'none';
      }),
    ]),
    note: 'The smallest size of each grade that bears the steady load and catches the tail with the slack of now.',
  };
}
