/** Files: everything in and out as one file, surveys, the code of another phone, the examples. */
import '../../parts/form/form.css';
import { useSignal } from '@preact/signals';
import { fromCode } from '../../../desk/outing-code.ts';
import { type FileProblem, readOuting, writeFile } from '../../../files/index.ts';
import { tellProblem } from '../../../files/problem.ts';
import { SurveyImport } from '../../parts/survey-import.tsx';
import { demo, demoNames } from '../../state/demos.ts';
import { change, type Json, paper } from '../../state/session.ts';

async function inflate(bytes: Uint8Array): Promise<string> {
  const stream = new Blob([bytes as BlobPart]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(stream).text();
}

export function Room() {
  const said = useSignal<readonly string[]>([]);
  const found = useSignal<readonly FileProblem[]>([]);
  const code = useSignal('');
  const clear = (): void => {
    said.value = [];
    found.value = [];
  };
  const openOutingText = async (text: string, name: string): Promise<void> => {
    clear();
    const read = await readOuting({ path: name, content: text }, async () => undefined);
    if (!read.ok) found.value = read.problems;
    else {
      change(JSON.parse(text.replace(/^\uFEFF/, '')) as Json);
      said.value = [`Opened ${name}.`];
    }
  };
  const openCode = async (): Promise<void> => {
    const bytes = fromCode(code.value);
    if (!bytes) {
      clear();
      said.value = ['This is no code of an outing: it begins with HEEDWAY:1: and is copied whole.'];
      return;
    }
    try {
      await openOutingText(await inflate(bytes), 'code');
    } catch {
      said.value = ['The code is broken: some of it is missing. Copy it again, whole.'];
    }
  };
  return (
    <>
      <h1>Files</h1>
      <section>
        <h2>This outing</h2>
        <p class="row">
          <button type="button" class="main" onClick={save}>
            Save everything as one file
          </button>
          <label class="file">
            Open an outing{' '}
            <input
              type="file"
              accept=".json,application/json"
              onChange={(e) => {
                const file = e.currentTarget.files?.[0];
                if (file) void file.text().then((t) => openOutingText(t, file.name));
              }}
            />
          </label>
        </p>
        <p class="field">
          <label for="code">Code from a running card</label>
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
        </p>
      </section>
      <section>
        <h2>Survey of a line</h2>
        <SurveyImport />
      </section>
      {found.value.length > 0 && (
        <section class="notice" role="alert">
          <h2>Nothing was changed</h2>
          <ul>
            {found.value.map((p) => (
              <li key={tellProblem(p)}>{tellProblem(p)}</li>
            ))}
          </ul>
        </section>
      )}
      {said.value.map((text) => (
        <p key={text} role="status">
          {text}
        </p>
      ))}
      <section>
        <h2>Examples, all invented</h2>
        <p class="row">
          {demoNames.map((d) => (
            <button
              type="button"
              key={d.file}
              onClick={() =>
                void demo(d.file).then((json) => {
                  change(json);
                  clear();
                  said.value = [`Opened ${d.title}.`];
                })
              }
            >
              {d.title}
            </button>
          ))}
        </p>
      </section>
    </>
  );
}

function save(): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([writeFile(paper.value)], { type: 'application/json' }));
  link.download = 'outing.json';
  link.click();
  URL.revokeObjectURL(link.href);
}
