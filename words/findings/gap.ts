/** Words for the gap to the train ahead. */
import type { Tellers } from './teller.ts';

const keptWords = {
  staff: 'a staff or token for each stretch',
  signals: 'signals',
  word: 'the word of somebody in charge',
} as const;

const leaveWords = {
  staff: 'with the staff of the stretch in hand, and give it up at its end',
  signals: 'when the signal for this track clears; one that is out or doubtful is at danger',
  word: 'on that word, said back, and report when the train is in and whole',
} as const;

export const gapWords = {
  'gap-needed': (f, t) => ({
    what:
      f.severity === 'limits'
        ? `Keep ${t.found('up')} behind the train ahead, more than the host's ${t.required()}, ${t.where}.`
        : `Keep ${t.found('up')} behind the train ahead.`,
    why: `The longest cautious stop with its margin, at ${t.at(f.facts.at.si)} and ${t.fact('speed')}; never less than the host's own rule.`,
  }),
  'others-not-said': () => ({
    what: 'On this track trains come the other way too: run only with no other train on it.',
    why: 'A train that goes out comes back on the same rails, and no distance behind the one ahead guards against one that comes toward you. Nobody has said whether others are on the line meanwhile. Ask whoever is in charge; say none, or how the host keeps them apart.',
  }),
  'all-out-first': () => ({
    what: 'No train starts back before the last of those that run this way has arrived and is clear.',
    why: 'All run the same way one behind the other, and come back on the same rails.',
  }),
  'kept-apart-not-said': () => ({
    what: 'Other trains come the other way on this track, and nobody has said how they are kept apart.',
    why: 'Each may see the other only when both are too near to stop. One train at a time, a staff or token in the hand, signals, or the word of somebody in charge for each train: the host’s rules say which.',
  }),
  'kept-apart-by-sight': () => ({
    what: 'Trains come toward each other on this track, kept apart by sight alone.',
    why: 'Both have to stop within what each sees, and neither knows when the other brakes. Let one train on at a time, or a staff for each stretch.',
  }),
  'one-train-only': () => ({
    what: 'The host lets one train on this line at a time, and others are on it.',
    why: 'Wait until the other has come in.',
  }),
  'kept-apart': ({ facts }) => ({
    what: `Trains that come the other way are kept apart by ${keptWords[facts.by]}.`,
    why: `Leave only ${leaveWords[facts.by]}.`,
  }),
} satisfies Partial<Tellers>;
