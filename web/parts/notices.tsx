/** What stands above every room while something is amiss; on paper too. */

import { askAgain, elsewhere, fault, fresh, problems, silent, stop, told, unkept } from '../state/session.ts';
import { later } from './later.tsx';
import { fieldWords } from './no-word.ts';
import { toField } from './to-field.ts';

interface Props {
  /** The room that is open. */
  readonly room: string;
}

export function Notices({ room }: Props) {
  // Where a train is begun, nothing is said of the outing that is open.
  const ofOpen = room !== 'new';
  return (
    <>
      {fault.value !== '' && <Halted />}
      {ofOpen && silent.value && <Silent />}
      {unkept.value !== '' && <Unkept />}
      {ofOpen && elsewhere.value !== '' && (
        <p class="notice no-print" role="status">
          {elsewhere.value}
        </p>
      )}
      {fresh.value && <NewVersion />}
      {ofOpen && problems.value.length > 0 && <Broken />}
    </>
  );
}

function Halted() {
  return (
    <section class="notice" role="alert">
      <p>{fault.value}</p>
      <button type="button" onClick={askAgain}>
        Ask again
      </button>
    </section>
  );
}

/** Where the word is there already, what is silent looks for remedies only, and needs no alarm, and moves nothing. */
function Silent() {
  return (
    <section class={told.value ? 'notice aside' : 'notice'} role={told.value ? 'status' : 'alert'}>
      <p>
        {told.value
          ? 'Looking for remedies takes long, and nothing has been heard for 5 seconds.'
          : 'There is no answer yet: nothing has been heard of the check for 5 seconds.'}
      </p>
      <button type="button" onClick={stop}>
        Stop it
      </button>
    </section>
  );
}

/** The browser keeps nothing: the work is handed over as a file instead. */
function Unkept() {
  return (
    <section class="notice no-print" role="alert">
      <p>{unkept.value} Until it can, nothing outlasts this page but what you save:</p>
      <button
        type="button"
        onClick={() => void import('./save-everything.ts').then(({ saveEverything }) => saveEverything())}
      >
        Save everything as one file
      </button>
    </section>
  );
}

/** What is wrong with the papers: until they can be read there is no answer. */
function Broken() {
  return (
    <section class="notice" role="alert">
      <h2>The papers cannot be read: there is no answer until they can</h2>
      <ul>
        {problems.value.map((p) => (
          <li key={p.message}>
            {p.path === '' ? (
              p.message
            ) : (
              <>
                {fieldWords(p.path)}
                {p.message.slice(p.message.startsWith(`${p.path}:`) ? p.path.length : 0)}{' '}
                <button type="button" class="no-print" onClick={() => toField(p.path)}>
                  Go to it
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const NewVersion = later(async () => (await import('./version.tsx')).NewVersion);
