/** People at work in words: what each is signed off for, hours, what each says. */
import type { CrewMember, Hours, SignedFor } from '../engine/things/duty.ts';
import type { Shown } from '../engine/things/in-date.ts';
import { printQuantity } from '../units/index.ts';
import { tellInDate } from './in-date.ts';
import { say, type Voice } from './voice.ts';

type Speaks = Pick<Voice, 'system'>;

export const ON_THE_GROUND = 'Not mended on the ground';

const powerWords = { steam: 'steam', electric: 'battery or wire', petrol: 'petrol or diesel' } as const;

/** "steam; Fenwick; 7 1/4 in gauge; to 900 lb; Larkfield Hollow" */
export const tellSignedFor = ({ powers, engines, gauge, heaviest, line }: SignedFor, voice: Speaks): string =>
  [
    ...(powers ? [powers.map((power) => powerWords[power]).join(', ')] : []),
    ...(engines ? [engines.join(', ')] : []),
    ...(gauge === undefined ? [] : [`${say(voice, { kind: 'length', si: gauge })} gauge`]),
    ...(heaviest === undefined ? [] : [`engines to ${say(voice, { kind: 'mass', si: heaviest }, 'down')}`]),
    ...(line === undefined ? [] : [line]),
  ].join('; ');

const states = {
  stands: 'to',
  grace: 'in grace, stood to',
  out: 'OUT OF DATE, stood to',
  unknown: '',
} as const;

/** "driver competence to 2027-04-30 (steam)" */
export function tellCompetence({ what, state, last, signedFor }: Shown, voice: Speaks): string {
  const until =
    state === 'unknown'
      ? ', nobody can tell how long it stands'
      : last === undefined
        ? state === 'out'
          ? ' OUT OF DATE'
          : ''
        : ` ${states[state]} ${last}`;
  const limits = signedFor === undefined ? '' : tellSignedFor(signedFor, voice);
  return `${tellInDate(what)}${until}${limits === '' ? '' : ` (${limits})`}`;
}

const hourWords: readonly (readonly [keyof Hours, string])[] = [
  ['onDuty', 'on duty'],
  ['driving', 'driving'],
  ['sinceBreak', 'since a break'],
  ['rest', 'rest before'],
  ['turnBefore', 'turn before'],
  ['inDay', 'in 24 hours'],
  ['inWeek', 'in seven days'],
];

/** "on duty 6 h, rest before 11 h, day 3 in a row"; against the tired: duty up, rest down. */
export const tellHours = (hours: Hours, { system }: Speaks): string =>
  [
    ...hourWords.flatMap(([key, word]) => {
      const si = hours[key];
      const toward = key === 'rest' ? 'down' : 'up';
      return si === undefined ? [] : [`${word} ${printQuantity(si, 'time', { system, toward })}`];
    }),
    ...(hours.days === undefined ? [] : [`day ${hours.days} in a row`]),
  ].join(', ');

/** "sober yes, fit not said": of those alone that the host asks for. */
export const tellSays = (
  said: Pick<CrewMember, 'sober' | 'fit'> | undefined,
  asked: readonly ('sober' | 'fit')[],
): string =>
  asked
    .map((key) => {
      const value = said?.[key];
      return `${key === 'sober' ? 'nothing drunk or taken' : 'fit'}: ${value === undefined ? 'not said' : value ? 'yes' : 'NO'}`;
    })
    .join(', ');
