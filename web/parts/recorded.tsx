/** Where this device has records: that the outing on the screen does not say what they do. */
import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';

/** Nothing is made, and nothing loaded, where nobody ever recorded anything. */
async function hasRecords(): Promise<boolean> {
  try {
    return ((await indexedDB.databases?.()) ?? []).some(({ name }) => name === 'heedway-records');
  } catch {
    return false;
  }
}

export function Recorded() {
  const Notice = useSignal<ComponentType | null>(null);
  useEffect(() => {
    void (async () => {
      if (!(await hasRecords())) return;
      const [{ RecordedNotice }, { openRecords }] = await Promise.all([
        import('./recorded-notice.tsx'),
        import('../state/records.ts'),
      ]);
      await openRecords();
      Notice.value = RecordedNotice;
    })();
  }, []);
  const Shown = Notice.value;
  return Shown && <Shown />;
}
