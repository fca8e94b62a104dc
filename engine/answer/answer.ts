/**
 * May it leave? Every question asked of one outing, ranked and judged: the one place where an answer is decided.
 * Pure and repeatable: the same outing gives the same answer, byte for byte. A fault inside a question is told as
 * one, and then nobody can tell whether the train may leave.
 */
import { otherMoves } from '../outing/moves.ts';
import type { Outing } from '../outing/types.ts';
import { LEAST_WHEEL_SHARE } from '../questions/balance/limits.ts';
import type { BalanceLook } from '../questions/balance/look.ts';
import { balance } from '../questions/balance/question.ts';
import type { WheelMap } from '../questions/balance/wheel-map.ts';
import type { Finding, Verdict } from '../questions/finding.ts';
import { haul } from '../questions/haul/question.ts';
import { hold } from '../questions/hold/question.ts';
import { makeFinding } from '../questions/make.ts';
import type { Care, Question } from '../questions/question.ts';
import { brakingPoints } from '../questions/speed/map.ts';
import { speed } from '../questions/speed/question.ts';
import { drivenZones, SPEED_STEPS } from '../questions/speed/zones.ts';
import { inLineChainage } from './chainage.ts';
import { inquire, type OpenInquiry, QuestionFault } from './inquiry.ts';
import { questions } from './questions.ts';
import type { Answer } from './types.ts';
import { ranked, verdictOf, weighs } from './verdict.ts';

/** The answer in the running direction's chainage, without car counts and remedies: they cost most of the time. */
export function firstAnswer(inquiry: OpenInquiry): Answer {
  const faults = new Map<string, QuestionFault>();
  const said = questions.flatMap(
    (question) => tried(question.id, faults, () => inquiry.of(question).findings) ?? [],
  );
  const dataOf = <T>(question: Question<T>): T | undefined =>
    tried(question.id, faults, () => inquiry.of(question).data);
  const running = dataOf(speed);
  const points = running && tried('speed', faults, () => brakingPointsOf(inquiry));
  return judged(
    {
      speeds: running?.map ?? null,
      wheels: wheelsOf(inquiry, dataOf(balance)),
      brakingPoints: points ?? [],
      driven: (running && tried('speed', faults, () => drivenOf(inquiry))) ?? null,
      cars: [],
      haul: dataOf(haul) ?? null,
      hold: dataOf(hold) ?? null,
    },
    [...said, ...moves(inquiry), ...[...faults.values()].map(faultFinding)],
  );
}

/** The other moves of a route that sets back: each is answered whole, and none that is not free lets the train go. */
const moves = ({ context: { written }, care }: OpenInquiry): Finding[] =>
  otherMoves(written).flatMap(({ of, outing }): Finding[] => {
    const { verdict: word, findings } = firstAnswer(inquire(outing, care));
    if (word === 'go') return [];
    const these = findings.filter(({ severity }) => severity === weighs[word]);
    return [
      makeFinding('other-move', weighs[word], 'line', {
        where: { place: of.line.name },
        facts: { move: of.number, word, findings: these.length },
        source: 'the same questions, asked of that move',
      }),
    ];
  });

/** The word alone: nothing more is asked once something forbids. */
export function wordOf(inquiry: OpenInquiry): Verdict {
  const faults = new Map<string, QuestionFault>();
  const forbids = questions.some((question) =>
    tried(question.id, faults, () => inquiry.of(question).findings)?.some((f) => f.severity === 'forbids'),
  );
  return forbids ? 'hold' : firstAnswer(inquiry).verdict;
}

/** Ranked and judged. */
export function judged(answer: Omit<Answer, 'findings' | 'verdict'>, findings: readonly Finding[]): Answer {
  const all = ranked(findings);
  return { ...answer, verdict: verdictOf(all), findings: all };
}

function brakingPointsOf(inquiry: OpenInquiry): Answer['brakingPoints'] {
  const { map, models } = inquiry.of(speed).data;
  return brakingPoints(inquiry.context, map, models.cautious);
}

function drivenOf({ context, of }: OpenInquiry): Answer['driven'] {
  const { map, models } = of(speed).data;
  const zones = (step: number) => drivenZones(context, map, models.cautious, step);
  return { imperial: zones(SPEED_STEPS.imperial), metric: zones(SPEED_STEPS.metric) };
}

/** Where balance could not be asked nothing is known of any wheel. */
function wheelsOf(
  { context: { loaded } }: OpenInquiry,
  known: { readonly data: BalanceLook } | undefined,
): WheelMap {
  if (!known)
    return {
      at: new Float64Array(0),
      share: new Float64Array(0),
      by: new Int16Array(0),
      required: LEAST_WHEEL_SHARE.value,
      unknown: loaded.vehicles.map((_, i) => i),
    };
  const { grid, lightest, required, unbounded } = known.data;
  return { at: grid, ...lightest, required: required.value, unknown: unbounded };
}

/** What `ask` gives; undefined on a fault, which is kept, each once. */
export function tried<T>(asked: string, faults: Map<string, QuestionFault>, ask: () => T): T | undefined {
  try {
    return ask();
  } catch (thrown) {
    const fault = thrown instanceof QuestionFault ? thrown : new QuestionFault(asked, thrown);
    if (!faults.has(fault.asked)) faults.set(fault.asked, fault);
    return undefined;
  }
}

export const faultFinding = ({ asked, message }: QuestionFault): Finding =>
  makeFinding('question-failed', 'unknown', 'assumptions', {
    facts: { asked, message },
    source: 'Heedway',
  });

/** As a person is told it: in the line's own chainage. */
export const told = ({ context }: OpenInquiry, answer: Answer): Answer =>
  inLineChainage(context.outing, answer);

/** The answer without counts and remedies, in the line's own chainage. */
export function answerOnly(outing: Outing, care: Care = {}): Answer {
  const inquiry = inquire(outing, care);
  return told(inquiry, firstAnswer(inquiry));
}
