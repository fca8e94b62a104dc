/** Asks the records of this device, where it has any, for what is on the screen; says where it could not. */
import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { looked, silence } from '../state/at-hand.ts';

/** Nothing is made, and nothing loaded, where nobody ever recorded anything; a browser that does not say is asked. */
async function hasRecords(): Promise<boolean> {
  try {
    return (
      indexedDB.databases === undefined ||
      (await indexedDB.databases()).some(({ name }) => name === 'heedway-records')
    );
  } catch {
    return false;
  }
}

export function Recorded() {
  const Notice = useSignal<ComponentType | null>(null);
  useEffect(() => {
    void (async () => {
      if (await hasRecords()) {
        try {
          const { ask, RecordedNotice } = await import('./recorded-notice.tsx');
          await ask();
          Notice.value = RecordedNotice;
        } catch {
          silence.value = 'RECORDS NOT ASKED: what reads them could not be loaded. Load the page again.';
        }
      }
      looked.value = true;
    })();
  }, []);
  const Shown = Notice.value;
  return Shown && <Shown />;
}
