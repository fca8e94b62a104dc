/** heedway check: may it leave? */

import { tellSum } from '../../desk/told-sum.ts';
import { answerOuting } from '../../engine/answer/complete.ts';
import type { Answer } from '../../engine/answer/types.ts';
import type { SumRef } from '../../engine/base/sum.ts';
import { tellFinding, tellRemedy, tellVerdict } from '../../words/finding.ts';
import type { Voice } from '../../words/voice.ts';
import { type Command, common, exitOf, type Options, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { progressOn } from '../progress.ts';
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
          const outing = await openOutingFile(path);
          const progress = progressOn(process.stderr);
          const answer = answerOuting(outing, {
            remedies: options.remedies,
            onTried: (n) => progress.say(`${n} changes tried`),
          });
          progress.end();
          const voice = voiceOf(options, outing);
          return {
            text: answerText(answer, voice),
            json: answerJson(answer, voice),
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

function answerText(answer: Answer, voice: Voice): string {
  const lines = [`${voice.outing.name}: ${tellVerdict(answer.verdict).toUpperCase()}`];
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
      const told = tellFinding(finding, voice);
      lines.push(`  ${++number}. ${told.what}`, `     ${told.why}`);
      const margin = told.margin === '' ? '' : ` Margin ${told.margin}.`;
      lines.push(`     Source: ${told.source}.${margin} How sure: ${told.sure}.`);
      if (finding.sum) lines.push(...sumLines(finding.sum, voice));
      if (told.measure) lines.push(`     Measure: ${told.measure}`);
      for (const remedy of finding.remedies) lines.push(`     → ${tellRemedy(remedy, voice)}`);
    }
  }
  lines.push('', 'Cars', countsText(answer.cars, voice), '', CAUTION);
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

function answerJson(answer: Answer, voice: Voice): unknown {
  return {
    versions,
    outing: voice.outing.name,
    answer: tellVerdict(answer.verdict),
    findings: answer.findings.map((finding) => ({
      ...finding,
      words: tellFinding(finding, voice),
      remedies: finding.remedies.map((r) => ({ ...r, words: tellRemedy(r, voice) })),
    })),
    cars: countsJson(answer.cars),
    brakingPoints: answer.brakingPoints,
    haul: answer.haul,
    hold: answer.hold,
  };
}
