/** Files: everything in and out as one file, surveys, the code of another phone, the examples. */
import { useSignal } from '@preact/signals';
import { fromCode } from '../../../desk/outing-code.ts';
import { importCsv } from '../../../files/import/csv.ts';
import { type FileProblem, readOuting, writeFile } from '../../../files/index.ts';
import { tellProblem } from '../../../files/problem.ts';
import { demo, demoNames } from '../../state/demos.ts';
import { change, edited, type Json, paper } from '../../state/session.ts';

async function inflate(bytes: Uint8Array): Promise<string> {
  const stream = new Blob([bytes as BlobPart]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(stream).text();
}

export function Room() {
  const said = useSignal<readonly string[]>([]);
  const found = useSignal<readonly FileProblem[]>([]);
  const preview = useSignal<{ line: Json; notes: readonly string[] } | null>(null);
  const code = useSignal('');
  const clear = (): void => {
    said.value = [];
    found.value = [];
    preview.value = null;
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
  const openSurvey = async (file: File): Promise<void> => {
    clear();
    const bytes = new Uint8Array(await file.arrayBuffer());
    const about = {
      name: file.name.replace(/\.\w+$/, ''),
      gauge: String((paper.value['line'] as Json)['gauge']),
    };
    const read = /\.gpx$/i.test(file.name)
      ? await gpxOf(bytes, file.name, about)
      : importCsv(bytes, file.name, about);
    found.value = read.problems;
    if (read.line) preview.value = { line: read.line, notes: read.notes };
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
        <label class="file">
          CSV or GPX{' '}
          <input
            type="file"
            accept=".csv,.txt,.gpx"
            onChange={(e) => {
              const file = e.currentTarget.files?.[0];
              if (file) void openSurvey(file);
            }}
          />
        </label>
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
      {preview.value && (
        <section class="trying">
          <h2>A line was read: {(preview.value.line['profile'] as unknown[]).length} points</h2>
          <ul>
            {preview.value.notes.map((n) => (
              <li key={n}>{n}</li>
            ))}
          </ul>
          <button
            type="button"
            class="main"
            onClick={() => {
              if (preview.value) change(edited(paper.value, ['line'], preview.value.line) as Json);
              clear();
              said.value = ['The outing now runs on this line.'];
            }}
          >
            Run on this line
          </button>
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

async function gpxOf(bytes: Uint8Array, name: string, about: { name: string; gauge: string }) {
  const { importGpx } = await import('../../../files/import/gpx.ts');
  return importGpx(bytes, name, about, (text) => {
    const document = new DOMParser().parseFromString(text, 'text/xml');
    const fault = document.querySelector('parsererror')?.textContent?.split('\n')[0];
    return fault ? { fault } : { document };
  });
}

function save(): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([writeFile(paper.value)], { type: 'application/json' }));
  link.download = 'outing.json';
  link.click();
  URL.revokeObjectURL(link.href);
}
