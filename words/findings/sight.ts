/** Words for who drives, and how far the driver sees. */
import type { Tellers } from './teller.ts';

export const sightWords = {
  'sight-unknown': (f, t) => ({
    what:
      f.where.place === undefined
        ? `Nobody has said how much clear track the driver sees ahead${t.where === '' ? '' : ` ${t.where}`}.`
        : `Nobody has said from how far ${f.where.place} (${t.at(f.where.from ?? 0)}) is seen.`,
    why: f.facts.at
      ? `At ${t.at(f.facts.at.si)} and ${t.required('up')} the train needs ${t.fact('stop', 'up')} with its margin. Within the ${t.fact('sight', 'down')} assumed, of which ${t.fact('behind', 'up')} lie between the driver's seat and the train's front, it stops from ${t.found('down')} at the most. Pace the clear track from the driver's seat, where it is shortest.`
      : `The train stops within the ${t.fact('sight', 'down')} assumed. Pace the clear track from the driver's seat, where it is shortest.`,
  }),
  'night-sight-unknown': (f, t) => ({
    what: 'Nobody has said how far the driver sees after dark.',
    why: `${
      f.facts.at
        ? `At ${t.at(f.facts.at.si)} and ${t.required('up')} the train needs ${t.fact('stop', 'up')} with its margin. Within the ${t.fact('sight', 'down')} assumed, of which ${t.fact('behind', 'up')} lie between the driver's seat and the train's front, it stops from ${t.found('down')} at the most.`
        : `The train stops within the ${t.fact('sight', 'down')} assumed.`
    } Let somebody in dark clothes walk ahead along the track until the engine's own light hardly shows them, and pace it from the driver's seat. The same goes for fog and smoke by day.`,
  }),
  'sight-taken-as-open': ({ facts }, t) => ({
    what: `Nobody has said how far the driver sees ${t.where}: open track is taken there, and the train needs ${t.fact('stop', 'up')} to stop.`,
    why: `Only the stretches of short sight are written down. ${
      facts.others === 0
        ? ''
        : facts.others === 1
          ? 'One other stretch is like it. '
          : `${facts.others} other stretches are like it. `
    }Look at ${t.at(facts.at.si)} from the driver's seat: where less track is clear ahead, write it down, and the speed follows.`,
  }),
  'driver-missing': (_f, t) => ({
    what: 'Nobody on this train is its driver.',
    why: `Weight, sight and the brakes within reach go by where the driver sits; taken to be on ${t.vehicle}. Say who drives, and on which seat.`,
  }),
  'propelled-without-lookout': ({ facts }, t) => ({
    what: `The driver sits ${t.found('up')} behind the front of the train, with ${facts.cars} ${facts.cars === 1 ? 'car' : 'cars'} ahead, and no lookout with a brake rides on ${t.vehicle}.`,
    why: `${
      facts.lookout === 'no brake' ? `The ${t.word('conductor')} there has no brake to put on. ` : ''
    }The train and its riders hide the track. Put the engine first with its driver, or let a ${t.word('conductor')} keep a lookout on the leading car, with a brake there.`,
  }),
} satisfies Partial<Tellers>;
