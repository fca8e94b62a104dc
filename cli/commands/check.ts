/** heedway check: may it leave? */

import { type Asked, telling } from '../../desk/asked.ts';
import { type Standing, standing, tellStanding } from '../../desk/figures.ts';
import { tellInvented } from '../../desk/invented.ts';
import { tellLadder } from '../../desk/ladder.ts';
import { tellTrials } from '../../desk/tell-trials.ts';
import { answerOuting, wholeAnswer } from '../../engine/answer/complete.ts';
import { inquire } from '../../engine/answer/inquiry.ts';
import { firstLadder, type Ladder } from '../../engine/answer/ladder.ts';
import type { Answer } from '../../engine/answer/types.ts';
import { tellRemedy } from '../../words/change.ts';
import { tellVerdict } from '../../words/verdict.ts';
import type { Voice } from '../../words/voice.ts';
import { longText, screenText } from '../check-text.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { type DayFlags, dayFlags, otherDay } from '../day.ts';
import { asksRecords } from '../gate.ts';
import { progressOn } from '../progress.ts';
import { setIn } from '../set-in.ts';
import { tellFully } from '../text.ts';
import { versions } from '../versions.ts';
import { countsJson } from './cars.ts';

interface CheckOptions extends Options, DayFlags {
  readonly remedies: boolean;
  readonly why?: boolean;
  readonly all?: boolean;
}

export const checkCommand: Command = {
  name: 'check',
  declare: (program, run) => {
    dayFlags(asksRecords(common(program.command('check <outing>'))))
      .description('May it leave? Go, go within limits, hold or cannot tell, with reasons and remedies.')
      .option('--no-remedies', 'do not look for remedies')
      .option('--why', 'with reasons, sources, margins and sums')
      .option('--all', 'every note and assumption, counts for every rail')
      .action((path: string, options: CheckOptions) =>
        run(async (gate) => {
          const asWritten = await gate.asked(path);
          const day = await otherDay(asWritten, options);
          const asked = day?.asked ?? asWritten;
          const { outing } = asked;
          const progress = progressOn(process.stderr);
          const onTried = (n: number): void => progress.say(`${n} changes tried`);
          const onCounted = (n: number): void =>
            void (n % 50 === 0 && progress.say(`${n} looks at numbers of cars`));
          const long = options.why || options.all || options.json;
          // One screen says what to do next: the ladder. What clears each finding stands in the long answer.
          const inquiry = inquire(outing);
          const answer = wholeAnswer(inquiry, {
            remedies: options.remedies && long === true,
            counts: options.all || options.json ? true : 'today',
            onCounted,
            onTried,
          });
          const ladder = options.remedies ? firstLadder(inquiry, onTried) : undefined;
          progress.end();
          const voice = voiceOf(options, outing);
          const tried = tellTrials(asked, voice);
          const beside = {
            tried,
            ladder,
            invented: tellInvented(asked.paper),
            setIn: await setIn(path, asked.paper, answer.findings),
          };
          const changed = day && changedBy(asWritten, asked, answer, day.words, voice);
          const text =
            options.why || options.all
              ? longText(answer, voice, { why: options.why === true, all: options.all === true }, beside)
              : screenText(answer, voice, beside);
          return {
            text: `${changed ? `${changed.lines.join('\n')}\n\n` : ''}${text}`,
            json: { ...answerJson(answer, voice, tried, ladder), ...(changed ? { day: changed.json } : {}) },
            exit: exitOf[answer.verdict],
          };
        }, options),
      );
  },
};

/** What the flags of the day changed, in three lines: what they are, as written, now. */
function changedBy(asWritten: Asked, now: Asked, answer: Answer, words: readonly string[], voice: Voice) {
  const before = answerOuting(asWritten.outing, { remedies: false, counts: 'today' });
  const side = (asked: Asked, of: Answer): Standing | undefined => {
    const told = telling(asked, { id: asked.id, answer: of });
    return told ? standing(told, voice) : undefined;
  };
  const [was, is] = [side(asWritten, before), side(now, answer)];
  return {
    lines: [
      `Otherwise than written: ${words.join(', ')}.`,
      `  before: ${was ? tellStanding(was) : ''}`,
      `  now:    ${is ? tellStanding(is) : ''}`,
    ],
    json: { changes: words, before: was, now: is },
  };
}

function answerJson(
  answer: Answer,
  voice: Voice,
  tried: readonly string[],
  ladder: Ladder | undefined,
): object {
  return {
    versions,
    outing: voice.outing.name,
    ...(tried.length > 0 ? { tried } : {}),
    answer: tellVerdict(answer.verdict),
    findings: answer.findings.map((finding) => ({
      ...finding,
      words: tellFully(finding, voice),
      remedies: finding.remedies.map((r) => ({ ...r, words: tellRemedy(r, voice) })),
    })),
    cars: countsJson(answer.cars),
    brakingPoints: answer.brakingPoints,
    ...(ladder ? { ladder: { ...ladder, words: tellLadder(ladder, voice) } } : {}),
    haul: answer.haul,
    hold: answer.hold,
  };
}
