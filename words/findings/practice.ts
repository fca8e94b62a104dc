/** Words for what the trade always asks. */
import { age, others, type Tellers } from './teller.ts';

const PRACTICE = 'common practice';

const youngest = (years: number | undefined): string => (years === undefined ? '' : ` (${age(years)})`);

/** @param names by comma */
const several = (names: string): boolean => names.includes(', ');

export const practiceWords = {
  'child-alone': (f, t) => ({
    what: `${t.fact('riders')}${youngest(f.facts.age)} ${several(f.facts.riders) ? 'ride' : 'rides'} on ${t.vehicle} without an adult.`,
    why: !f.source.startsWith(PRACTICE)
      ? 'It is the rule quoted as the source.'
      : f.severity === 'forbids'
        ? 'Under seven a child leans out, stands up or lets go when something catches its eye. Put an adult behind it on the same car.'
        : `${f.facts.company === 'youth' ? 'Only a youth is with them. ' : ''}${f.facts.age === undefined ? 'No age is given; under seven it does not ride so. ' : ''}Put an adult on the same car, or tell them before leaving: seated, feet on the boards, hands in.`,
  }),
  'infant-aboard': (f, t) => ({
    what: `${t.fact('riders')}${youngest(f.facts.age)} ${several(f.facts.riders) ? 'ride' : 'rides'} on ${t.vehicle}: too young to hold on.`,
    why: 'Many groups take nobody so young; others only on a low seat between the arms of an adult who needs no hand for anything else. The host has not said: ask.',
  }),
  'more-people-than-seats': (_f, t) => ({
    what: `${t.found()} people on ${t.vehicle}, which has ${t.required()} ${t.required() === '1' ? 'seat' : 'seats'}.`,
    why: 'Whoever has no seat stands, sits on the edge or on someone else, and falls first.',
  }),
  'seat-shared': ({ facts }, t) => ({
    what:
      facts.lap === undefined
        ? `${t.fact('riders')} share seat ${t.fact('seat')} of ${t.vehicle}.`
        : `${t.fact('riders')} ${several(facts.riders) ? 'sit' : 'sits'} on the lap of ${t.fact('lap')} on ${t.vehicle}.`,
    why:
      facts.lap === undefined
        ? 'One person sits on each seat.'
        : 'On a lap a child sits higher than is reckoned here, and the arms that hold it hold nothing else. It belongs on a seat of its own in front of its adult.',
  }),
  'coupler-heights-differ': (f, t) => ({
    what: `The couplers of ${t.vehicle} (${t.fact('front')}) and ${t.fact('other')} (${t.fact('rear')}) differ by ${t.found('up')} in height; ${t.required('down')} is allowed.${others(f, 'as much or less')}`,
    why: f.facts.overrides
      ? 'Less than half of a knuckle holds the other. On the next dip one rides over, the train parts or a car is lifted off its truck.'
      : 'In dips and on summits little of them may stay in hold. Shim or bend one, or put a car between that suits both. Measure loaded.',
  }),
  'coupler-kinds-differ': (f, t) => ({
    what: `Between ${t.vehicle} and ${t.fact('other')} two kinds meet: “${t.fact('front')}” and “${t.fact('rear')}”.${others(f, 'the same')}`,
    why: 'They couple by an adapter or not at all, and one that slips in by chance comes out on a curve. Put in what both hold, pull on it by hand, and lift each in turn; if they are of one kind, write them alike.',
  }),
  'coupler-height-unknown': (f, t) => ({
    what: `How high couplers of ${t.fact('vehicles')} stand where they meet another is not stated${f.severity === 'unknown' ? `; they may differ by ${t.required('down')} here` : ''}.`,
    why: 'Couplers at different heights ride over each other in dips and on summits. Stand the train on level track and hold a rule from the rail’s top to the middle of each face, empty; then look at each pair with people on.',
  }),
  'no-chain-on-grade': ({ facts }, t) => ({
    what: `No safety chain is fastened at ${t.fact('gaps')} ${facts.gaps === 1 ? 'coupling' : 'couplings'}, on a line with a ${t.word('grade')} of ${t.found('up')} at ${t.at(facts.at.si)}.`,
    why: 'Cars that part on it roll away unless something holds them. Above 1 % the trade chains every coupling.',
  }),
  'dark-at-night': ({ facts }, t) => ({
    what:
      facts.light === 'headlight'
        ? facts.known
          ? `${t.vehicle} leads by night without a headlight.`
          : `Nobody has said whether ${t.vehicle}, which leads by night, has a headlight.`
        : `${t.vehicle} is last by night ${facts.known ? 'without a red light to the rear' : 'and no red light to the rear is stated'}.`,
    why:
      facts.light === 'headlight'
        ? 'What the driver does not see the train does not stop for.'
        : 'A train that follows sees nothing to stop for. Hang a red lamp on it, or run with no other train on the line.',
  }),
  'brake-not-tried': (f) => ({
    what: f.facts.said
      ? 'The driver has not tried the brake of this engine.'
      : 'Nobody has said whether the driver has tried the brake of this engine.',
    why: `A borrowed engine brakes otherwise than one's own. Try a stop ${f.facts.said ? 'with the empty train, on the level, ' : ''}before anybody gets on.`,
  }),
} satisfies Partial<Tellers>;
