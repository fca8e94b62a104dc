/** The tests that the papers keep, each with its age; how often they were right; sheets to publish and of other clubs. */
import { useState } from 'preact/hooks';
import { fileName } from '../../../desk/file-name.ts';
import { keptTests } from '../../../desk/measured/ages.ts';
import { takeBack } from '../../../desk/measured/apply.ts';
import { sheetRows, sumUp } from '../../../desk/measured/data-sheet.ts';
import { checksIn, runningRecord } from '../../../desk/measured/foretold.ts';
import { tellProblem } from '../../../papers/index.ts';
import { expired, keptWords } from '../../../words/measured/ages.ts';
import { takenBackWords } from '../../../words/measured/applied.ts';
import { sheetWords } from '../../../words/measured/data-sheet.ts';
import { recordWords } from '../../../words/measured/predicted.ts';
import type { Voice } from '../../../words/voice.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { save } from '../../parts/save.ts';
import { change, type Json, paper } from '../../state/session.ts';
import { today } from './drafts.ts';

interface Props {
  readonly voice: Voice;
}

export function Kept({ voice }: Props) {
  const [said, say] = useState('');
  const kept = keptTests(paper.value, today());
  const back = (index: number): void => {
    const { paper: next, stays } = takeBack(paper.value, index);
    say(takenBackWords(kept[index].name, stays));
    change(next as Json);
  };
  return (
    <section class="kept-tests" aria-label="Measured">
      {(kept.length > 0 || said !== '') && <h2>Measured</h2>}
      <ul>
        {kept.map((test) => (
          <li key={`${test.number} ${kept.length}`} class={expired(test.state) ? 'expired' : ''}>
            <span>
              {test.name} <small>{test.date}</small>
              <br />
              <small>{keptWords(test)}</small>
            </span>
            <button type="button" aria-label={`Take back ${test.name}`} onClick={() => back(test.number - 1)}>
              Take back
            </button>
          </li>
        ))}
      </ul>
      {kept.length > 0 && (
        <p>
          Take one back when the part was worked on, or when you no longer believe it: what was assumed stands
          again.
        </p>
      )}
      <p role="status">{said}</p>
      <Foretold />
      <Sheets voice={voice} any={kept.length > 0} />
    </section>
  );
}

/** How often the careful figure was right. */
function Foretold() {
  const record = runningRecord(checksIn(paper.value));
  if (!record) return null;
  return (
    <section aria-label="Was the answer right?">
      <h3>Was the answer right?</h3>
      {recordWords(record).map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}

/** Made of what is kept, and read of what other clubs have published. */
function Sheets({ voice, any }: Props & { readonly any: boolean }) {
  const [lines, tell] = useState<readonly string[]>([]);
  const publish = async (): Promise<void> => {
    const rows = sheetRows(paper.value);
    const { sheetText } = await import('../../../papers/import/data-sheet.ts');
    tell([`${rows.length} rows. No name, place or day is in it: look through it before you publish it.`]);
    save(
      new Blob([sheetText(rows)], { type: 'text/csv' }),
      fileName('measured', undefined, 'data-sheet.csv'),
    );
  };
  const read = async (files: readonly File[]): Promise<void> => {
    const { readSheet } = await import('../../../papers/import/data-sheet.ts');
    const sheets = await Promise.all(
      files.map(async (file) => readSheet(new Uint8Array(await file.arrayBuffer()), file.name)),
    );
    const problems = sheets.flatMap((sheet) => sheet.problems);
    tell(
      problems.length > 0 ? problems.map(tellProblem) : sheetWords(sumUp(sheets.map((s) => s.rows)), voice),
    );
  };
  return (
    <details class="fold">
      <summary>Data sheets: publish what you measured, read what others did</summary>
      <div class="inside">
        <p class="row">
          {any && (
            <button type="button" onClick={() => void publish()}>
              Data sheet without names, as CSV
            </button>
          )}
          <FilePick label="Read data sheets" accept=".csv,text/csv" multiple take={read} />
        </p>
        <div role="status">
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      </div>
    </details>
  );
}
