/** Where the records of this device could not be asked, or not all of them count: said over every answer. */
import { effect } from '@preact/signals';
import { amissWords, NOT_ASKED } from '../../words/records/asked.ts';
import { silence } from '../state/at-hand.ts';
import { barred, kept, openRecords } from '../state/records.ts';

/** So long is waited for a storage that does not answer, ms. */
const PATIENCE = 5000;

/** Done when they are in the outing, or when it is plain that they are not. */
export async function ask(): Promise<void> {
  await Promise.race([openRecords(), new Promise((done) => setTimeout(done, PATIENCE))]);
  effect(() => {
    silence.value = kept.value
      ? ''
      : `${NOT_ASKED}: ${barred.value || 'this browser’s storage does not answer.'}`;
  });
}

export function RecordedNotice() {
  const amiss = kept.value?.faults.length ?? 0;
  const why = silence.value || (amiss === 0 ? '' : amissWords(amiss));
  if (why === '') return null;
  return (
    <p class="notice" role="alert">
      {why} <a href="#records">Records</a>
    </p>
  );
}
