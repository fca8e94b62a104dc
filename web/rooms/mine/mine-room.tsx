/** My papers: outings side by side, everything in and out as one file, the code of another phone, the examples. */
import '../../look/rooms.css';
import './mine.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { outingIn } from '../../../desk/outing-code.ts';
import type { FileProblem } from '../../../papers/index.ts';
import { tellProblem } from '../../../papers/problem.ts';
import { readEverything } from '../../parts/everything.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { saveEverything } from '../../parts/save-everything.ts';
import { several } from '../../parts/several.ts';
import { openShed, ownVehicles, takeIn } from '../../parts/shed.ts';
import { openBeside } from '../../parts/shelf.ts';
import { SurveyImport } from '../../parts/survey-import.tsx';
import { demo, demoNames } from '../../state/demos.ts';
import { change, type Json, openTried } from '../../state/session.ts';
import { Shelf } from './shelf.tsx';

/** Counts what was asked to be opened: a slow one that was overtaken opens no more. */
let asked = 0;

export function Room() {
  const said = useSignal('');
  const found = useSignal<readonly FileProblem[]>([]);
  const code = useSignal('');
  useEffect(() => void openShed(), []);
  const own = ownVehicles().length;
  const tell = (text: string, problems: readonly FileProblem[] = []): void => {
    said.value = text;
    found.value = problems;
  };
  const open = async (content: Uint8Array | string, name: string): Promise<void> => {
    const mine = ++asked;
    const read = await readEverything(content, name);
    if (mine !== asked) return;
    if (!read.ok) return tell('', read.problems);
    const { outing, vehicles, tried } = read.value;
    await takeIn(vehicles);
    if (tried)
      await openBeside(tried.paper as Json, () => openTried(tried.paper as Json, tried.outing, tried.trials));
    else await openBeside(outing, () => change(outing));
    tell(
      vehicles.length > 0
        ? `Opened ${name}, with ${several(vehicles.length, 'vehicle')} for the shed.`
        : `Opened ${name}${tried ? ', with what is tried on it' : ''}.`,
    );
  };
  const openCode = async (): Promise<void> => {
    const found = await outingIn(code.value);
    if ('fault' in found) return tell(found.fault);
    await open(found, 'code');
  };
  const openPhoto = async (photo: File): Promise<void> => {
    tell('Looking for the code …');
    try {
      const { codeIn } = await import('../../parts/code-photo.ts');
      const read = await codeIn(photo);
      if (read === undefined)
        return tell(
          'No code was found in the picture: take it straight on, sharp, the code filling most of it.',
        );
      code.value = read;
      await openCode();
    } catch {
      tell(`${photo.name} cannot be read as a picture.`);
    }
  };
  return (
    <>
      <h1>My papers</h1>
      <Shelf />
      <section>
        <h2>Everything as one file</h2>
        <p>
          The outing with its line, train, rules and riders
          {own > 0 ? `, and your own ${several(own, 'vehicle')} in the shed` : ''}. The same contents give the
          same file, byte for byte.
        </p>
        <p class="row">
          <button type="button" class="main" onClick={saveEverything}>
            Save everything as one file
          </button>
          <FilePick
            label="Open a file"
            accept=".json,application/json"
            take={async ([file]) => open(new Uint8Array(await file.arrayBuffer()), file.name)}
          />
        </p>
        <p class="field">
          <label for="code">Code from a running card</label>
          <span class="written">
            <input
              id="code"
              value={code.value}
              onInput={(e) => {
                code.value = e.currentTarget.value;
              }}
              placeholder="HEEDWAY:1:…"
            />
            <button type="button" onClick={() => void openCode()}>
              Open the code
            </button>
          </span>
        </p>
        <p class="row">
          <FilePick label="or a photograph of it" accept="image/*" take={([photo]) => openPhoto(photo)} />
        </p>
        {found.value.length > 0 && (
          <section class="notice" role="alert">
            <h3>Nothing was changed: the file cannot be read</h3>
            <ul>
              {found.value.map((p) => (
                <li key={tellProblem(p)}>{tellProblem(p)}</li>
              ))}
            </ul>
          </section>
        )}
        {said.value !== '' && <p role="status">{said.value}</p>}
      </section>
      <section>
        <h2>Survey of a line</h2>
        <p>Look at it first; nothing changes until you take it.</p>
        <SurveyImport />
      </section>
      <section>
        <h2>Examples, all invented</h2>
        <p class="row">
          {demoNames.map((d) => (
            <button
              type="button"
              key={d.file}
              onClick={() => {
                const mine = ++asked;
                void demo(d.file).then(async (json) => {
                  if (mine !== asked) return;
                  await openBeside(json, () => change(json));
                  tell(`Opened ${d.title}.`);
                });
              }}
            >
              {d.title}
            </button>
          ))}
        </p>
      </section>
    </>
  );
}
