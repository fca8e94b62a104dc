/** One's own outings side by side: the one that is open, and those on the shelf. */
import { useEffect } from 'preact/hooks';
import { tellInvented } from '../../../desk/invented.ts';
import {
  aboutPaper,
  copied,
  copyOpen,
  openOwn,
  openShelf,
  others,
  putBack,
  takenOff,
  takeOff,
} from '../../parts/shelf.ts';
import { type Json, paper } from '../../state/session.ts';

export function Shelf() {
  useEffect(() => void openShelf(), []);
  const open = String(paper.value['name']);
  const lying = others();
  const invented = tellInvented(paper.value);
  return (
    <section class="shelf" aria-label="My papers">
      <p class="row">
        <a class="button main" href="#new">
          New train and line
        </a>
        <button type="button" onClick={() => void copyOpen()}>
          Copy this one
        </button>
        <span>
          Open now: <strong>{open}</strong>
          {invented === '' ? '' : ` (${invented})`}
        </span>
      </p>
      {lying.length > 0 && (
        <ul>
          {lying.map((json) => (
            <One key={String(json['name'])} json={json} />
          ))}
        </ul>
      )}
      {takenOff.value && (
        <p role="status">
          {String(takenOff.value['name'])} was deleted.{' '}
          <button type="button" onClick={() => void putBack()}>
            Bring it back
          </button>
        </p>
      )}
    </section>
  );
}

function One({ json }: { readonly json: Json }) {
  const name = String(json['name']);
  return (
    <li>
      <span>
        <strong>{name}</strong>
        <br />
        <small>{aboutPaper(json)}</small>
      </span>
      <span class="row">
        <button type="button" class="main" aria-label={`Open ${name}`} onClick={() => void openOwn(json)}>
          Open
        </button>
        <button type="button" aria-label={`Copy ${name}`} onClick={() => void copied(json)}>
          Copy
        </button>
        <button type="button" aria-label={`Delete ${name}`} onClick={() => void takeOff(json)}>
          Delete
        </button>
      </span>
    </li>
  );
}
