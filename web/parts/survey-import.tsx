/** A survey from CSV or GPX: looked at first, with its notes and what is wrong in which row, then taken or left. */
import { type Signal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Survey } from '../../desk/survey.ts';
import { surveyFound } from '../../desk/survey-found.ts';
import type { Line } from '../../engine/things/line/types.ts';
import type { SurveyChoices } from '../../papers/import/types.ts';
import type { FileProblem } from '../../papers/index.ts';
import { drawStrip } from '../../views/strip/draw.ts';
import { stripWords } from '../../views/strip/words.ts';
import { edit, paper, voice } from '../state/session.ts';
import { Drawing } from './drawing.tsx';
import { FeetOrMetres } from './feet-or-metres.tsx';
import { FilePick } from './file-pick.tsx';
import { valueAt } from './form/path.ts';
import { StripInks } from './inks.tsx';
import { type Reading, readingSurvey } from './survey.ts';
import { SurveyAdvice } from './survey-advice.tsx';

interface Props {
  /** One that came in by the door. */
  readonly file?: Signal<File | null>;
}

export function SurveyImport({ file: brought }: Props) {
  const survey = useSignal<Survey | null>(null);
  const said = useSignal('');
  const reading = useSignal<(Reading & { readonly file: string }) | null>(null);
  const share = useSignal(0);
  /** What was chosen last, and what was said of it since. */
  const last = useSignal<{ readonly file: File; readonly choices: SurveyChoices } | null>(null);
  const stop = (): void => {
    reading.value?.stop();
    reading.value = null;
  };
  const read = async (file: File, choices: SurveyChoices = {}): Promise<void> => {
    stop();
    last.value = { file, choices };
    said.value = '';
    survey.value = null;
    share.value = 0;
    const gauge = String(valueAt(paper.value, ['line', 'gauge']) ?? '');
    const hear = (done: number): void => {
      share.value = done;
    };
    const mine = readingSurvey(file, gauge, hear, choices);
    reading.value = { ...mine, file: file.name };
    survey.value = await mine.done;
    reading.value = null;
  };
  const choose = (choice: SurveyChoices): void => {
    if (last.value) void read(last.value.file, { ...last.value.choices, ...choice });
  };
  useEffect(() => {
    const file = brought?.value;
    if (!brought || !file) return;
    brought.value = null;
    void read(file);
  }, [brought?.value]);
  const take = (): void => {
    if (!survey.value?.made) return;
    edit(['line'], survey.value.made.json);
    said.value = `The outing now runs on ${survey.value.file}. Undo brings the line before it back.`;
    survey.value = null;
  };
  return (
    <section class="survey">
      <FilePick label="CSV or GPX" accept=".csv,.txt,.gpx" take={([file]) => read(file)} />
      {survey.value?.asksLengths && (
        <FeetOrMetres file={survey.value.file} take={(lengths) => choose({ lengths })} />
      )}
      {survey.value && !survey.value.made && !survey.value.asksLengths && <Troubles survey={survey.value} />}
      {reading.value && (
        <p class="row" role="status">
          Reading {reading.value.file}: {Math.floor(share.value * 100)} % …{' '}
          <button type="button" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {survey.value?.made && (
        <section class="trying" aria-label="The line that was read">
          <h3>Read from {survey.value.file}, not taken yet</h3>
          <Look line={survey.value.made.line} />
          <ul>
            {survey.value.notes.map((n) => (
              <li key={n}>{n}</li>
            ))}
          </ul>
          <SurveyAdvice advice={survey.value.advice} choose={choose} />
          <p>
            Taking it puts away the line that is open, with its places, limits and sight distances. Undo
            brings it back.
          </p>
          <p class="row">
            <button type="button" class="main" onClick={take}>
              Take this line
            </button>
            <button
              type="button"
              onClick={() => {
                survey.value = null;
              }}
            >
              Leave it
            </button>
          </p>
        </section>
      )}
      {said.value !== '' && <p role="status">{said.value}</p>}
    </section>
  );
}

/** The strip of a line alone: no train, no speeds. */
function Look({ line }: { readonly line: Line }) {
  const v = voice.value;
  if (!v) return null;
  const width = Math.min(1100, Math.max(330, document.documentElement.clientWidth - 70));
  const view = { width, height: 300, from: 0, to: line.length, textSize: width < 600 ? 12 : 14 };
  const model = {
    line,
    facing: 1 as const,
    speeds: null,
    wheels: null,
    driven: null,
    train: null,
    marks: [],
  };
  return (
    <>
      <p>{surveyFound(line, v)}</p>
      <StripInks />
      <div class="strip still">
        <Drawing scene={drawStrip(model, view, stripWords(v))} />
      </div>
    </>
  );
}

function Troubles({ survey }: { readonly survey: Survey }) {
  return (
    <section class="notice" role="alert">
      <h3>Nothing was changed: {survey.file} cannot be read as a line</h3>
      <ul>
        {survey.problems.map((p) => (
          <li key={`${p.row} ${p.column} ${p.message}`}>
            {p.row !== undefined && <strong>{place(p)}: </strong>}
            {p.path === '' ? '' : `${p.path}: `}found {p.found}; expected {p.expected}
          </li>
        ))}
      </ul>
      <p>Mend the file and choose it again.</p>
    </section>
  );
}

const place = (p: FileProblem): string => `row ${p.row}, column ${p.column} (${p.file}:${p.row}:${p.column})`;
