/** Words for the people who work the train. */
import { age, type Tellers } from './teller.ts';

const rule = 'It is the rule quoted as the source.';

const TIRED = 'Whoever is tired sees late and brakes late, and feels neither. Let somebody else take over.';

/** @param found @param asked as they are told */
const over = {
  mostOnDuty: (found: string, asked: string) =>
    `will have been on duty for ${found} when this outing is over; the host allows ${asked}`,
  mostDriving: (found: string, asked: string) =>
    `will have driven for ${found} when this outing is over; the host allows ${asked}`,
  mostDrivingAtNight: (found: string, asked: string) =>
    `will have driven for ${found} when this outing is over; the host allows ${asked} at night`,
  mostWithoutBreak: (found: string, asked: string) =>
    `will have worked for ${found} without a break when this outing is over; the host allows ${asked}`,
  leastRest: (found: string, asked: string) =>
    `rested for ${found} before this turn; the host asks for ${asked}`,
  restAfterFullTurn: (found: string, asked: string) =>
    `rested for ${found} after a full turn; the host asks for ${asked}`,
  mostInDay: (found: string, asked: string) =>
    `will have been on duty for ${found} of 24 hours when this outing is over; the host allows ${asked}`,
  mostInWeek: (found: string, asked: string) =>
    `will have been on duty for ${found} of seven days when this outing is over; the host allows ${asked}`,
  mostDays: (found: string, asked: string) =>
    `is on duty for the day ${found} in a row; the host allows ${asked}`,
} as const;

const unsaid = {
  mostOnDuty: 'how long on duty',
  mostDriving: 'how long at the handles',
  mostDrivingAtNight: 'how long at the handles',
  mostWithoutBreak: 'how long without a break',
  leastRest: 'how long rested before this turn',
  restAfterFullTurn: 'how long the turn before was, and the rest after it',
  mostInDay: 'how long on duty in 24 hours',
  mostInWeek: 'how long on duty in seven days',
  mostDays: 'how many days on duty in a row',
} as const;

const least: ReadonlySet<keyof typeof over> = new Set(['leastRest', 'restAfterFullTurn'] as const);

export const crewWords = {
  'out-of-hours': ({ facts: { who, limit } }, t) => ({
    what: `${who} ${over[limit](t.found(least.has(limit) ? 'down' : 'up'), t.required())}.`,
    why: limit === 'mostWithoutBreak' ? 'A break first, or somebody else.' : TIRED,
  }),
  'hours-not-said': ({ facts: { who, limit } }, t) => ({
    what: `Nobody has said of ${who} ${unsaid[limit]}; the host has a limit of ${t.required()}.`,
    why: 'Write it down as it will be when this outing is over, work elsewhere included.',
  }),
  'not-fit-to-work': ({ facts: { who, says } }) => ({
    what:
      says === 'sober'
        ? `${who} has drunk or taken something that dulls.`
        : `${who} does not feel fit to work today.`,
    why: 'Who says so is thanked and does something else today. Why is nobody’s business and is written nowhere.',
  }),
  'not-declared': ({ facts: { who, says } }) => ({
    what: `${who} has not said ${says === 'sober' ? 'that nothing was drunk or taken that dulls' : 'whether he or she feels fit to work'}.`,
    why: `The host asks everybody who works a train. ${rule}`,
  }),
  'crew-too-young': ({ facts }, t) => ({
    what: `${facts.who} is ${age(facts.age)}; the host asks for ${t.required()} years of a ${facts.duty === 'guard' ? t.word('conductor') : facts.duty}.`,
    why: rule,
  }),
  'crew-age-not-said': ({ facts: { who, duty } }, t) => ({
    what: `Nobody has said how old ${who} is; the host has an age for a ${duty === 'guard' ? t.word('conductor') : duty}.`,
    why: rule,
  }),
  'nobody-beside': ({ facts }, t) => ({
    what: `${facts.who} is ${age(facts.age)} and drives alone; below ${t.required()} the host asks for a grown person beside.`,
    why: 'Within reach of the handles: on the same engine or its tender.',
  }),
  'no-lookout': ({ facts: { posts } }) => ({
    what: `Nobody is named who looks out at ${posts}.`,
    why: 'The host wants somebody there whenever a train runs: name who it is.',
  }),
  'signals-not-said': (_f, t) => ({
    what: `Nobody has said how ${t.word('conductor')} and driver signal each other.`,
    why: 'A bell that means stop to one and go to the other is worse than none. Write it down, and say it to each other before leaving.',
  }),
  'drivers-signals-not-said': (_f, t) => ({
    what: 'Two drivers: nobody has said how the leading one tells the other to shut off and brake.',
    why: `The other one’s brakes are counted ${t.fact('least', 'down')} to ${t.fact('most', 'up')} later. Who keeps power on until then pushes on: that is not reckoned. Agree on a whistle, and try a stop before anybody gets on.`,
  }),
} satisfies Partial<Tellers>;
