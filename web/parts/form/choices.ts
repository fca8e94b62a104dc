/** Values that the rest of the paper offers for a field, as the seats of a car for a rider's seat. */
import { createContext } from 'preact';
import type { Path } from './path.ts';

export const Choices = createContext<(path: Path) => readonly string[] | undefined>(() => undefined);
