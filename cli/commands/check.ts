/** heedway check: may it leave? */

import { tellTrials } from '../../desk/asked.ts';
import { TRIED } from '../../desk/card.ts';
import { tellSum } from '../../desk/told-sum.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { SumRef } from '../../engine/base/sum.ts';
import { tellRemedy, tellVerdict } from '../../words/finding.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { openAsked } from '../open-asked.ts';
import { progressOn } from '../progress.ts';
import { tellFully } from '../text.ts';
import { versions } from '../versions.ts';
import { countsJson, countsText } from './cars.ts';

export const checkCommand: Command = {
  name: 'check',
  declare: (program, run) => {
    common(program.command('check <outing>'))
      .description('May it leave? Go, go within limits, hold or cannot tell, with reasons and remedies.')
      .option('--no-remedies', 'do not look for remedies')
      .action((path: string, options: Options & { remedies: boolean }) =>
        run(async () => {
          const asked = await openAsked(path);
          const { outing } = asked;
          const progress = progressOn(process.stderr);
          const answer = answerOuting(outing, {
            remedies: options.remedies,
            onTried: (n) => progress.say(`${n} changes tried`),
          });
          progress.end();
          const voice = voiceOf(options, outing);
          const tried = tellTrials(asked, voice);
          return {
            text: answerText(answer, voice, tried),
            json: answerJson(answer, voice, tried),
            exit: exitOf[answer.verdict],
          };
        }, options),
      );
  },
};

const headings = {
  forbids: 'Holds',
  unknown: 'Cannot tell',
  limits: 'Limits',
  notes: 'Notes',
  assumed: 'Assumed',
} as const;

function answerText(answer: Answer, voice: Voice, tried: readonly string[]): string {
  const lines = [`${voice.outing.name}: ${tellVerdict(answer.verdict).toUpperCase()}`];
  if (tried.length > 0) lines.push(TRIED, ...tried.map((change) => `  ${change}`));
  let number = 0;
  for (const severity of ['forbids', 'unknown', 'limits', 'notes', 'assumed'] as const) {
    const findings = answer.findings.filter((f) => f.severity === severity);
    if (findings.length === 0) continue;
    lines.push('', headings[severity]);
    if (severity === 'assumed') {
      lines.push(...assumedLines(findings));
      continue;
    }
    for (const finding of findings) {
      const told = tellFully(finding, voice);
      lines.push(`  ${++number}. ${told.what}`, `     ${told.why}`);
      const margin = told.margin === '' ? '' : ` Margin ${told.margin}.`;
      lines.push(`     Source: ${told.source}.${margin} How sure: ${told.sure}.`);
      if (finding.sum) lines.push(...sumLines(finding.sum, voice));
      if (told.measure) lines.push(`     Measure: ${told.measure}`);
      for (const remedy of finding.remedies) lines.push(`     → ${tellRemedy(remedy, voice)}`);
    }
  }
  lines.push('', 'Cars', countsText(answer.cars), '', CAUTION);
  return lines.join('\n');
}

/** The sum behind a finding: equation, numbers put in, what comes out, source. */
function sumLines(sum: SumRef, voice: Voice): string[] {
  const told = tellSum(sum, voice);
  if (!told) return [];
  return [
    `     Sum ${told.id}: ${told.asks}`,
    ...(told.note === '' ? [] : [`       ${told.note}`]),
    `       ${told.equation}`,
    `       ${told.inputs.join(', ')}`,
    `       → ${told.results.join(', ')}`,
    `       Source: ${told.source}.`,
  ];
}

/** Assumptions of one kind on one line, with all that they were made for. */
function assumedLines(findings: Answer['findings']): string[] {
  const groups = new Map<string, { source: string; of: string; where: string[] }>();
  for (const { facts, source } of findings) {
    const key = String(facts['key']);
    const group = groups.get(key) ?? { source, of: String(facts['of']), where: [] };
    group.where.push(String(facts['where']));
    groups.set(key, group);
  }
  return [...groups.values()].map((g) => `  - ${g.of} (${g.where.join(', ')}). Source: ${g.source}`);
}

export const CAUTION =
  "Heedway reckons; it does not license. The host's rules, boiler and local codes and the person in charge come first.";

function answerJson(answer: Answer, voice: Voice, tried: readonly string[]): unknown {
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
    haul: answer.haul,
    hold: answer.hold,
  };
}
