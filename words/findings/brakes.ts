/** Words for how the brakes fill, hold, leak and fail. */
import type { BrakeKind } from '../../engine/things/brake/kinds/index.ts';
import type { SupplyOutcome } from '../../engine/things/brake/kinds/kind.ts';
import type { Tellers } from './teller.ts';

const kinds: Readonly<Record<BrakeKind, string>> = {
  'engine-only': 'engine brake',
  'straight-air': 'straight air brake',
  'automatic-air': 'automatic air brake',
  'simple-vacuum': 'simple vacuum brake',
  'automatic-vacuum': 'automatic vacuum brake',
  electric: 'electric brake',
  mechanical: 'hand brake',
  surge: 'surge brake',
};

export const brakeKindWords = (kind: string): string => kinds[kind as BrakeKind] ?? kind;

const parts: Readonly<Record<string, string>> = {
  rigging: 'cylinder, lever and block',
  'rigging.stroke': 'the stroke of the cylinder',
  'rigging.hoseDiameter': 'the bore of its hoses',
  'rigging.reservoirVolume': 'the volume of its reservoir',
  'rigging.chamberVolume': "the volume of its cylinders' chamber side (more than the piston sweeps)",
  'brakeSupply.pressure': 'the pressure that the pipe is charged to',
  'brakeSupply.rate': 'how much its ejector or pump draws',
};

const plural = (count: string, one: string): string => `${count} ${one}${count === '1' ? '' : 's'}`;

/** What becomes of a brake without what works it. */
export const outcomeWords: Readonly<Record<SupplyOutcome, string>> = {
  lost: 'lost',
  applies: 'applies by itself, then leaks off',
  'as-set': 'stays as set',
  released: 'released',
  unknown: 'cannot tell',
};

export const brakeWords = {
  'brake-slow-to-fill': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('kind'))} takes ${t.found('up')} to come on at ${t.vehicle}, the first car ${t.fact('first')}.`,
    why: 'The air must run along the pipe and fill each cylinder through its choke. Until the last has filled, the front brakes and the rear pushes.',
  }),
  'brake-slower-than-stated': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('gear'))} of ${t.vehicle} needs ${t.found('up')} to come on; ${t.required('down')} is stated and reckoned with.`,
    why: 'Filled from its parts it cannot be on so soon. Film the block from the moment the handle moves, and state that time.',
  }),
  'brake-slow-to-release': ({ facts }, t) => ({
    what: facts.ends
      ? `After an application the ${brakeKindWords(t.fact('kind'))} needs ${t.found('up')} until ${t.vehicle} is ready again.`
      : `After an application the ${brakeKindWords(t.fact('kind'))} does not get back to full charge on ${t.vehicle}.`,
    why: 'A second application before then is weaker, and a train started too early drags its brakes.',
  }),
  'brake-part-unknown': (_f, t) => ({
    what: `How the ${brakeKindWords(t.fact('kind'))} fills cannot be told: ${parts[t.fact('part')] ?? t.fact('part')} is missing on ${t.vehicle}.`,
    why: 'Until it is measured, the stop reckons with an assumed time for that kind of brake.',
  }),
  'reservoir-too-small': (f, t) => ({
    what:
      f.found?.si === 0
        ? `The ${t.fact('pressure')} in the cylinder of ${t.vehicle} does not overcome its return spring: the ${brakeKindWords(t.fact('kind'))} gives nothing there (${plural(t.fact('cars'), 'car')}).`
        : `The ${brakeKindWords(t.fact('kind'))} gets no more than ${t.fact('pressure')} into the cylinder of ${t.vehicle}: its force is ${t.found('down')} of that at the stated pressure (${plural(t.fact('cars'), 'car')}).`,
    why:
      f.found?.si === 0
        ? 'Measure the spring, and the gauge at the cylinder at full application. Nobody can rely on the force that is stated for this brake.'
        : f.severity === 'notes'
          ? 'Reservoir or chamber is small for the cylinder. The stop reckons with the force that is left.'
          : 'Reservoir or chamber is small for the cylinder, and the stop reckons with more than it gives.',
  }),
  'brake-stronger-than-stated': (_f, t) => ({
    what: `A full application puts ${t.fact('pressure')} into the cylinder of ${t.vehicle}: ${t.found('up')} times the force that is reckoned with (${plural(t.fact('cars'), 'car')}).`,
    why: 'Wheels may lock that look safe on paper. Measure the cylinder at full application and state that, or limit the pressure.',
  }),
  'few-applications': (_f, t) => ({
    what: `The ${brakeKindWords(t.fact('kind'))} has air for ${plural(t.found(), 'full application')} without recharging, fewer than ${t.required()}; weak ones: ${t.fact('useful')}.`,
    why: 'Every application and release throws air away. After a second stop in quick succession the brake is weaker than reckoned.',
  }),
  'leaks-off-before-time': (f, t) => ({
    what: `Standing at ${t.at(f.where.from ?? 0)}, the brakes hold for ${t.found('down')} and have then leaked too far; ${t.required()} may be needed.`,
    why: `The grade pulls with ${t.fact('pull')}. Pressure is taken to fall on a straight line at the rate of the leak test. Use a hand brake, chock or clamp.`,
  }),
  'leak-unknown': (f, t) => ({
    what: `Standing at ${t.at(f.where.from ?? 0)}, the train is held by the ${brakeKindWords(t.fact('kind'))}, whose leak nobody has measured.`,
    why: 'It may hold an hour or a minute. Apply, leave it standing and note the fall over ten minutes; until then use a hand brake, chock or clamp.',
  }),
  'brake-ratio-uneven': (_f, t) => ({
    what: `${t.vehicle} is braked to ${t.found()} of its weight, another vehicle only to ${t.fact('least')}.`,
    why: 'The strongly braked vehicle is pushed or pulled by the others, and it is the first to lock its wheels.',
  }),
  'slides-first': (_f, t) => ({
    what: `First to slide as the rail worsens: the ${t.fact('group')} of ${t.vehicle}, brake ratio ${t.found('up')}, empty ${t.fact('empty')}; the rail may give only ${t.required('down')}.`,
    why: `Order of sliding: ${t.fact('order')}.`,
  }),
  'brake-lost-with-hose': ({ facts }, t) => ({
    what: `If a hose parts, the ${brakeKindWords(t.fact('kind'))} is lost on ${plural(t.fact('cars'), 'car')}.`,
    why: `With the train whole and the engine failed it is: ${outcomeWords[facts.engineFails]}. The train parting is answered on its own.`,
  }),
  'supply-loss-unknown': (_f, t) => ({
    what: `Nobody has said what the ${brakeKindWords(t.fact('kind'))} of ${t.vehicle} does when its supply is lost.`,
    why: 'As wired it either applies or is lost. Pull the plug at walking pace and see.',
  }),
} satisfies Partial<Tellers>;
