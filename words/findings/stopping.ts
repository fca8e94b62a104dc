/** Words for stopping, speed, spacing and the brakes that answer or not. */
import type { Teller } from './teller.ts';

const reasons: Readonly<Record<string, string>> = {
  'stopping-sight': 'the clear track that the driver sees ahead there',
  'stopping-signal': 'the signal that may be at danger as it comes in sight',
  'stopping-end': 'the end of the line',
  'host-line': "the host's limit",
  'host-place': "the host's limit there",
  vehicle: 'what the vehicle is rated for',
  curve: 'the curve',
  balance: 'a car would not stay upright faster',
  flange: 'a flange might climb faster',
  agreed: 'the limit agreed for this outing',
  'looked-no-higher': 'Heedway looks no higher',
  'cannot-stop': 'the brakes do not hold the train on that fall',
};

export const reasonWords = (kind: string): string => reasons[kind] ?? kind;

export const stoppingWords = {
  'cannot-stop': (_f, t) =>
    t.fact('reason') === 'balance' || t.fact('reason') === 'flange'
      ? {
          what: `No speed is safe ${t.where}: ${t.fact('what')} is out of balance even at a crawl.`,
          why: 'On the cant or in the curve a wheel keeps too little of its load at any speed. Seat the riders otherwise, or ease the cant.',
        }
      : {
          what: `There is no speed at which the train can be relied on to stop in time ${t.where}.`,
          why: `Even creeping, the cautious stopping distance is longer than what is left by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
        },
  'runs-away': (_f, t) => ({
    what: `The brakes may not stop the train at all ${t.where}.`,
    why: 'With weak brakes, little adhesion and little rolling resistance together, the pull of the fall is greater than full brake.',
  }),
  'speed-limited': (_f, t) => ({
    what: `No faster than ${t.found('down')} ${t.where}; ${t.required('nearest')} was wanted.`,
    why: `Set by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
  }),
  'planned-speed-too-high': (_f, t) => ({
    what: `The planned ${t.found()} is more than the permitted ${t.required('down')} ${t.where}.`,
    why: 'The planned speed was compared with the speed map.',
  }),
  'too-many-cars-to-stop': (_f, t) => ({
    what: `${t.found()} cars are more than the ${t.required()} that can be stopped in the distance there is.`,
    why: 'The count was raised car by car, each time asking for the cautious stop at running speed.',
  }),
  'brake-force-unknown': (_f, t) => ({
    what: `Nobody has said how hard the ${t.fact('gear')} of ${t.vehicle} brakes.`,
    why: 'Without its force the stopping distance is a guess. Pull the braked car with a spring balance, or give cylinder, lever and block.',
  }),
  'wheels-slide': (f, t) => {
    const ratio = `brake ratio ${t.found('up')}, adhesion ${t.required('down')}`;
    const slides = t.fact('likely') === 'yes' ? 'slides' : 'may slide';
    if (t.fact('eased') !== 'yes') {
      return {
        what: `The ${t.fact('gear')} of ${t.vehicle} ${slides} its wheels: ${ratio}.`,
        why: 'Nobody eases a brake that comes on by itself: its wheels lock, keep about a third of their hold at speed, and wear flats. The stop is reckoned so.',
      };
    }
    const most = f.facts.gauge ? t.fact('gauge', 'down') : `${t.fact('share', 'down')} of full brake`;
    const held = f.facts.held
      ? ` Held full on, from ${t.fact('speed')} on the steepest fall, it is ${t.fact('held', 'up')} instead of ${t.fact('stop', 'up')}.`
      : '';
    return {
      what: `Brake no harder than ${most} on a ${t.fact('rail')} rail: the ${t.fact('gear')} of ${t.vehicle} ${slides} its wheels (${ratio}).`,
      why: `The stop is reckoned with a driver who feels the slide, eases and brakes anew.${held}`,
    };
  },
  'brake-kinds-do-not-work-together': (_f, t) => ({
    what: `The ${t.fact('kind')} brake of ${t.vehicle} is of another kind than the one the engine works.`,
    why: 'Air and vacuum, straight and automatic do not work together: across the joint there is no continuous brake. It is left out of the stop.',
  }),
  'brake-pipe-broken': (_f, t) => ({
    what: `The ${t.fact('kind')} brake of ${t.vehicle} does not answer the driver.`,
    why: 'No supply or pipe reaches it through the vehicles ahead. It is left out of the stop.',
  }),
  'vacuum-limited-by-air': (_f, t) => ({
    what: `At this air pressure the brakes of ${t.vehicle} get ${t.found('down')} of vacuum, not ${t.required()}.`,
    why: `The air presses with ${t.fact('air')}; a vacuum brake can have no more than a share of it.`,
  }),
  'brake-not-worked-by-driver': (_f, t) => ({
    what: `The ${t.fact('gear')} of ${t.vehicle} is not worked by the driver and is not counted in the stop.`,
    why: 'Someone else must act first; Heedway counts on the driver alone.',
  }),
  'not-braked': (_f, t) => ({
    what: `${t.found()} of ${t.required()} cars have a brake that answers the driver.`,
    why: `Without one: ${t.fact('cars')}. Their weight is stopped by the others.`,
  }),
  'gap-needed': (f, t) => ({
    what:
      f.severity === 'limits'
        ? `Keep ${t.found('up')} behind the train ahead, more than the host's ${t.required()}, ${t.where}.`
        : `Keep ${t.found('up')} behind the train ahead.`,
    why: `The longest cautious stop with its margin, at ${t.fact('at')} and ${t.fact('speed')}; never less than the host's own rule.`,
  }),
} satisfies Record<string, Teller>;
