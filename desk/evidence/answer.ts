/** The answer to an outing, whole: word, speeds, braking, every finding with its reason, sum and source, what was assumed. */

import { tellMeasure } from '../../words/field.ts';
import { tellFinding } from '../../words/finding.ts';
import { tellRail } from '../../words/rails.ts';
import { notToRun, tellVerdict } from '../../words/verdict.ts';
import { distance, type Voice } from '../../words/voice.ts';
import { assumedByWeight } from '../assumed.ts';
import { actLines, drivenRows } from '../driven.ts';
import { gathered, tellGathered } from '../gathered.ts';
import type { Answered, Speech } from '../leave/answered.ts';
import { ALONE, gapToKeep, NO_OTHER_TRAIN, sentence } from '../sentence.ts';
import { tellSum } from '../told-sum.ts';
import { type Block, heading, list, type Section, strong, tableOf, text } from './blocks.ts';

const severities = { forbids: 'Holds', unknown: 'Cannot tell', limits: 'Limits', notes: 'Notes' } as const;

export function answerSection({ outing, answer, hash }: Answered, speech: Speech, invented: string): Section {
  const voice: Voice = { ...speech, outing };
  const gap = gapToKeep(answer, outing);
  const stays = notToRun(answer.verdict);
  const zones = drivenRows(answer, voice).map(({ from, to, speed, why }) => [`${from} – ${to}`, speed, why]);
  let number = 0;
  const findings = Object.entries(severities).flatMap(([severity, title]): Block[] => {
    const some = gathered(answer.findings).filter(({ finding }) => finding.severity === severity);
    return some.length === 0
      ? []
      : [heading(title), ...some.flatMap((group) => findingBlocks(group, ++number, voice))];
  });
  const assumed = assumedByWeight(answer.findings).map(({ of, where, source }) => [
    of,
    where.join(', '),
    source,
  ]);
  return {
    title: `The answer: ${outing.name}`,
    blocks: [
      strong(`${tellVerdict(answer.verdict).toUpperCase()}${invented === '' ? '' : ` (${invented})`}`),
      text(sentence(answer, voice)),
      text(
        `${outing.train.name} on ${outing.line.name}${outing.date === undefined ? '' : `, ${outing.date}`}, rail ${tellRail(outing.conditions.railState)}. SHA-256 of the answer: ${hash}`,
      ),
      heading('Speeds'),
      ...(stays === '' ? [] : [strong(stays)]),
      tableOf(['from – to', 'at most', 'because of'], zones, 'None is given.'),
      ...list(actLines(answer, voice)),
      ...(gap === undefined
        ? []
        : gap === ALONE
          ? [text(`To be run with ${NO_OTHER_TRAIN}.`)]
          : [text(`Gap to keep behind the train ahead: ${distance(voice, gap, 'up')}.`)]),
      ...findings,
      heading('Assumed'),
      tableOf(['what', 'where', 'source'], assumed, 'Nothing.'),
    ],
  };
}

type Group = ReturnType<typeof gathered>[number];

function findingBlocks(group: Group, number: number, voice: Voice): Block[] {
  const { finding } = group;
  const told = tellFinding(finding, voice);
  const sum = finding.sum && tellSum(finding.sum, voice);
  return [
    strong(`${number}. ${tellGathered(group, voice)}`),
    text(
      [
        told.why,
        told.found === ''
          ? ''
          : `Found ${told.found}${told.required === '' ? '' : `, required ${told.required}`}.`,
        told.margin === '' ? '' : `Margin ${told.margin}.`,
        `How sure: ${told.sure}. Source: ${told.source}.`,
        told.measure === undefined ? '' : `Measure: ${tellMeasure(told.measure, voice.wording)}`,
      ]
        .filter((part) => part !== '')
        .join(' '),
    ),
    ...(sum
      ? list([
          `Sum ${sum.id}: ${sum.asks}${sum.note === '' ? '' : ` ${sum.note}`}`,
          sum.equation,
          `${sum.inputs.join(', ')} → ${sum.results.join(', ')}`,
          `Source of the sum: ${sum.source}`,
        ])
      : []),
  ];
}
