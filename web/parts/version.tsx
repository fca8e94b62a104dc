/** The foot of every room: which version this is, whether one may leave the signal, and the newer version. */
import { useEffect } from 'preact/hooks';
import { keepOffline, ready, take, version } from '../state/version.ts';

const reach = (): string =>
  ready.value === undefined
    ? 'Stay in reach of a network: Heedway is still being put by.'
    : ready.value
      ? 'Ready for no signal.'
      : 'Stay in reach of a network: this browser has not put Heedway by.';

export function Version() {
  useEffect(() => void keepOffline(), []);
  return (
    <p role="status">
      Heedway {version}.{' '}
      <span class="no-print">
        {reach()} <a href="./notices.txt">Notices of others' work</a>
      </span>
    </p>
  );
}

export function NewVersion() {
  return (
    <section class="notice no-print" role="status">
      <p>A new version of Heedway is here. Your work is kept.</p>
      <button type="button" onClick={take}>
        Take it now
      </button>
    </section>
  );
}
