/** One search box over all of the house. What it knows is loaded when it is first used. */
import './find.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Entry, EntryKind } from '../../desk/find/entries.ts';
import { settings } from '../state/session.ts';

type Find = typeof import('../../desk/find/find.ts').find;

const kinds: Readonly<Record<EntryKind, string>> = {
  task: 'task',
  sum: 'sum',
  finding: 'finding',
  field: 'field',
  word: 'word',
};

/** @param called put the cursor into it */
export function FindBox({ called }: { readonly called: boolean }) {
  const box = useRef<HTMLInputElement>(null);
  const [sought, setSought] = useState('');
  const [known, setKnown] = useState<{ readonly find: Find }>();
  const load = (): void => {
    if (!known) void import('../../desk/find/find.ts').then(({ find }) => setKnown({ find }));
  };
  useEffect(() => {
    if (called) box.current?.focus();
  }, [called]);
  const { wording } = settings.value;
  const asked = sought.trim() !== '';
  const found = asked && known ? known.find(sought, wording) : [];
  return (
    <search class="find">
      <label>
        What are you looking for?
        <input
          ref={box}
          type="search"
          value={sought}
          placeholder={
            wording === 'uk' ? 'bogie, gradient, how far to stop' : 'truck, grade, how far to stop'
          }
          onFocus={load}
          onInput={(e) => {
            load();
            setSought(e.currentTarget.value);
          }}
          onKeyDown={(e) => {
            if (e.key === 'Escape') setSought('');
          }}
        />
      </label>
      <p role="status" class="found-count">
        {!asked
          ? ''
          : !known
            ? 'Looking …'
            : found.length === 0
              ? 'Nothing is like that. Try one word of it.'
              : `${found.length} found`}
      </p>
      {found.length > 0 && (
        <ul class="found">
          {found.map((entry) => (
            <li key={entry.id}>
              <Found entry={entry} />
            </li>
          ))}
        </ul>
      )}
    </search>
  );
}

function Found({ entry: { kind, title, tells, room } }: { readonly entry: Entry }) {
  const words = (
    <>
      <small>{kinds[kind]}</small>
      <strong>{title}</strong>
      <span>{tells}</span>
    </>
  );
  return room === '' ? <p>{words}</p> : <a href={room}>{words}</a>;
}
