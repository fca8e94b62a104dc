/** What may be in date or out of it: its own name, as words. */
import type { InDateKind } from '../engine/things/in-date.ts';

export const tellInDate = (kind: InDateKind): string => kind.replaceAll('-', ' ');
