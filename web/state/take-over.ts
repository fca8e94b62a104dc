/**
 * Asks the version that waits to take over, and again until it does: one that is asked while the older one is at work
 * may go on waiting, with nobody told.
 */
export function takeOver(of: { readonly waiting: Pick<ServiceWorker, 'postMessage'> | null }): void {
  if (!of.waiting) return;
  of.waiting.postMessage({ type: 'SKIP_WAITING' });
  setTimeout(() => takeOver(of), AGAIN);
}

/** ms */
const AGAIN = 1000;
