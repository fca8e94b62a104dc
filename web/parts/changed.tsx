/** What changed, in three lines: what is told, before, now. */
import { standing, standingHead } from '../../desk/figures.ts';
import { speech, told, undo } from '../state/session.ts';
import { since } from '../state/since.ts';

export function Changed() {
  if (!since.value) return null;
  const now = told.value && standing(told.value, speech.value);
  const was = standing(since.value, speech.value);
  const rows = [
    ['before', was],
    ['now', now],
  ] as const;
  return (
    <section class="changed" aria-label="What changed">
      <table>
        <thead>
          <tr>
            <td />
            {standingHead.map((words) => (
              <th key={words} scope="col">
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, at]) => (
            <tr key={name} class={name}>
              <th scope="row">{name}</th>
              <td class={`word ${at?.verdict ?? ''}`}>{at?.word ?? '…'}</td>
              {(['speed', 'cars', 'gap'] as const).map((key) => (
                <td key={key} class={at?.[key] !== undefined && at[key] !== was[key] ? 'other' : ''}>
                  {at?.[key] ?? '…'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" onClick={undo}>
        Put it back
      </button>
    </section>
  );
}
