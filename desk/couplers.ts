/**
 * Couplers of one outing: forces as bands over seeded runs in a scenario, what they must bear when the train is handled
 * roughly, and how far they must swing in curves.
 */

import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import { prepare } from '../engine/motion/prepare.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import type { CouplerData } from '../engine/questions/couplers/ask.ts';
import { type CouplerScenario, couplerBands, type GapBand } from '../engine/questions/couplers/ensemble.ts';
import { couplers } from '../engine/questions/couplers/question.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { SwingData } from '../engine/questions/swing/ask.ts';
import { swing } from '../engine/questions/swing/question.ts';

export interface CouplersAsk {
  readonly scenario: CouplerScenario;
  /** In the line's own chainage, m. */
  readonly at: number;
  readonly speed: number;
}

/** Runs of a band, and how long each is followed, s. */
const RUNS = 64;
const TIME = 20;
const SEED = 1;

export function lookAtCouplers(outing: Outing, { scenario, at, speed }: CouplersAsk): GapBand[] {
  const context = openOuting(outing);
  const here = turnOf(outing)(at);
  const { groups } = prepare(context, 0.5, 0).brakes;
  return couplerBands(context, groups, { scenario, at: here, speed, runs: RUNS, seed: SEED, time: TIME });
}

export interface CouplerLoads {
  /** Chainages here are in the running direction; `at` turns them into the line's own. */
  readonly data: CouplerData;
  readonly swings: SwingData['ends'];
  readonly findings: readonly Finding[];
  readonly at: (s: number) => number;
}

export function lookAtCouplerLoads(outing: Outing): CouplerLoads {
  const inquiry = inquire(outing);
  const { data, findings } = inquiry.of(couplers);
  const swings = inquiry.of(swing);
  const all = [...swings.findings.filter((f) => f.severity !== 'assumed'), ...findings];
  return {
    data,
    swings: swings.data.ends,
    findings: ranked(turnFindings(outing, all)),
    at: turnOf(outing),
  };
}
