/** By which figures an item is judged, as they are written in its list: told before it is measured. */
import type { InspectionItem } from '../../papers/inspection/fields.ts';
import { resultWords } from './record.ts';

type Measured = NonNullable<InspectionItem['measured']>;

/** "9 mm or more"; "10 mm to 35 mm"; absent at both ends: any. */
function band({ from, to }: Measured['right']): string {
  if (from !== undefined && to !== undefined) return `${from} to ${to}`;
  if (from !== undefined) return `${from} or more`;
  return to === undefined ? 'any figure' : `${to} or less`;
}

/** "right: 12 mm or more; to be mended: 9 mm or more; REJECTED: all else". */
export const tellBands = ({ right, limit }: Measured): string =>
  [
    `${resultWords.right}: ${band(right)}`,
    ...(limit ? [`${resultWords.limit}: ${band(limit)}`] : []),
    `${resultWords.reject}: all else`,
  ].join('; ');
