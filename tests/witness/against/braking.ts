/** Braking points: put on where told, is the train standing, or slow enough, where it must be? */
import { chance } from '../chance.ts';
import { groundOf } from '../ground.ts';
import { dealer, type Hand, hand, tableOf } from '../hand.ts';
import { nothingTold, stop, wayAhead } from '../stop.ts';
import { answering } from '../train.ts';
import type { Word } from './engine.ts';
import { MOST_HANDS, oddsOf } from './odds.ts';
import { type Hands, marginOf } from './rooms.ts';

export interface BrakedWhereTold {
  readonly kind: 'stop' | 'slow';
  readonly at: number;
  readonly target: number;
  readonly fromSpeed: number;
  readonly toSpeed: number;
  /** Of the hands, too fast at the target by more than 1 %; whether that is too many. */
  readonly tooFast: number;
  readonly late: boolean;
  /** Too many are not standing within the margin beyond it (a booked stop). */
  readonly beyondMargin: boolean;
  /** Middle of the first hands' speeds at the target, m/s. */
  readonly middle: number;
}

const FIRST = 51;

export function checkBraking(seed: number, { outing, answer }: Word, hands: Hands = {}): BrakedWhereTold[] {
  const ground = groundOf(outing);
  const table = tableOf(outing, answering(outing));
  const deal = dealer(chance(seed + 303), hands.triangle ?? 'halves');
  const dealt: Hand[] = [];
  const nth = (i: number): Hand => (dealt[i] ??= hand(table, deal()));
  const told = nothingTold();
  const margin = marginOf(outing);
  const most = hands.most ?? MOST_HANDS;
  return answer.brakingPoints.map(({ kind, at, target, fromSpeed, toSpeed }) => {
    const way = target - at + (target < at ? outing.line.length : 0);
    const ahead = wayAhead(ground, table.cars, at);
    const asked = { watch: way, enough: way + margin, step: hands.step ?? 0.01 };
    const brake = (i: number): typeof told => {
      stop(ahead, nth(i), fromSpeed, told, asked);
      return told;
    };
    const fast = oddsOf(most, (i) => brake(i).passed > toSpeed * 1.01);
    const far =
      kind === 'stop' && fast.tooMany
        ? oddsOf(most, (i) => brake(i).distance === Number.POSITIVE_INFINITY).tooMany
        : false;
    const first = Array.from({ length: FIRST }, (_, i) => brake(i).passed).sort((a, b) => a - b);
    return {
      kind,
      at,
      target,
      fromSpeed,
      toSpeed,
      tooFast: fast.share,
      late: fast.tooMany,
      beyondMargin: far,
      middle: first[FIRST >> 1],
    };
  });
}
