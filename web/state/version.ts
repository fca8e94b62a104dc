/**
 * Which Heedway this is, whether all of it is kept for where there is no signal, and whether a newer one has come. The
 * newer one waits until a person takes it; then every tab changes to it together, so that no page is of two versions.
 */
import { signal } from '@preact/signals';
import { fresh } from './session.ts';
import { takeOver } from './take-over.ts';

declare const HEEDWAY_VERSION: string;
export const version = HEEDWAY_VERSION;

/** All of this version is kept here, and works without a network; undefined while that is being found out. */
export const ready = signal<boolean | undefined>(undefined);

let registered: ServiceWorkerRegistration | undefined;

export function take(): void {
  if (registered) takeOver(registered);
}

/** What this very page is made of lies in the offline copy. */
async function keptHere(): Promise<boolean> {
  const own = [...document.querySelectorAll<HTMLElement>('script[src], link[rel=stylesheet]')].map(
    (part) => (part as HTMLScriptElement).src || (part as HTMLLinkElement).href,
  );
  const found = await Promise.all(
    [...own, './index.html'].map((url) => caches.match(url, { ignoreSearch: true })),
  );
  return found.every((copy) => copy !== undefined);
}

function watch(registration: ServiceWorkerRegistration): void {
  registered = registration;
  const look = (): void => {
    // The first version of all has nothing to wait for.
    fresh.value = registration.waiting !== null && registration.active !== null;
  };
  look();
  const follow = (): void => {
    const { installing } = registration;
    const replaces = registration.active !== null;
    installing?.addEventListener('statechange', () => {
      look();
      // Something of it could not be fetched: all or nothing is put by.
      if (installing.state === 'redundant' && !registration.active) ready.value = false;
      // A page of the first visit is under no worker that could change: it goes over with the others all the same.
      if (installing.state === 'activated' && replaces && !navigator.serviceWorker.controller)
        location.reload();
    });
  };
  follow();
  registration.addEventListener('updatefound', follow);
  // A page that stays open for days hears of a new version when it is looked at again.
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void registration.update().catch(() => {});
  });
}

export async function keepOffline(): Promise<void> {
  const workers = 'serviceWorker' in navigator ? navigator.serviceWorker : undefined;
  if (!workers || !import.meta.env.PROD) {
    ready.value = false;
    return;
  }
  const before = workers.controller;
  // Of a first visit nothing is replaced; from then on a page and its offline copy are of one version.
  workers.addEventListener('controllerchange', () => {
    if (before) location.reload();
  });
  try {
    const registration = await workers.register('./sw.js', { scope: './' });
    watch(registration);
    await workers.ready;
    ready.value = await keptHere();
  } catch {
    ready.value = false;
  }
}
