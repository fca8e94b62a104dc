/** Words for a fault of Heedway's own. */
import type { Tellers } from './teller.ts';

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
  wayBack: 'the way back',
  chains: 'the safety chains',
  couplers: 'forces in the couplings',
  part: 'what happens if the train parts',
  swing: 'how far couplers must swing',
  crests: 'whether the couplers stay in hold over crests',
  pitch: 'whether bars and links turn up and down far enough over crests',
  humps: 'whether anything grounds over crests and sags',
  wheels: 'whether the wheels run on this track',
  clearance: 'whether the train clears what stands beside the line',
  order: 'what must be in date, what is not mended, and where the line is slow or shut',
  crew: 'who works the train, and for how long',
  standards: "whether it meets the host's sheet",
  singleFailures: 'what happens if one thing fails',
  flag: 'protection of a stopped train',
  counts: 'how many cars',
  remedies: 'what would clear it',
};

export const faultWords = {
  'question-failed': (_f, t) => ({
    what: `A fault of Heedway's own: it could not answer for ${questions[t.fact('asked')] ?? t.fact('asked')}.`,
    why: `Without that answer nobody can tell whether the train may leave. The fault: ${t.fact('message')}.`,
  }),
} satisfies Partial<Tellers>;
