/** A line that a person brings: a host's file or code, or a survey. Without one, the last question asks for the worst of it. */
import { useSignal } from '@preact/signals';
import { outingIn } from '../../../desk/outing-code.ts';
import { readLine } from '../../../papers/index.ts';
import { readEverything } from '../../parts/everything.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { readingSurvey } from '../../parts/survey.ts';
import type { Json } from '../../state/session.ts';
import { brought, replies } from './draft.ts';

const nameOf = (json: Json | undefined): string => String(json?.['name'] ?? '');

export function BringLine() {
  const said = useSignal('');
  const code = useSignal('');
  const take = (line: Json, host: Json | undefined): void => {
    brought.value = { line, ...(host ? { host } : {}) };
    said.value = '';
  };
  const paper = async (content: Uint8Array | string, name: string): Promise<void> => {
    const read = await readEverything(content, name);
    if (read.ok) {
      const { outing } = read.value;
      const json = (outing['heedway'] === 'tried' ? outing['outing'] : outing) as Json;
      return take(json['line'] as Json, json['host'] as Json);
    }
    const line = await readLine({ path: name, content });
    if (line.ok) {
      const text = typeof content === 'string' ? content : new TextDecoder().decode(content);
      return take(JSON.parse(text.replace(/^\uFEFF/, '')) as Json, undefined);
    }
    const [first] = [...line.problems, ...read.problems];
    said.value = `${name} cannot be read as a line or an outing: ${first.message}`;
  };
  const file = async (chosen: File): Promise<void> => {
    if (!/\.(csv|txt|gpx)$/i.test(chosen.name))
      return paper(new Uint8Array(await chosen.arrayBuffer()), chosen.name);
    const gauge = replies.value['engine.gauge'] ?? '7-1/4 in';
    const survey = await readingSurvey(chosen, gauge, (share) => {
      said.value = `${chosen.name}: ${Math.round(100 * share)} % read`;
    }).done;
    if (survey.made) return take(survey.made.json as Json, undefined);
    said.value = `${chosen.name} cannot be read: ${survey.problems[0]?.message ?? 'it holds no line'}`;
  };
  const openCode = async (): Promise<void> => {
    const found = await outingIn(code.value);
    if ('fault' in found) {
      said.value = found.fault;
      return;
    }
    await paper(found, 'the code');
  };
  const { line, host } = brought.value;
  if (line)
    return (
      <div class="ask">
        <p class="label">{nameOf(line)}</p>
        <p class="under">
          {host ? `With ${nameOf(host)}. ` : ''}
          {line['invented'] === true ? 'An invented example. ' : ''}What it does not say is asked below.
        </p>
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
    <details class="more">
      <summary>The host's file or code, or a survey</summary>
      <div class="ask">
        <FilePick
          label="File of a line or an outing, CSV or GPX"
          accept=".json,.csv,.txt,.gpx,application/json"
          take={([chosen]) => file(chosen)}
        />
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
        {said.value !== '' && (
          <p class="wrong" role="alert">
            {said.value}
          </p>
        )}
      </div>
    </details>
  );
}
