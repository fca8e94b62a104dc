/** Words for balance: standing upright, curves, leaning, loads on trucks, twist, flange climb. */
import type { FlangeWay } from '../../engine/questions/balance/climbing.ts';
import type { PeakScenario } from '../../engine/questions/couplers/peaks.ts';
import { walkWords } from '../pace.ts';
import { type Teller, type Tellers, wanted } from './teller.ts';

const ways: Readonly<Record<FlangeWay | PeakScenario, string>> = {
  running: 'on the run',
  creeping: 'at a creep',
  braking: 'under the brake',
  'engine-braking': 'when the engine alone brakes',
  pulled: 'pulled',
  pushed: 'pushed',
  'start-bunched': 'in the jerk of a quick start with all slack in',
  'full-brake': 'in the jerk of a full brake',
  'run-in': 'as the cars run in behind an engine that brakes alone',
};

export const flangeWayWords = (way: string): string => ways[way as FlangeWay] ?? way;

const lifting: (...args: Parameters<Teller<'curve-speed-limited-by-balance'>>) => string = ({ facts }, t) => {
  if (facts.lift === undefined) return '';
  const { leaning } = facts;
  const upright = ` A wheel lifts at ${t.fact('lift', 'down')}`;
  if (leaning === undefined) return `${upright}.`;
  return leaning.si > 0
    ? `${upright}, with one rider leaning outward at ${t.fact('leaning', 'down')}.`
    : `${upright}; with one rider leaning outward even standing.`;
};

export const balanceWords = {
  'tips-at-rest': ({ facts }, t) => ({
    what:
      facts.where === 'level'
        ? `${t.vehicle} lifts a wheel standing on level track, with its riders sitting still.`
        : `${t.vehicle} lifts a wheel when it stands ${t.where.replace(/^.*, /, '')}, with its riders sitting still.`,
    why: `Its centre of gravity may be as high as ${t.fact('height', 'up')} above the rail and falls too near the wheels on one side.`,
  }),
  'stands-light-on-one-side': ({ facts }, t) => ({
    what:
      facts.by === 'seating'
        ? `${t.vehicle} sits heavily to the ${t.fact('side')}: the lightest wheel keeps ${t.found('down')} of an even load.`
        : `Standing on the cant ${t.where.replace(/^.*, /, '')}, a wheel of ${t.vehicle} keeps ${t.found('down')} of its load.`,
    why:
      facts.by === 'seating'
        ? `It should keep ${t.required('up')}. Seat riders in pairs, or a single one in the middle.`
        : `It should keep ${t.required('up')}. Do not stop here, and let nobody get on or off.`,
  }),
  'curve-speed-limited-by-balance': (f, t) => ({
    what: `${t.vehicle} allows no more than ${t.found('down')} in the curve ${t.where.replace(/^.*, /, '')}${walkWords(f.found?.si ?? 0, t.voice.outing)}; ${wanted(t)}.`,
    why: `At that speed every wheel keeps ${t.fact('share')} of its load, with riders sitting upright, in all but one draw of a hundred of what was stated (centre up to ${t.fact('height', 'up')} above the rail, radius ${t.fact('radius', 'down')}).${lifting(f, t)}`,
  }),
  'all-lean-goes-over': ({ facts }, t) => {
    const alone = facts.riders === 1;
    const others = facts.vehicles - 1;
    const place = t.where.replace(/^.*, /, '');
    const where = {
      anywhere: ', even on level track',
      standing: ` standing ${place} on ${t.fact('cant', 'up')} of cant`,
      running: ` ${place} at ${t.fact('speed', 'down')}`,
    };
    return {
      what: `${t.vehicle} goes over if ${alone ? 'its rider leans' : 'all its riders lean'} ${t.found('down')} to one side${where[facts.place]}.`,
      why: `In one draw of a hundred of what was stated. A seated grown person easily leans ${t.required('up')}${
        others > 0
          ? `, and ${others} more ${others === 1 ? 'vehicle goes' : 'vehicles go'} over with less`
          : ''
      }. ${
        facts.place === 'standing' ? 'Do not stand on this cant. ' : ''
      }Brief riders before they sit down: stay upright, feet in, nobody reaches out.`,
    };
  },
  'lean-small': (_f, t) => ({
    what: `If ${t.fact('rider')} leans ${t.found('down')} sideways, a wheel of ${t.vehicle} lifts ${t.where.replace(/^.*, /, '')}.`,
    why: `A seated grown person easily leans ${t.required('up')}. Leaning is behaviour: tell riders to sit still and feet in, seat the heavy ones low and in the middle.`,
  }),
  'centre-of-gravity-unknown': ({ facts }, t) => ({
    what:
      facts.bounded === 'no'
        ? `How high the centre of gravity of ${t.vehicle} lies is not known, and nothing bounds it.`
        : `The centre of gravity of ${t.vehicle} was not measured; taken at ${t.found('up')}, as high as the vehicle itself.`,
    why:
      facts.bounded === 'safe'
        ? 'Even so high it stays up at every speed asked for.'
        : facts.bounded === 'limits'
          ? 'It sets the speed in a curve. A tilt test would probably allow more.'
          : 'Tilt the empty vehicle until the first wheel lifts, and note the angle.',
  }),
  'truck-lifts': (_f, t) => ({
    what: `One ${t.word('truck')} of ${t.vehicle} carries no load: the people sit beyond the other.`,
    why: 'Weight beyond a truck lifts the other one by the lever rule. Move riders toward the middle.',
  }),
  'trucks-uneven': (_f, t) => ({
    what: `One ${t.word('truck')} of ${t.vehicle} carries ${t.found('down')} of an even load.`,
    why: 'The light end is the first to lift or climb. Seat riders over both ends alike, a single one in the middle.',
  }),
  'truck-overloaded': (_f, t) => ({
    what: `Under the brake the ${t.fact('group')} of ${t.vehicle} carries ${t.found('up')} an axle, rated ${t.required('down')}.`,
    why: `Standing it carries ${t.fact('still')}; a deceleration of ${t.fact('deceleration')} moves weight to the front.`,
  }),
  'wheel-unloads-on-twist': (_f, t) => ({
    what: `On track twisted by ${t.fact('twist', 'up')} a wheel of ${t.vehicle} loses ${t.found('up')} of its load; ${t.required()} is the most it may.`,
    why: `Over ${t.fact('over')} one corner stands off by ${t.fact('lift', 'up')}, and ${t.fact('freedom', 'down')} takes the whole load off it. Pack the track, free the side bearers, or square the frame.`,
  }),
  'twist-unknown': ({ facts }, t) => ({
    what:
      facts.of === 'line'
        ? 'How much the track is twisted was not measured.'
        : `How much twist ${t.vehicle} follows was not measured (${t.fact('vehicles')} ${facts.vehicles === 1 ? 'vehicle' : 'vehicles'}).`,
    why:
      facts.of === 'line'
        ? 'Measure the cant every few feet; the greatest change over the distance of the trucks is the twist.'
        : 'Put blocks of growing height under one wheel until another lifts, and note the height.',
  }),
  'flange-may-climb': (f, t) => ({
    what: `A flange of ${t.vehicle} may climb ${t.where.replace(/^.*, /, '')} ${flangeWayWords(t.fact('way'))}: ${
      f.found
        ? `sideways ${t.found('up')} of the wheel's load, limit ${t.required('down')}`
        : 'the guiding wheel has no load left'
    }${f.facts.slower ? `; it holds at ${t.fact('slower', 'down')}` : ''}.`,
    why: `On its ${t.fact('group')}, with ${t.fact('front')} in the coupling ahead and ${t.fact('rear')} behind (a push is negative), friction ${t.fact('friction')}${f.facts.frictionKnown ? '' : ' assumed'}. ${
      f.facts.way === 'creeping'
        ? 'Cant takes load off the outer wheel: do not stop or creep there.'
        : 'Light cars to the rear, brakes on the cars, gently in the curve.'
    }`,
  }),
  'flange-shape-unknown': (f, t) => {
    const forces = f.found
      ? `The sideways force is up to ${t.found('up')} of the wheel's load; `
      : 'The guiding wheel has no load left; ';
    const flange = `one flange in a hundred, of ${t.fact('angle')} at a friction of ${t.fact('friction')}, holds no more than ${t.required('down')}`;
    if (f.facts.bears) {
      return {
        what: `The flange angle of ${t.vehicle} was not measured; even an unlucky one would hold on the run.`,
        why: `${forces}${flange}.`,
      };
    }
    const asked = 'Measure it with a profile gauge or from a plaster cast.';
    return {
      what: `${
        f.severity === 'unknown'
          ? `Whether a flange of ${t.vehicle} climbs cannot be told`
          : `An unlucky flange of ${t.vehicle} might climb`
      } ${t.where.replace(/^.*, /, '')} ${flangeWayWords(t.fact('way'))}: its angle was not measured.`,
      why: `${forces}${flange}. ${asked}${f.facts.way === 'creeping' ? ' Until then do not creep on that cant.' : ''}`,
    };
  },
} satisfies Partial<Tellers>;
