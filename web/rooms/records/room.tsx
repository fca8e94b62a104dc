/** Records: who writes here, what was recorded, whether it is as it was written, and how it goes to another device. */
import '../../look/rooms.css';
import './records.css';
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { about, allNamed, standsIn, typedIn, withPhotos } from '../../../records/about.ts';
import { standing } from '../../../records/amended.ts';
import type { Entry } from '../../../records/record.ts';
import type { Named } from '../../../records/store.ts';
import { spaced, tellAuthors } from '../../../words/records/brought.ts';
import { shortHash, tellStanding } from '../../../words/records/record.ts';
import { tellStriking } from '../../../words/records/striking.ts';
import { tellFault, tellFork, tellWhole } from '../../../words/records/verified.ts';
import { AskAgain } from '../../parts/ask-again.tsx';
import { emptied } from '../../parts/emptied.ts';
import { FilePick } from '../../parts/file-pick.tsx';
import { saveJson } from '../../parts/save.ts';
import {
  asFile,
  barred,
  type Kept,
  kept,
  openRecords,
  photosHere,
  record,
  saying,
  strikeName,
  takeFile,
} from '../../state/records.ts';
import { paper } from '../../state/session.ts';
import { Anew, amending } from './anew.tsx';
import { Begin } from './begin.tsx';
import { HowLong } from './kept.tsx';
import { Whole as One } from './one.tsx';

export function Room() {
  useEffect(() => void openRecords('whole'), []);
  const now = kept.value;
  return (
    <>
      <h1>Records</h1>
      {barred.value !== '' && (
        <p class="notice" role="alert">
          {barred.value}
        </p>
      )}
      {now && !now.me && (
        <Begin what="Who did what, and when: departures, arrivals, inspections, certificates. Nothing of it can be changed unseen." />
      )}
      {now && <Whole now={now} />}
      {now && <List now={now} />}
      {now?.me && <Note now={now} />}
      {now && <InAndOut now={now} />}
      {now?.me && <HowLong now={now} />}
      <p>
        <a href="#evidence">Evidence pack</a>
      </p>
    </>
  );
}

function Whole({ now }: { readonly now: Kept }) {
  if (now.entries.length === 0 && now.faults.length === 0) return null;
  return (
    <section aria-label="As they were written">
      {tellWhole(now, now.faults.length).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ul>
        {now.faults.map((fault) => {
          const words = tellFault(fault, now);
          return (
            <li key={words} class="wrong">
              {words}
            </li>
          );
        })}
        {now.forks.map((fork) => (
          <li key={fork.hashes.join()}>{tellFork(fork, now)}</li>
        ))}
      </ul>
      {now.vouched > 0 && (
        <button type="button" class="quiet" onClick={() => void openRecords('each')}>
          Check every signature by itself
        </button>
      )}
    </section>
  );
}

/** So many are shown at first, newest first. */
const SHOWN = 30;

function List({ now }: { readonly now: Kept }) {
  const all = useSignal(false);
  const opened = useSignal<ReadonlySet<string>>(new Set());
  const told = standing(now.entries).reverse();
  if (told.length === 0) return null;
  return (
    <section aria-label="All records">
      <h2>What was recorded, newest first</h2>
      <ul class="records">
        {told.slice(0, all.value ? told.length : SHOWN).map((one) => {
          const { hash, when, what, by } = tellStanding(one, now.entries, now.names);
          return (
            <li key={one.first.row.hash}>
              <span>{what}</span>
              <small>
                {when} · {by} · {hash}
              </small>
              <details
                onToggle={(e) => {
                  if (e.currentTarget.open) opened.value = new Set([...opened.value, one.first.row.hash]);
                }}
              >
                <summary>Whole</summary>
                {opened.value.has(one.first.row.hash) && <One entry={one.amendments.at(-1) ?? one.first} />}
              </details>
            </li>
          );
        })}
      </ul>
      {told.length > SHOWN && !all.value && (
        <button
          type="button"
          onClick={() => {
            all.value = true;
          }}
        >
          All {told.length}
        </button>
      )}
    </section>
  );
}

function Note({ now }: { readonly now: Kept }) {
  const text = useSignal('');
  const anew = useSignal('');
  const said = useSignal('');
  const keep = async (): Promise<void> => {
    const empty = emptied([text, anew]);
    try {
      const { row } = await record({ kind: 'note', content: { text: text.value.trim() }, ...amending(anew) });
      said.value = `Recorded as ${shortHash(row.hash)}.`;
      empty();
    } catch (fault) {
      said.value = saying(fault);
    }
  };
  return (
    <section aria-label="A note">
      <p class="field">
        <label for="note">A note</label>
        <span class="written">
          <input
            id="note"
            value={text.value}
            onInput={(e) => {
              text.value = e.currentTarget.value;
            }}
          />
          <button type="button" disabled={text.value.trim() === ''} onClick={() => void keep()}>
            Record it
          </button>
        </span>
      </p>
      <Anew now={now} kind="note" value={anew} />
      <p role="status">{said.value}</p>
    </section>
  );
}

function InAndOut({ now }: { readonly now: Kept }) {
  const said = useSignal<readonly string[]>([]);
  const withNames = useSignal(false);
  const save = async (): Promise<void> => {
    saveJson(await asFile(withNames.value), 'heedway-records.jsonl');
    said.value = ['Saved as heedway-records.jsonl. The same records give the same file, byte for byte.'];
  };
  const asked = useSignal<Asked | undefined>(undefined);
  const bring = async (bytes: Uint8Array, accepted?: ReadonlySet<string>): Promise<void> => {
    asked.value = undefined;
    try {
      const took = await takeFile(bytes, accepted);
      said.value = took.said;
      if (took.asks.length > 0) asked.value = { bytes, keys: took.asks };
    } catch (fault) {
      said.value = [saying(fault)];
    }
  };
  return (
    <section>
      <h2>To another device and back</h2>
      <p>
        One file holds all records; brought into another device it adds what is lacking there, and nothing is
        put over anything. Keep a copy elsewhere: a browser’s storage can be cleared.
      </p>
      <p class="row">
        <button
          type="button"
          disabled={now.entries.length === 0 || now.faults.length > 0}
          onClick={() => void save()}
        >
          Save all records as one file
        </button>
        <label class="tick">
          <input
            type="checkbox"
            checked={withNames.value}
            onChange={(e) => {
              withNames.value = e.currentTarget.checked;
            }}
          />
          with the names of persons
        </label>
        <FilePick
          label="Bring records in"
          accept=".jsonl,application/json"
          take={async ([file]) => bring(new Uint8Array(await file.arrayBuffer()))}
        />
      </p>
      <div role="status">
        {said.value.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      {asked.value && <Accept asked={asked.value} take={bring} />}
      {now.entries.length > 0 && (
        <details>
          <summary>Who wrote, with the letters of their keys</summary>
          <ul class="records">
            {tellAuthors(now, now.me?.name).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
      {now.names.length > 0 && (
        <details>
          <summary>Names, which stand apart from the records</summary>
          <ul class="records">
            {byName(now.names).map((named) => (
              <li key={named[0].person}>
                <span>{named[0].name}</span>
                <button type="button" class="quiet" onClick={() => void saveAbout(named, now.entries)}>
                  Save all about {named[0].name}
                </button>
                <Strike named={named} now={now} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** Once each, however it is cased and spaced: two devices that were put together have a person each of one name. */
const byName = (names: readonly Named[]): readonly (readonly Named[])[] =>
  [...names]
    .sort((a, b) => a.name.localeCompare(b.name))
    .map(({ name }) => allNamed(name, names))
    .filter((all, i, every) => every.findIndex(([first]) => first === all[0]) === i);

interface OfOneName {
  readonly named: readonly Named[];
  readonly now: Kept;
}

/** Asked again with the name: what goes does not come back. */
function Strike({ named, now }: OfOneName) {
  const [{ name }] = named;
  const fault = useSignal('');
  const strike = async (): Promise<void> => {
    try {
      await strikeName(named.map(({ person }) => person));
    } catch (error) {
      fault.value = saying(error);
    }
  };
  return (
    <>
      <AskAgain
        what={`Strike ${name} out`}
        sure={`Strike ${name} out for good`}
        keep={`Keep ${name}`}
        does={() => void strike()}
      >
        <Struck named={named} now={now} />
      </AskAgain>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </>
  );
}

function Struck({ named, now }: OfOneName) {
  const [{ name }] = named;
  const persons = new Set(named.map(({ person }) => person));
  const { records } = about(named, now.entries);
  const referring = records.filter(({ why }) => why !== 'typed in it').length;
  const isMe = records.some(({ kind, content, record: hash }) => {
    const author = now.entries.find(({ row }) => row.hash === hash)?.body.author;
    return kind === 'author' && persons.has(`${content['person']}`) && author === now.me?.name;
  });
  const told = tellStriking(
    name,
    referring,
    typedIn(name, now.entries),
    isMe,
    standsIn(paper.value as Parameters<typeof standsIn>[0], name),
  );
  return (
    <>
      {told.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </>
  );
}

async function saveAbout(named: readonly Named[], entries: readonly Entry[]): Promise<void> {
  const all = withPhotos(about(named, entries), entries, await photosHere(entries));
  saveJson(`${JSON.stringify(all, undefined, 2)}\n`, 'heedway-person.json');
}

interface Asked {
  readonly bytes: Uint8Array;
  readonly keys: readonly string[];
}

/** Each key is compared for itself: nothing comes in with another's. */
function Accept({
  asked: { bytes, keys },
  take,
}: {
  readonly asked: Asked;
  readonly take: (bytes: Uint8Array, accepted: ReadonlySet<string>) => Promise<void>;
}) {
  const same = useSignal<ReadonlySet<string>>(new Set());
  return (
    <p class="row">
      {keys.map((key) => (
        <label key={key} class="tick">
          <input
            type="checkbox"
            checked={same.value.has(key)}
            onChange={(e) => {
              const others = [...same.value].filter((one) => one !== key);
              same.value = new Set(e.currentTarget.checked ? [...others, key] : others);
            }}
          />
          {spaced(key)} is theirs
        </label>
      ))}
      <button
        type="button"
        disabled={keys.some((key) => !same.value.has(key))}
        onClick={() => void take(bytes, same.value)}
      >
        Take them in
      </button>
    </p>
  );
}
