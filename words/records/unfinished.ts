/** Lists that were begun and not recorded. */
import { shownTime } from '../../records/time.ts';

export interface UnfinishedTold {
  readonly list: string;
  readonly of: string;
  readonly said: number;
  readonly items: number;
  readonly rejected: number;
  readonly begun: string;
  readonly ofToday: boolean;
}

const rejectedWords = (count: number): string => (count === 0 ? '' : `, ${count} REJECTED`);

export const tellUnfinished = ({ list, of, said, items, rejected, begun, ofToday }: UnfinishedTold): string =>
  `Not finished: ${list}, of ${of === '' ? 'nothing named yet' : of}: ${said} of ${items} said${rejectedWords(rejected)}; begun ${shownTime(begun)}. ${ofToday ? '' : 'What was right then is to be looked at again. '}Not recorded yet: no inspection until then${rejected === 0 ? '' : ', but what is rejected keeps its train from leaving'}.`;

export const NOT_RECORDED =
  'What is said so far is kept on this device alone. It is no inspection until it is recorded; but what is rejected keeps its train from leaving already.';

export const ELSEWHERE =
  'Another tab said otherwise of this meanwhile, and that stands here now. Look, and say it again if it is not so.';

export const OF_ANOTHER_DAY =
  'Begun on another day: what was right then is to be looked at again; what was amiss still stands.';
