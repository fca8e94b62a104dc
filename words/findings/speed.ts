/** Words for what limits the speed. */
import { MPH } from '../../engine/base/constants.ts';
import type { SpeedReasonKind } from '../../engine/questions/speed/types.ts';
import { walkWords } from '../pace.ts';
import { type Tellers, type Told, type Tools, wanted } from './teller.ts';

const reasons: Readonly<Record<SpeedReasonKind, string>> = {
  'stopping-sight': 'the clear track that the driver sees ahead there',
  'stopping-visibility': 'how far the driver sees today',
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
  temporary: 'a temporary limit there',
  'looked-no-higher': 'Heedway looks no higher',
  'cannot-stop': 'the brakes do not hold the train on that fall',
};

export const reasonWords = (kind: string): string => reasons[kind as SpeedReasonKind] ?? kind;

/** Rounded down to a tenth of a mile per hour it is none, m/s. */
const STANDS = 0.1 * MPH;

const ofStopping = (reason: string): boolean => reason.startsWith('stopping') || reason === 'cannot-stop';

const noStop = (t: Tools<'cannot-stop'>): Told => ({
  what: `There is no speed at which the train can be relied on to stop in time ${t.where}.`,
  why: `Even creeping, the cautious stopping distance is longer than what is left by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
});

const noPermission = (t: Tools<'cannot-stop'>): Told => ({
  what: `No speed is permitted ${t.where}.`,
  why: `Set by ${reasonWords(t.fact('reason'))} (${t.fact('what')}): rounded down to what a driver can read it is 0.`,
});

export const speedWords = {
  'cannot-stop': ({ facts }, t) =>
    facts.reason === 'flange'
      ? {
          what: `No speed is safe ${t.where}: a flange of ${t.fact('what')} may climb the rail even at a crawl.`,
          why: 'What presses it against the rail is more than its angle holds on dry rail. Turn the flange, grease the rail there, or take the pull or push out of the curve: fewer cars behind it, brakes on the cars.',
        }
      : facts.reason === 'balance'
        ? {
            what: `No speed is safe ${t.where}: ${t.fact('what')} is out of balance even at a crawl.`,
            why: 'On the cant or in the curve a wheel keeps too little of its load at any speed. Seat the riders otherwise, or ease the cant.',
          }
        : ofStopping(facts.reason)
          ? noStop(t)
          : noPermission(t),
  'too-slow-to-drive': ({ facts }, t) => ({
    what: `No faster than ${t.found('down')} ${t.where}, and nobody can drive as slowly as that.`,
    why: `Set by ${reasonWords(facts.reason)} (${t.fact('what')}). Below ${t.required('up')}, a slow walk, a train runs at what it will, and does not stop in time.`,
  }),
  'brake-does-not-hold-fall': ({ facts }, t) => ({
    what: `The brakes may not hold the train on the fall ${t.where}: under full brake it may run faster and faster.`,
    why: `On a bad day full brake and rolling resistance hold back ${t.found('down')} (${t.fact('ratio', 'down')} of the weight); at ${t.at(facts.at.si)} the fall pulls with ${t.required('up')} (${t.fact('grade', 'up')}). How far one sees does not matter there.`,
  }),
  'speed-limited': ({ facts, found }, t) => ({
    what:
      facts.reason === 'stopping-end' && (found?.si ?? 0) < STANDS
        ? `Brake to a stand ${t.where}: the end of the line.`
        : `No faster than ${t.found('down')} ${t.where}${walkWords(found?.si ?? 0, t.voice.outing)}; ${wanted(t)}.`,
    why: `Set by ${reasonWords(t.fact('reason'))} (${t.fact('what')}).`,
  }),
} satisfies Partial<Tellers>;
