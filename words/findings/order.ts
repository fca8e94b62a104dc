/** Words for what is in date. */
import type { Severity } from '../../engine/questions/finding.ts';
import type { GroundKind } from '../../engine/things/in-date.ts';
import { tellInDate } from '../in-date.ts';
import { tellInvented } from '../invented-limit.ts';
import type { Tellers } from './teller.ts';

/** What it is not for. */
const unfitWords = {
  line: () => 'is for another line',
  gauge: () => 'is for another gauge',
  engine: (name: string) => `does not name ${name}`,
  weight: (name: string) => `is for lighter engines than ${name}`,
  power: (name: string, known: boolean) =>
    known
      ? `is for engines of other kinds than ${name}`
      : `is for engines of some kinds, and nobody has said what drives ${name}`,
  by: (accepted: string, known: boolean) =>
    known
      ? `is by nobody whom this host accepts (${accepted})`
      : `does not say by whom: this host accepts ${accepted}`,
} as const;

const asked = 'The host asks for it: the rule is quoted as the source.';

/** What it is to a train. */
function groundWhy(ground: GroundKind, severity: Severity, rejected: boolean): string {
  if (!rejected) return 'It is usable so, and stops no train.';
  if (severity === 'forbids') return 'The host holds its trains for it: the rule is quoted as the source.';
  if (ground === 'storage-and-bay')
    return severity === 'limits'
      ? 'The host limits its trains for it. Nobody lights up, fuels or lifts with it.'
      : 'Nobody lights up, fuels or lifts with it; a train that runs needs none of it.';
  return severity === 'limits'
    ? 'Whoever is burned or falls needs it at once: carry riders with another at hand that is whole and in date, and the crew knows where.'
    : 'Whoever is burned or falls needs it at once, the crew as well: have another at hand.';
}

export const orderWords = {
  'out-of-date': ({ facts: { what, of, last } }) => ({
    what: `Out of date: ${tellInDate(what)}, of ${of}${last === undefined ? '' : `, which stood to ${last}`}.`,
    why: asked,
  }),
  'not-shown': ({ facts: { what, of } }) => ({
    what: `Nobody has shown that it stands: ${tellInDate(what)}, of ${of}.`,
    why: asked,
  }),
  'not-signed-for-this': (f, t) => ({
    what: `${f.facts.of}: ${tellInDate(f.facts.what)} ${unfitWords[f.facts.why](t.fact(f.facts.why === 'by' ? 'accepted' : 'engine'), f.severity === 'forbids')}.`,
    why:
      f.facts.why === 'by'
        ? asked
        : f.severity === 'unknown'
          ? 'Steam, battery and petrol are three trades: say what drives it.'
          : 'Whoever learned one engine, gauge or line does not know the next by it. The host asks for it: the rule is quoted as the source.',
  }),
  'defect-open': ({ severity, facts: { what, of, since, invented } }) => ({
    what: `${severity === 'forbids' ? 'Rejected' : 'To be mended'}: ${of}, ${what} (found ${since})${tellInvented(invented)}.`,
    why: 'It stays open until a record says that it is mended, or gone through after a derailment.',
  }),
  'ground-amiss': ({ severity, facts: { ground, what, of, since, rejects, invented } }) => ({
    what: `${rejects ? 'Rejected' : 'To be mended'}: ${of}, ${what} (found ${since})${tellInvented(invented)}.`,
    why: `${groundWhy(ground, severity, rejects)} It stays open until a record says that it is mended.`,
  }),
  'line-closed': ({ facts: { why, since } }, t) => ({
    what: `The line is shut ${t.where}: ${why} (since ${since}).`,
    why: 'It stays shut until a record lifts it and says why.',
  }),
  'line-slow': ({ facts: { why, since } }, t) => ({
    what: `Temporary limit ${t.where}: no faster than ${t.found('down')}, ${why} (since ${since}).`,
    why: 'It counts until a record lifts it and says why; the last car has to have left it too.',
  }),
  'limit-off-line': ({ facts: { why, since } }, t) => ({
    what: `A temporary limit (${why}, since ${since}) lies beyond the end of the line, ${t.fact('end', 'down')} from its start.`,
    why: 'Where it is meant nobody can tell: lift it, and say it anew by the boards of this line.',
  }),
  'in-grace': ({ facts: { what, of, last } }) => ({
    what: `In grace: ${tellInDate(what)}, of ${of}${last === undefined ? '' : `, which stood to ${last}`}.`,
    why: 'It still stands, and is due.',
  }),
} satisfies Partial<Tellers>;
