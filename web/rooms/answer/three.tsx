/** Three figures that are read from afar. They take their room at once, so that nothing below them moves. */
import type { Told } from '../../../desk/asked.ts';
import { type Figure, figures } from '../../../desk/figures.ts';
import { speech } from '../../state/session.ts';

const waits: Figure = { figure: '…', unit: '', under: '' };

export function Three({ told }: { readonly told: Told | null }) {
  const now = told && figures(told, speech.value);
  const shown = [
    ['How fast', now?.speed],
    ['How many', now?.cars],
    ['How far behind', now?.gap],
  ] as const;
  return (
    <ul class="three" aria-label="In three figures" aria-busy={now?.cars ? undefined : 'true'}>
      {shown.map(([name, figure = waits]) => (
        <li key={name} class={figure.figure.length > 5 ? 'long' : ''}>
          <span class="unseen">{name}: </span>
          <strong>
            {figure.figure} <small>{figure.unit}</small>
          </strong>
          <span>{figure.under}</span>
        </li>
      ))}
    </ul>
  );
}
