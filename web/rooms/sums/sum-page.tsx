/** One sum: its question, picture, fields with what was understood, equation, result, source and range. */
import { useSignal } from '@preact/signals';
import { answerSum, rangeWords, type SumFault } from '../../../desk/sums.ts';
import { sayBoth } from '../../../desk/understood.ts';
import type { Kind } from '../../../engine/base/quantity.ts';
import type { Sum, SumSymbol } from '../../../engine/base/sum.ts';
import { type Letter, lettersOf } from '../../../engine/sums/letters.ts';
import { accepted, parseQuantity } from '../../../units/index.ts';
import { sumPicture } from '../../../views/sum-pictures/index.ts';
import { letterText, otherLetters, symbolWords } from '../../../words/sum-letters.ts';
import { sumWords } from '../../../words/sums.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { Wrong } from '../../parts/form/slot.tsx';
import { settings } from '../../state/session.ts';
import { example } from './example.ts';

interface Props {
  readonly sum: Sum;
  /** From the address; absent: the worked example. */
  readonly written: Readonly<Record<string, string>> | undefined;
}

export function SumPage({ sum, written: given }: Props) {
  const written = useSignal<Readonly<Record<string, string>>>(given ?? example(sum.id));
  const { units, wording } = settings.value;
  const { title, asks, caution } = sumWords[sum.id];
  const filled = Object.fromEntries(Object.entries(written.value).filter(([, text]) => text.trim() !== ''));
  const reply = answerSum(sum.id, filled, units);
  const faults = reply.ok ? [] : reply.faults;
  const picture = sumPicture(sum.id, `Picture of ${title.toLowerCase()}`, (symbol) =>
    [...sum.inputs, ...sum.results].some((s) => s.symbol === symbol) ? symbolWords(symbol, wording) : '',
  );
  const letters = new Map(lettersOf(sum).map((letter) => [letter.name, letter]));
  const elsewhere = faults.filter((f) => !sum.inputs.some((s) => s.symbol === f.symbol));
  return (
    <article class="sum">
      <p class="sum-back">
        <a href="#sums">All sums</a>
      </p>
      <h2>{title}</h2>
      <p class="asks">{asks}</p>
      <div class="sum-sheet">
        <div class="sum-fields">
          {given && <p>With the figures of the finding. Change any of them.</p>}
          {sum.inputs.map((s) => (
            <Field
              key={s.symbol}
              symbol={s}
              letter={letters.get(s.symbol)}
              text={written.value[s.symbol] ?? ''}
              fault={faults.find((f) => f.symbol === s.symbol)}
              onText={(text) => {
                written.value = { ...written.value, [s.symbol]: text };
              }}
            />
          ))}
        </div>
        <div>
          {picture && (
            <figure class="sum-picture drawn" tabIndex={0} aria-label={`Picture of ${title.toLowerCase()}`}>
              <Drawing scene={picture} />
            </figure>
          )}
          <div class="equation">
            {sum.equation.split(';  ').map((part) => (
              <div key={part}>{part}</div>
            ))}
          </div>
          {sum.remark && <p>{sum.remark}.</p>}
          <Others sum={sum} />
          <section aria-live="polite" class="result">
            {reply.ok ? (
              reply.answer.results.map((r, i) => (
                <p key={r.symbol}>
                  <Said letter={letters.get(r.symbol)} /> <strong>{r.text}</strong>{' '}
                  <small class="echo">{otherwise(r.text, r.si, sum.results[i].kind)}</small>
                </p>
              ))
            ) : (
              <p>
                No result:{' '}
                {faults.map((f) => `${symbolWords(f.symbol, wording)}, expected ${f.expected}`).join('; ')}.
              </p>
            )}
            {elsewhere.map((f) => (
              <p class="wrong" key={f.symbol}>
                found {f.found}; expected {f.expected}
              </p>
            ))}
          </section>
          <p>Source: {sum.source}.</p>
          {caution !== '' && <p class="caution">{caution}</p>}
        </div>
      </div>
    </article>
  );
}

/** A letter as it stands in the equation, and what it is. */
function Said({ letter }: { readonly letter: Letter | undefined }) {
  return letter ? (
    <>
      <i class="letter">{letter.letter}</i> {letterText(letter, settings.value.wording)}
    </>
  ) : null;
}

/** Constants of nature and steps between. */
function Others({ sum }: { readonly sum: Sum }) {
  const others = otherLetters(sum);
  return others.length === 0 ? null : (
    <ul class="letters">
      {others.map((letter) => (
        <li key={letter.letter}>
          <Said letter={letter} />
        </li>
      ))}
    </ul>
  );
}

interface FieldProps {
  readonly symbol: SumSymbol;
  readonly letter: Letter | undefined;
  readonly text: string;
  readonly fault: SumFault | undefined;
  readonly onText: (text: string) => void;
}

function Field({ symbol: s, letter, text, fault, onText }: FieldProps) {
  const { units, wording } = settings.value;
  const id = `s-${s.symbol}`;
  const range = rangeWords(s, units);
  const left = text.trim() === '' && s.default !== undefined;
  return (
    <div class="field">
      <label for={id}>{symbolWords(s.symbol, wording)}</label>
      <span class="figure">
        <i class="letter" title={letter?.unit && `in the equation in ${letter.unit}`}>
          {letter?.letter}
        </i>
        <input
          id={id}
          value={text}
          autocomplete="off"
          placeholder={left ? `${sayBoth(s.default ?? 0, s.kind)} if left out` : ''}
          aria-invalid={fault !== undefined}
          aria-describedby={`${id}-told`}
          onInput={(e) => onText(e.currentTarget.value)}
        />
        {fault ? (
          <Wrong id={id} fault={fault} />
        ) : (
          <small class="echo" id={`${id}-told`}>
            {understood(s, text)}
          </small>
        )}
        <small class="range">{range === '' ? accepted(s.kind) : range}</small>
      </span>
    </div>
  );
}

const unitsOf = (text: string): string => text.replace(/[\d\s.,/+−-]/g, '');

/** A result in the other system's units, where they differ. */
const otherwise = (text: string, si: number, kind: Kind): string =>
  sayBoth(si, kind)
    .split(' · ')
    .filter((one) => unitsOf(one) !== unitsOf(text))
    .map((one) => `= ${one}`)
    .join(' ');

/** What was read of the text, or what is taken where nothing is written. */
function understood(s: SumSymbol, text: string): string {
  const clean = text.trim();
  if (clean === '')
    return s.default === undefined ? '' : `= ${sayBoth(s.default, s.kind)}, as nothing is written`;
  const read = parseQuantity(clean.replace(/^([+-]?[\d.]+)in(\d)/, '$1 in $2'), s.kind);
  return read.ok && s.kind !== 'count' ? `= ${sayBoth(read.si, s.kind)}` : '';
}
