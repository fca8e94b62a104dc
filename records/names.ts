/** Names stand apart from records: a record refers to a person by a salted hash, and the name can be struck out. */
import { canonical } from './canonical.ts';
import { hex, sha256 } from './hash.ts';
import type { Named, Store } from './store.ts';

export const personOf = (name: string, salt: string): Promise<string> => sha256(canonical({ name, salt }));

/** The person of that name, known from before or named now. */
export async function personNamed(store: Store, name: string): Promise<Named> {
  const known = (await store.names()).find((one) => one.name === name);
  if (known) return known;
  const salt = hex(crypto.getRandomValues(new Uint8Array(16)));
  const named = { person: await personOf(name, salt), salt, name };
  await store.name(named);
  return named;
}

/** How a person is called where the name is not known, or has been struck out. */
export const nameIn = (names: readonly Named[], person: string): string =>
  names.find((one) => one.person === person)?.name ?? `person ${person.slice(0, 8)}`;
