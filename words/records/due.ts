/** Certificates and due dates, in words. */
import type { State } from '../../papers/due/interval.ts';
import type { Content } from '../../papers/record/fields.ts';
import type { DueItem } from '../../records/due.ts';
import { nameIn } from '../../records/names.ts';
import type { Named } from '../../records/store.ts';
import { tellInDate } from '../in-date.ts';

/** Whose it is. */
export const holderOf = (
  {
    of,
    person,
  }: Pick<Content<'certificate'>, 'of' | 'person'> | { of?: string | undefined; person?: string | undefined },
  names: readonly Named[],
): string => of ?? (person === undefined ? 'the club' : nameIn(names, person));

const stateWords: Readonly<Record<State, string>> = {
  stands: 'stands',
  due: 'due',
  grace: 'in grace',
  'before-use': 'to be done before use',
  out: 'OUT OF DATE',
  unknown: 'cannot tell',
  'not-yet': 'not yet',
};

export interface ToldDue {
  readonly what: string;
  readonly of: string;
  readonly state: string;
  /** "to 2026-05-31", "3 service days left", "no end said". */
  readonly until: string;
  readonly by: string;
}

export function tellDue(
  { certificate, state, since, last, graceTo, serviceLeft, atLeast, useUnsaid }: DueItem,
  names: readonly Named[],
): ToldDue {
  const { what, interval, by } = certificate;
  const ends = [
    ...(last === undefined ? [] : [`to ${last}`]),
    ...(state === 'grace' && graceTo !== undefined ? [`in grace to ${graceTo}`] : []),
    ...(serviceLeft === undefined
      ? []
      : [`${atLeast ? 'at least ' : ''}${serviceLeft} service ${serviceLeft === 1 ? 'day' : 'days'} left`]),
    ...(useUnsaid ? ['whether it was used since is not recorded here'] : []),
    ...(state === 'unknown'
      ? [interval === undefined ? 'no end said' : `its service days since ${since} are not all kept here`]
      : []),
  ];
  return {
    what: tellInDate(what),
    of: holderOf(certificate, names),
    state: stateWords[state],
    until: ends.join(', '),
    by,
  };
}
