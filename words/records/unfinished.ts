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
  `Not finished: ${list}, of ${of === '' ? 'nothing named yet' : of}: ${said} of ${items} said${rejectedWords(rejected)}; begun ${shownTime(begun)}. ${ofToday ? '' : 'What was right then is to be looked at again. '}It counts for nothing until it is recorded.`;

export const OF_ANOTHER_DAY =
  'Begun on another day: what was right then is to be looked at again; what was amiss still stands.';
