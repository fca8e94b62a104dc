/** Words for what stands beside and over the line. */
import type { Tellers } from './teller.ts';

const sides = { left: 'on the left', right: 'on the right', over: 'overhead' } as const;
const rest = (n: number): string =>
  n === 0 ? '' : n === 1 ? ' One more structure likewise.' : ` ${n} more structures likewise.`;

const more = (n: number): string =>
  n === 0 ? '' : n === 1 ? ' One more platform likewise.' : ` ${n} more platforms likewise.`;

/** @param names by comma */
const several = (names: string): string => (/, /.test(names) ? 'are' : 'is');

export const clearanceWords = {
  'strikes-structure': (f, t) => {
    const over = f.facts.side === 'over';
    const reach = over
      ? `${t.vehicle} stands ${t.found('up')} high under ${t.fact('structure')}, which leaves ${t.required('down')}`
      : `${t.vehicle} reaches ${t.found('up')} from the middle of the track at ${t.fact('structure')}, which stands ${t.required('down')} from it ${sides[f.facts.side]}`;
    return {
      what:
        f.severity === 'forbids'
          ? `${reach}: it strikes.${rest(f.facts.others)}`
          : `${reach}: with its flanges hard over it touches.${rest(f.facts.others)}`,
      why: over
        ? `${t.fact('beyond', 'up')} of it from the bend of the line under its frame, and from cant. Slower does not help.`
        : `${t.fact('beyond', 'up')} of it beyond half its width: the throw of the curve, the play of its wheels and the lean of canted track${f.facts.sway === undefined ? '. Sway on its springs comes on top. Slower does not help.' : `; ${t.fact('sway', 'up')} of that by its sway on its springs, standing or running, whichever is more.`}`,
    };
  },
  'rider-strikes-structure': (f, t) => ({
    what:
      f.facts.side === 'over'
        ? `A head on ${t.vehicle} is ${t.found('up')} above the rail under ${t.fact('structure')}, which leaves ${t.required('down')}: ${f.severity === 'forbids' ? 'it strikes' : 'a tall person’s strikes'}.${rest(f.facts.others)}`
        : `People on ${t.vehicle} reach ${t.found('up')} from the middle of the track at ${t.fact('structure')}, which stands ${t.required('down')} from it ${sides[f.facts.side]} at the height of ${f.severity === 'forbids' ? 'their heads' : 'a tall person’s head'}.${rest(f.facts.others)}`,
    why: 'People sit as high as an adult does; nobody can be told to duck for the whole way. Measure with the tallest who rides, and take the highest seat out of use if need be.',
  }),
  'little-room-beside': (f, t) => ({
    what: `${t.vehicle} passes ${t.fact('structure')} ${sides[f.facts.side]} with ${t.found('down')} to spare; ${t.required('up')} is wanted.${rest(f.facts.others)}`,
    why: 'Sway on the springs, track that moves and whatever hangs out take it up. Push the train past by hand first, and tell everybody to keep in.',
  }),
  'within-arms-reach': (f, t) => ({
    what: `People on ${t.vehicle} can touch ${t.fact('structure')} at ${t.at(f.where.from ?? 0)}.${rest(f.facts.others)}`,
    why: 'Hands, feet and knees inside, said before leaving and again before that place.',
  }),
  'platform-gap': (f, t) => ({
    what: `Between the edge of ${t.fact('platform')} and what people step on of ${t.vehicle} the gap is up to ${t.found('up')}; ${f.severity === 'limits' ? 'the host allows' : 'usual is at most'} ${t.required('down')}.${more(f.facts.others)}`,
    why: 'A foot goes down between. Hand people over, lay a board across, or let them get on elsewhere.',
  }),
  'platform-step': (f, t) => ({
    what: `From ${t.fact('platform')} one steps ${f.facts.way} by ${t.found('up')} onto ${t.vehicle}; ${f.severity === 'limits' ? 'the host allows' : 'usual is at most'} ${t.required('down')}.${more(f.facts.others)}`,
    why: 'Springs as they may sink are in it. A box to step on, or another place to get on.',
  }),
  'platform-not-measured': (f, t) => ({
    what: `What people step on of ${t.fact('vehicles')} is not measured: gap and step at the platforms ${f.severity === 'unknown' ? 'cannot be told, and the host limits them' : 'are not looked at'}.`,
    why: 'Its height above the rail, and its width over both sides, with a rule.',
  }),
  'frame-too-long-for-curve': (f, t) => ({
    what: `${t.vehicle} cannot stand on the line at ${t.at(f.where.from ?? 0)}: the curve is tighter than its frame is long.`,
    why: 'Measure the radius there again, and where its trucks or outer axles are. A frame with more between its guides than the curve lets stand is not on the rails.',
  }),
  'siding-too-short': (f, t) => ({
    what:
      f.facts.length.si > 0
        ? `The train is ${t.found('up')} long; ${t.fact('siding')} is clear of the line over ${t.fact('length', 'down')}.`
        : `The train is ${t.found('up')} long; in ${t.fact('siding')} it stands clear of the line nowhere.`,
    why: 'From where the two tracks lie far enough apart to where they no longer do. What stands beyond is struck by a train that passes.',
  }),
  'siding-not-measured': (f, t) => ({
    what: `Whether this train stands clear of the line in ${t.fact('siding')} cannot be told: ${f.facts.vehicles === '' ? 'the radius of its sharpest curve is not measured, or a frame cannot stand in it' : `nobody measured how wide and how high ${t.fact('vehicles')} ${several(f.facts.vehicles)}`}.`,
    why: 'A post at the fouling point, set for the widest vehicle, is what a line usually has: stop short of it.',
  }),
  'track-not-measured': (f, t) => ({
    what: `Whether this train stands clear in ${t.fact('track')} cannot be told: ${
      f.facts.lacks === 'width'
        ? `nobody measured how wide and how high ${t.fact('vehicles')} ${several(f.facts.vehicles)}`
        : f.facts.lacks === 'curve'
          ? 'a frame cannot stand in a curve of it or beside it'
          : f.facts.lacks === 'lead'
            ? 'how far its frog lies from the tips of its points is not measured'
            : 'the number of its frog is not measured'
    }.`,
    why:
      f.facts.lacks === 'width'
        ? 'How far apart two tracks must lie goes by what stands on both: one vehicle that nobody measured may be the widest.'
        : 'The two tracks part as frog and lead have it; where they lie far enough apart follows from both. Two minutes with a tape.',
  }),
  'trains-do-not-pass': (f, t) => ({
    what: `Two trains like this do not pass each other all along ${t.fact('track')}: ${t.fact('along')} beyond its first points ${t.fact('stands')} and ${t.fact('passes')} ${(f.found?.si ?? 0) < 0 ? 'strike' : `have ${t.found('down')} between them; ${t.required('up')} is wanted`}.`,
    why: 'Slower does not help. Hold one train back at its mark until the other is by, or keep the wider vehicle off that track.',
  }),
  'reach-between-trains': (_f, t) => ({
    what: `Where two trains stand or pass in ${t.fact('track')} they come as near as ${t.found('down')}: people on one can touch the other.`,
    why: 'Hands and feet in while another train is beside; nobody gets on or off between the two.',
  }),
  'body-not-measured': (f, t) => ({
    what: `Nobody measured how wide and how high ${t.fact('vehicles')} ${several(f.facts.vehicles)}; the line states what stands beside it.`,
    why: 'Its width with people seated, and its height, decide whether it passes. Measure both with a rule held level and plumb.',
  }),
  'structures-not-measured': (f, t) => ({
    what: `Nobody measured what stands beside the track: ${t.where}${f.facts.places === 1 ? '' : f.facts.places === 2 ? ', and one more place' : `, and ${f.facts.places - 1} more places`}. Whether the train clears it is not looked at.`,
    why: 'A host has a gauge or a list for it: ask, or walk the line with a rule, platforms, tunnels and posts first.',
  }),
} satisfies Partial<Tellers>;
