/** A line that a person brings: a host's file or code, or a survey. Without one, the last question asks for the worst of it. */
import { signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { ownLines } from '../../../desk/new/own-lines.ts';
import { Read } from '../../../desk/new/reading.ts';
import { outingIn } from '../../../desk/outing-code.ts';
import { surveyFound } from '../../../desk/survey-found.ts';
import type { Advice, SurveyChoices } from '../../../papers/import/types.ts';
import { readHost, readLine } from '../../../papers/index.ts';
import { readEverything } from '../../parts/everything.ts';
import { FeetOrMetres } from '../../parts/feet-or-metres.tsx';
import { FilePick } from '../../parts/file-pick.tsx';
import { openShelf, others } from '../../parts/shelf.ts';
import { readingSurvey } from '../../parts/survey.ts';
import { SurveyAdvice } from '../../parts/survey-advice.tsx';
import { type Json, paper, settings } from '../../state/session.ts';
import { brought, replies } from './draft.ts';

/** The survey of which the line was made, to be read anew; a page that was opened again has it no more. */
const surveyed = signal<{
  readonly file: File;
  readonly choices: SurveyChoices;
  readonly advice: readonly Advice[];
  readonly line: unknown;
} | null>(null);

const nameOf = (json: Json | undefined): string => String(json?.['name'] ?? '');

export function BringLine() {
  const said = useSignal('');
  /** One whose header does not say in what it was measured. */
  const unitless = useSignal<File | null>(null);
  const code = useSignal('');
  const take = (line: Json, host: Json | undefined): void => {
    brought.value = { line, ...(host ? { host } : {}) };
    said.value = '';
  };
  const aPaper = async (content: Uint8Array | string, name: string): Promise<void> => {
    const read = await readEverything(content, name);
    if (read.ok) {
      const { outing } = read.value;
      const json = (outing['heedway'] === 'tried' ? outing['outing'] : outing) as Json;
      return take(json['line'] as Json, json['host'] as Json);
    }
    const text = (): Json => {
      const all = typeof content === 'string' ? content : new TextDecoder().decode(content);
      return JSON.parse(all.replace(/^\uFEFF/, '')) as Json;
    };
    const line = await readLine({ path: name, content });
    if (line.ok) return take(text(), brought.value.host);
    if ((await readHost({ path: name, content })).ok) {
      const host = text();
      brought.value = { ...brought.value, host };
      said.value = '';
      return undefined;
    }
    const [first] = [...line.problems, ...read.problems];
    said.value = `${name} cannot be read as a line, an outing or a host's rules: ${first.message}`;
  };
  const file = async (chosen: File, choices: SurveyChoices = {}): Promise<void> => {
    unitless.value = null;
    if (!/\.(csv|txt|gpx)$/i.test(chosen.name))
      return aPaper(new Uint8Array(await chosen.arrayBuffer()), chosen.name);
    const gauge = new Read(replies.value, settings.value.units).figure('engine.gauge')?.text;
    if (gauge === undefined) {
      said.value = 'Say the gauge first, at the engine: a survey does not hold it.';
      return undefined;
    }
    const survey = await readingSurvey(
      chosen,
      gauge,
      (share) => {
        said.value = `${chosen.name}: ${Math.round(100 * share)} % read`;
      },
      choices,
    ).done;
    if (survey.made) {
      const { json, line } = survey.made;
      take(json as Json, undefined);
      const found = surveyFound(line, { system: settings.value.units });
      brought.value = { ...brought.value, notes: [found, ...survey.notes] };
      surveyed.value = { file: chosen, choices, advice: survey.advice, line: json };
      return undefined;
    }
    if (survey.asksLengths) {
      said.value = '';
      unitless.value = chosen;
      return undefined;
    }
    said.value = `${chosen.name} cannot be read: ${survey.problems[0]?.message ?? 'it holds no line'}`;
  };
  const openCode = async (): Promise<void> => {
    const found = await outingIn(code.value);
    if ('fault' in found) {
      said.value = found.fault;
      return;
    }
    await aPaper(found, 'the code');
  };
  const { line, host, notes = [] } = brought.value;
  const from = surveyed.value?.line === line ? surveyed.value : null;
  const rules = host && !line ? nameOf(host) : '';
  if (line)
    return (
      <div class="ask">
        <p class="label">{nameOf(line)}</p>
        <p class="under">
          {host ? `With ${nameOf(host)}. ` : ''}
          {line['invented'] === true ? 'An invented example. ' : ''}What it does not say is asked below.
        </p>
        {notes.length > 0 && (
          <ul class="under">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
        <Said said={said.value} />
        {from && (
          <SurveyAdvice
            advice={from.advice}
            choose={(choice) => void file(from.file, { ...from.choices, ...choice })}
          />
        )}
        <div class="picks">
          <button
            type="button"
            onClick={() => {
              brought.value = {};
            }}
          >
            Another line
          </button>
        </div>
      </div>
    );
  return (
    <>
      <MyLines take={take} />
      <details class="more">
        <summary>The host's file or code, or a survey</summary>
        {rules !== '' && (
          <p class="under">
            With {rules}.{' '}
            <button
              type="button"
              onClick={() => {
                brought.value = {};
              }}
            >
              Without
            </button>
          </p>
        )}
        <div class="ask">
          <FilePick
            label="File of a line, an outing or the host's rules, CSV or GPX"
            accept=".json,.csv,.txt,.gpx,application/json"
            take={([chosen]) => file(chosen)}
          />
          {unitless.value && (
            <FeetOrMetres
              file={unitless.value.name}
              take={(lengths) => unitless.value && void file(unitless.value, { lengths })}
            />
          )}
          <label class="label" for="new-code">
            Code from a running card
          </label>
          <div class="line">
            <input
              id="new-code"
              value={code.value}
              placeholder="HEEDWAY:2:…"
              autocomplete="off"
              onInput={(e) => {
                code.value = e.currentTarget.value;
              }}
            />
            <button type="button" onClick={() => void openCode()}>
              Take its line
            </button>
          </div>
          <Said said={said.value} />
        </div>
      </details>
    </>
  );
}

const Said = ({ said }: { readonly said: string }) =>
  said === '' ? null : (
    <p class="wrong" role="alert">
      {said}
    </p>
  );

/** The next train of the day runs on the line of the one before. */
function MyLines({ take }: { readonly take: (line: Json, host: Json | undefined) => void }) {
  useEffect(() => void openShelf(), []);
  const mine = ownLines([paper.value, ...others()]);
  if (mine.length === 0) return null;
  return (
    <section class="ask" aria-label="On a line of my papers">
      <p class="label">On a line of my papers</p>
      <div class="picks">
        {mine.map(({ name, line, host }) => (
          <button key={name} type="button" onClick={() => take(line, host)}>
            {name}
          </button>
        ))}
      </div>
    </section>
  );
}
