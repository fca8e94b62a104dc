/** One door for whatever a person has: files of any kind, a code, a link, the camera. */
import { useSignal } from '@preact/signals';
import { tellProblem } from '../../../papers/problem.ts';
import { offers, openFiles, openText, said, survey, tell, troubles } from '../../parts/door.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { later } from '../../parts/later.tsx';
import { SurveyImport } from '../../parts/survey-import.tsx';

/** With its reader, loaded when somebody holds up a code. */
const Camera = later<{ readonly took: (code: string) => Promise<boolean>; readonly close: () => void }>(
  async () => (await import('../../parts/camera.tsx')).Camera,
);

export function OpenAny() {
  const code = useSignal('');
  const looking = useSignal(false);
  return (
    <section aria-label="Open anything">
      <h2>Open anything</h2>
      <p>
        An outing, a line, a train, rules, a vehicle, everything as one file, a survey (CSV, GPX), the PDF or
        a photograph of a running card: choose it, or drop it anywhere. What is open now is never lost: it
        goes on the shelf.
      </p>
      <p class="row">
        <FilePick
          label="Open a file"
          accept=".json,.csv,.txt,.gpx,.pdf,application/json,application/pdf,image/*"
          multiple
          take={openFiles}
        />
        <FilePick label="or a photograph of it" accept="image/*" take={openFiles} />
        <button
          type="button"
          onClick={() => {
            looking.value = !looking.value;
          }}
        >
          Read a code with the camera
        </button>
      </p>
      {looking.value && (
        <Camera
          took={openText}
          close={() => {
            looking.value = false;
          }}
        />
      )}
      <p class="field">
        <label for="code">Code from a running card, or a link</label>
        <span class="written">
          <input
            id="code"
            value={code.value}
            onInput={(e) => {
              code.value = e.currentTarget.value;
            }}
            placeholder="HEEDWAY:2:…"
          />
          <button type="button" onClick={() => void openText(code.value)}>
            Open the code
          </button>
        </span>
      </p>
      {troubles.value.length > 0 && (
        <section class="notice" role="alert">
          <h3>Nothing was changed: the file cannot be read</h3>
          <ul>
            {troubles.value.map((p) => (
              <li key={tellProblem(p)}>{tellProblem(p)}</li>
            ))}
          </ul>
        </section>
      )}
      {offers.value.map((offer) => (
        <section key={offer.found} class="trying" aria-label="What was found">
          <p>{offer.found}</p>
          <p class="row">
            <button type="button" class="main" onClick={() => void offer.take()}>
              {offer.would}
            </button>
            <button type="button" onClick={() => tell('Left as it is.')}>
              Leave it
            </button>
          </p>
        </section>
      ))}
      {said.value !== '' && <p role="status">{said.value}</p>}
      <h3>Survey of a line</h3>
      <p>Look at it first; nothing changes until you take it.</p>
      <SurveyImport file={survey} />
    </section>
  );
}
