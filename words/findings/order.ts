/** Words for what is in date. */
import { tellInDate } from '../in-date.ts';
import type { Tellers } from './teller.ts';

const asked = 'The host asks for it: the rule is quoted as the source.';

export const orderWords = {
  'out-of-date': ({ facts: { what, of, last } }) => ({
    what: `Out of date: ${tellInDate(what)}, of ${of}${last === undefined ? '' : `, which stood to ${last}`}.`,
    why: asked,
  }),
  'not-shown': ({ facts: { what, of } }) => ({
    what: `Nobody has shown that it stands: ${tellInDate(what)}, of ${of}.`,
    why: asked,
  }),
  'defect-open': ({ severity, facts: { what, of, since } }) => ({
    what: `${severity === 'forbids' ? 'Rejected' : 'To be mended'}: ${of}, ${what} (found ${since}).`,
    why: 'It stays open until a record says that it is mended.',
  }),
  'in-grace': ({ facts: { what, of, last } }) => ({
    what: `In grace: ${tellInDate(what)}, of ${of}${last === undefined ? '' : `, which stood to ${last}`}.`,
    why: 'It still stands, and is due.',
  }),
} satisfies Partial<Tellers>;
