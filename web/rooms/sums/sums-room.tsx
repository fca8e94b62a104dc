/** Every registered formula as a page of its own, found by words. */
import '../../look/rooms.css';
import './sums.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { sums } from '../../../desk/sums.ts';
import { symbolWords } from '../../../words/sum-letters.ts';
import { sumWords } from '../../../words/sums.ts';
import { Inks } from '../../parts/inks.tsx';
import { readSumLink } from '../../parts/sum-link.ts';
import { settings } from '../../state/session.ts';
import { SumPage } from './sum-page.tsx';

export function Room() {
  const place = useSignal(readSumLink(location.hash));
  const sought = useSignal('');
  useEffect(() => {
    const moved = (): void => {
      place.value = readSumLink(location.hash);
    };
    addEventListener('hashchange', moved);
    return () => removeEventListener('hashchange', moved);
  }, []);
  const { id, written } = place.value;
  const sum = sums.find((s) => s.id === id);
  const found = sums.filter((s) => matches(s.id, sought.value));
  return (
    <div class={sum ? 'sums open' : 'sums'}>
      <Inks />
      <h1>Sums</h1>
      <section class="sum-list" aria-label="All sums">
        <label>
          Find by words{' '}
          <input
            type="search"
            value={sought.value}
            placeholder="vacuum, chain, curve …"
            onInput={(e) => {
              sought.value = e.currentTarget.value;
            }}
          />
        </label>
        <p role="status">
          {found.length} of {sums.length} sums
        </p>
        <ul>
          {found.map((s) => (
            <li key={s.id}>
              <a href={`#sums/${s.id}`} aria-current={s.id === id ? 'page' : undefined}>
                {sumWords[s.id].title}
                <small>{sumWords[s.id].asks}</small>
              </a>
            </li>
          ))}
        </ul>
      </section>
      {sum ? (
        <SumPage key={`${location.hash}`} sum={sum} written={written} />
      ) : (
        <p class="sum-none">
          Choose a sum. Each takes figures as you write them and shows what it made of them.
        </p>
      )}
    </div>
  );
}

/** Every word stands somewhere in the title, question, formula, symbols or source. */
function matches(id: string, text: string): boolean {
  const sum = sums.find((s) => s.id === id);
  if (!sum) return false;
  const { title, asks } = sumWords[id];
  const { wording } = settings.value;
  const symbols = [...sum.inputs, ...sum.results].map((s) => symbolWords(s.symbol, wording)).join(' ');
  const all = `${title} ${asks} ${id.replace(/-/g, ' ')} ${symbols} ${sum.source}`.toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
