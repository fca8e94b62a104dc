/** Every registered formula as a small page: fields with units, equation, result, source and range. */
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { answerSum, sums } from '../../../desk/sums.ts';
import { kinds } from '../../../engine/quantity.ts';
import { rangeText } from '../../../engine/sums/register.ts';
import { accepted } from '../../../units/index.ts';
import { sumWords, symbolWords } from '../../../words/sums.ts';
import { settings } from '../../state/session.ts';

const chosen = (): string => {
  const id = location.hash.split('/')[1];
  return sums.some((s) => s.id === id) ? id : sums[0].id;
};

const example = (id: string): Record<string, string> =>
  Object.fromEntries(
    sumWords[id].example.split(' ').map(
      (part) =>
        part
          .split(/=(.*)/s)
          .slice(0, 2)
          .map((t) => t.replace(/_/g, ' ')) as [string, string],
    ),
  );

export function Room() {
  const id = useSignal(chosen());
  const written = useSignal(example(id.value));
  const open = (next: string): void => {
    id.value = next;
    written.value = example(next);
  };
  useEffect(() => {
    const moved = (): void => open(chosen());
    addEventListener('hashchange', moved);
    return () => removeEventListener('hashchange', moved);
  }, []);
  const sum = sums.find((s) => s.id === id.value) ?? sums[0];
  const { units, wording } = settings.value;
  const filled = Object.fromEntries(Object.entries(written.value).filter(([, text]) => text.trim() !== ''));
  const reply = answerSum(sum.id, filled, units);
  const faults = reply.ok ? [] : reply.faults;
  return (
    <>
      <h1>Sums</h1>
      <label class="field">
        Sum{' '}
        <select
          value={sum.id}
          onChange={(e) => {
            location.hash = `sums/${e.currentTarget.value}`;
          }}
        >
          {sums.map((s) => (
            <option key={s.id} value={s.id}>
              {sumWords[s.id].title}
            </option>
          ))}
        </select>
      </label>
      <h2>{sumWords[sum.id].asks}</h2>
      <p class="equation">{sum.equation}</p>
      {sum.inputs.map((s) => {
        const fault = faults.find((f) => f.symbol === s.symbol);
        return (
          <p class="field" key={s.symbol}>
            <label for={`s-${s.symbol}`}>{symbolWords(s.symbol, wording)}</label>
            <input
              id={`s-${s.symbol}`}
              value={written.value[s.symbol] ?? ''}
              placeholder={
                s.default === undefined ? accepted(s.kind) : `${s.default} ${kinds[s.kind]} if left out`
              }
              aria-invalid={fault !== undefined}
              aria-describedby={`r-${s.symbol}`}
              onInput={(e) => {
                written.value = { ...written.value, [s.symbol]: e.currentTarget.value };
              }}
            />
            <small id={`r-${s.symbol}`} class={fault ? 'wrong' : ''}>
              {fault
                ? `found ${fault.found}; expected ${fault.expected}`
                : `${rangeText(s)} ${kinds[s.kind]}`}
            </small>
          </p>
        );
      })}
      <section aria-live="polite" class="result">
        {reply.ok ? (
          reply.answer.results.map((r) => (
            <p key={r.symbol}>
              {symbolWords(r.symbol, wording)} <strong>{r.text}</strong>
            </p>
          ))
        ) : (
          <p>
            No result:{' '}
            {faults.map((f) => `${symbolWords(f.symbol, wording)}, expected ${f.expected}`).join('; ')}.
          </p>
        )}
      </section>
      <p>Source: {sum.source}.</p>
      {sumWords[sum.id].caution && <p>{sumWords[sum.id].caution}</p>}
    </>
  );
}
