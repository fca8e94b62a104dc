/** The cautions at the first use: short, serious, once. */
import { useEffect, useRef } from 'preact/hooks';
import { settings } from '../state/session.ts';

export function Cautions() {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (!settings.value.cautioned) dialog.current?.showModal();
  }, []);
  const close = (): void => {
    settings.value = { ...settings.value, cautioned: true };
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} aria-labelledby="cautions" onCancel={close}>
      <h2 id="cautions">Before you rely on it</h2>
      <ul>
        <li>
          Heedway reckons from what it is told. It cannot see a worn coupler, a leaf on the rail or a child
          standing up.
        </li>
        <li>The host's rules, the boiler code, local law and the person in charge come first.</li>
        <li>"Cannot tell" means: measure this. Assumed values are listed; replace them by measurements.</li>
        <li>Check again when the rail, the load, the cars or the driver change.</li>
      </ul>
      <p>Everything stays on this device unless you send it.</p>
      <button type="button" class="main" onClick={close}>
        I have read this
      </button>
    </dialog>
  );
}
