/** Words for stopping, speed, spacing and the brakes that answer or not. */
import type { Finding } from '../../engine/questions/finding.ts';
import { type Teller, type Told, type Tools, wanted } from './teller.ts';

const reasons: Readonly<Record<string, string>> = {
  'stopping-sight': 'the clear track that the driver sees ahead there',
  'stopping-signal': 'the signal that may be at danger as it comes in sight',
  'stopping-assumed-sight': 'the clear track assumed ahead, which nobody has stated',
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

/** A share that a hand on a brake can follow: by 5 %, downward. */
export function twentieths({ facts: { share } }: Finding): number {
  const part = typeof share === 'object' ? share.si : 0;
  return Math.floor(part * 20 + 1e-9) * 5;
}

/** What becomes of one who does not ease. */
function heldFullOn({ facts: { held } }: Finding, t: Tools): string {
  if (!held) return '';
  const [stop, full] = [t.fact('stop', 'up'), t.fact('held', 'up')];
  const way = `Held full on, from ${t.fact('speed')} on the steepest fall`;
  return stop === full ? ` ${way}, it is as long, ${full}.` : ` ${way}, it is ${full} instead of ${stop}.`;
}

export const reasonWords = (kind: string): string => reasons[kind] ?? kind;

const ofStopping = (reason: string): boolean => reason.startsWith('stopping') || reason === 'cannot-stop';

const noStop = (t: Tools): Told => ({
  what: `There is no speed at which the train can be relied on to stop in time ${t.where}.`,
  why: `Even creeping, the cautious stopping distance is longer than what is left by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
});

const noPermission = (t: Tools): Told => ({
  what: `No speed is permitted ${t.where}.`,
  why: `Set by ${reasonWords(t.fact('reason'))} (${t.fact('what')}): rounded down to what a driver can read it is 0.`,
});

/** Questions that may fail, as a person names them. */
const questions: Readonly<Record<string, string>> = {
  host: "the host's rules",
  practice: 'what the trade always asks',
  ratings: 'loads and ratings',
  haul: 'what the engine pulls',
  hold: 'whether the train holds standing',
  brakeGear: 'which brakes answer',
  brakes: "the brakes' parts",
  sight: 'what the driver sees',
  survey: 'the line itself',
  assumptions: 'what was assumed',
  balance: 'balance and permitted speeds',
  speed: 'permitted speeds',
  gap: 'the gap to the train ahead',
  chains: 'the safety chains',
  couplers: 'forces in the couplings',
  part: 'what happens if the train parts',
  swing: 'how far couplers must swing',
  singleFailures: 'what happens if one thing fails',
  flag: 'protection of a stopped train',
  counts: 'how many cars',
  remedies: 'what would clear it',
};

/** Why a brake does not answer the driver. */
const whyNot: Readonly<Record<string, string>> = {
  'worked-by-another': 'Someone else must act first; Heedway counts on the driver alone.',
  'only-parks':
    'A parking brake is wound on when the train stands. A hand lever that stops it too is told by its `hand` lever ratio.',
  'out-of-reach': 'It is worked by arm, and the driver sits elsewhere.',
  'nothing-to-push-it': 'Nothing ahead of it brakes, so nothing pushes on its coupler.',
};

export const stoppingWords = {
  'question-failed': (_f, t) => ({
    what: `A fault of Heedway's own: it could not answer for ${questions[t.fact('asked')] ?? t.fact('asked')}.`,
    why: `Without that answer nobody can tell whether the train may leave. The fault: ${t.fact('message')}.`,
  }),
  'train-longer-than-line': (_f, t) => ({
    what: `The train is ${t.found('up')} long, the line ${t.required('down')}: ${
      t.fact('loop') === 'yes' ? 'its head would meet its own rear' : 'it does not fit on it'
    }.`,
    why: 'Leave cars behind, or correct the lengths of the line and of the vehicles over their couplers.',
  }),
  'cannot-stop': (_f, t) =>
    t.fact('reason') === 'flange'
      ? {
          what: `No speed is safe ${t.where}: a flange of ${t.fact('what')} may climb the rail even at a crawl.`,
          why: 'What presses it against the rail is more than its angle holds on dry rail. Turn the flange, grease the rail there, or take the pull or push out of the curve: fewer cars behind it, brakes on the cars.',
        }
      : t.fact('reason') === 'balance'
        ? {
            what: `No speed is safe ${t.where}: ${t.fact('what')} is out of balance even at a crawl.`,
            why: 'On the cant or in the curve a wheel keeps too little of its load at any speed. Seat the riders otherwise, or ease the cant.',
          }
        : ofStopping(t.fact('reason'))
          ? noStop(t)
          : noPermission(t),
  'brake-does-not-hold-fall': (_f, t) => ({
    what: `The brakes may not hold the train on the fall ${t.where}: under full brake it may run faster and faster.`,
    why: `On a bad day full brake and rolling resistance hold back ${t.found('down')} (${t.fact('ratio', 'down')} of the weight); at ${t.fact('at')} the fall pulls with ${t.required('up')} (${t.fact('grade', 'up')}). How far one sees does not matter there.`,
  }),
  'speed-limited': (_f, t) => ({
    what: `No faster than ${t.found('down')} ${t.where}; ${wanted(t)}.`,
    why: `Set by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
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
    const most = f.facts.gauge ? t.fact('gauge', 'down') : `${twentieths(f)} % of full brake`;
    return {
      what: `Brake no harder than ${most} on a ${t.fact('rail')} rail: the ${t.fact('gear')} of ${t.vehicle} ${slides} its wheels (${ratio}).`,
      why: `The stop is reckoned with a driver who feels the slide, eases and brakes anew.${heldFullOn(f, t)}`,
    };
  },
  'brake-kinds-do-not-work-together': (_f, t) => ({
    what: `The ${t.fact('kind')} brake of ${t.fact('vehicles')} is of another kind than the one the engine works.`,
    why: 'Air and vacuum, straight and automatic do not work together: across the joint there is no continuous brake. It is left out of the stop.',
  }),
  'brake-pipe-broken': (_f, t) => ({
    what: `The ${t.fact('kind')} brake of ${t.fact('vehicles')} does not answer the driver.`,
    why: 'No supply or pipe reaches it through the vehicles ahead. It is left out of the stop.',
  }),
  'vacuum-limited-by-air': (_f, t) => ({
    what: `At this air pressure the brakes of ${t.vehicle} get ${t.found('down')} of vacuum, not ${t.required()}.`,
    why: `The air presses with ${t.fact('air')}; a vacuum brake can have no more than a share of it.`,
  }),
  'brake-not-worked-by-driver': (_f, t) => ({
    what: `The ${t.fact('gear')} of ${t.fact('vehicles')} does not answer the driver and is not counted in the stop.`,
    why: whyNot[t.fact('why')] ?? 'Heedway counts on the driver alone.',
  }),
  'not-braked': (_f, t) => ({
    what: `${t.found()} of ${t.required()} cars have a brake that answers the driver.`,
    why: `Without one: ${t.fact('cars')}. Their weight is stopped by the others.`,
  }),
  'no-brake-answers': (_f, t) => ({
    what: 'The driver has no brake at all.',
    why:
      t.fact('fitted') === 'yes'
        ? 'None of the brakes on the train answers from where the driver sits. That it would roll to a stand is no stop.'
        : 'No vehicle has a brake. That the train would roll to a stand is no stop.',
  }),
  'gap-needed': (f, t) => ({
    what:
      f.severity === 'limits'
        ? `Keep ${t.found('up')} behind the train ahead, more than the host's ${t.required()}, ${t.where}.`
        : `Keep ${t.found('up')} behind the train ahead.`,
    why: `The longest cautious stop with its margin, at ${t.fact('at')} and ${t.fact('speed')}; never less than the host's own rule.`,
  }),
} satisfies Record<string, Teller>;
