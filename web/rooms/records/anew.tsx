/** Which record is said anew by the next one: it stays, and the new one stands. */
import type { Signal } from '@preact/signals';
import type { Kind } from '../../../papers/record/fields.ts';
import { standing } from '../../../records/amended.ts';
import { shownTime } from '../../../records/time.ts';
import { shortHash, tellContent } from '../../../words/records/record.ts';
import type { Kept } from '../../state/records.ts';

/** Those of long ago are said anew by the command line. */
const MOST = 50;

interface Props {
  readonly now: Kept;
  readonly kind: Kind;
  readonly value: Signal<string>;
}

export function Anew({ now, kind, value }: Props) {
  const all = standing(now.entries, kind).slice(-MOST).reverse();
  if (all.length === 0) return null;
  return (
    <p class="asked">
      <label>
        Says anew{' '}
        <select
          class="anew"
          value={value.value}
          onChange={(e) => {
            value.value = e.currentTarget.value;
          }}
        >
          <option value="">nothing: it is another</option>
          {all.map(({ first, content }) => (
            <option key={first.row.hash} value={first.row.hash}>
              {shortHash(first.row.hash)}, {shownTime(first.body.said)}:{' '}
              {tellContent({ kind, content }, now.names).slice(0, 60)}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

export const amending = ({ value }: Signal<string>): { readonly amends?: string } =>
  value === '' ? {} : { amends: value };
