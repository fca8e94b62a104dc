/** What `check` prints for people: one screen; with `--why` its reasons, margins and sums; with `--all` everything. */
import { assumedByWeight } from '../desk/assumed.ts';
import { TRIED } from '../desk/card.ts';
import { counted, countWays, countWords, limitLines, mostWords, slowerBeside } from '../desk/count-ways.ts';
import { type Gathered, gathered, tellGathered } from '../desk/gathered.ts';
import { tellLadder } from '../desk/ladder.ts';
import { sentence } from '../desk/sentence.ts';
import { tellSum } from '../desk/told-sum.ts';
import type { Ladder } from '../engine/answer/ladder.ts';
import type { Answer } from '../engine/answer/types.ts';
import type { SumRef } from '../engine/base/sum.ts';
import type { Finding } from '../engine/questions/finding.ts';
import { tellRemedy } from '../words/change.ts';
import { tellRail, tellRails } from '../words/rails.ts';
import { tellVerdict } from '../words/verdict.ts';
import type { Voice } from '../words/voice.ts';
import { countLines, countsText } from './commands/cars.ts';
import { clipped, HEIGHT, wrap } from './screen.ts';
import type { SetIn } from './set-in.ts';
import { tellFully } from './text.ts';

export const CAUTION =
  "Heedway reckons; it does not license. The host's rules, boiler and local codes and the person in charge come first.";

const headings = { forbids: 'Holds', unknown: 'Cannot tell', limits: 'Limits', notes: 'Notes' } as const;
const marks = {
  forbids: 'Holds: ',
  unknown: 'Cannot tell: ',
  limits: 'Limits: ',
  notes: '',
  assumed: '',
} as const;

/** The prompt that follows takes the last line of the screen. */
const LINES = HEIGHT - 1;
const MOST_ASSUMED = 3;

/** What is told beside the answer. */
export interface Beside {
  /** What is tried, a line for each change. */
  readonly tried?: readonly string[];
  readonly setIn?: SetIn;
  /** What to change, step by step; absent: not looked for. */
  readonly ladder?: Ladder | undefined;
  /** What of it is an example that nobody measured. */
  readonly invented?: string;
}

/** Where nothing is known of the files. */
const nowhere: SetIn = () => '';

const word = (answer: Answer, { outing }: Voice, invented = ''): string =>
  `${outing.name}${invented === '' ? '' : ` (${invented})`}: ${tellVerdict(answer.verdict).toUpperCase()}`;

/** Word, sentence, what holds or limits, counts of today, what to do next. */
export function screenText(
  answer: Answer,
  voice: Voice,
  { tried = [], setIn = nowhere, invented, ladder }: Beside = {},
): string {
  const groups = gathered(answer.findings);
  const heeds = groups.filter(({ finding }) => finding.severity !== 'notes');
  const head = [
    ...clipped(wrap(word(answer, voice, invented)), 2),
    ...(tried.length > 0 ? clipped(wrap(`${TRIED} ${tried.join('; ')}`), 2) : []),
    ...clipped(wrap(sentence(answer, voice)), 5),
  ].filter((line) => line !== '');
  const foot = [
    ...carsToday(answer, voice),
    ...nextSteps(heeds, voice, setIn, ladder),
    '',
    ...wrap(moreText(answer, groups)),
    ...wrap(CAUTION),
  ];
  const room = LINES - head.length - foot.length - 2;
  return [...head, '', ...heedLines(heeds, voice, room), '', ...foot].join('\n');
}

/** Worst first, as many as there is room for, and how many more there are. */
function heedLines(heeds: readonly Gathered[], voice: Voice, room: number): string[] {
  if (heeds.length === 0) return ['Nothing holds or limits it.'];
  const out: string[] = [];
  for (const [i, heed] of heeds.entries()) {
    const last = i === heeds.length - 1;
    const left = room - out.length - (last ? 0 : 1);
    const lines = wrap(`${marks[heed.finding.severity]}${tellGathered(heed, voice)}`, '  ');
    if (i > 0 && lines.length > left) return [...out, `And ${heeds.length - i} more: --why`];
    out.push(...clipped(lines, Math.max(1, left)));
  }
  return out;
}

function carsToday({ cars }: Answer, voice: Voice): string[] {
  const rail = voice.outing.conditions.railState;
  const today = cars.find((c) => c.railState === rail);
  if (!today) return [];
  const counts = countWays(cars, voice).map(([way, name]) =>
    counted(way, name, countWords(today, way, (n) => `${n} or more`) + slowerBeside(today, way)),
  );
  // Why no more may leave stands in the sentence.
  const least = `Cars on ${tellRails(voice).replace(tellRail(rail), `${tellRail(rail)} rail`)}: ${mostWords(today)}; ${counts.join(', ')}.`;
  const tightest = limitLines(today, cars, voice, 'tightest first')[0];
  return [...clipped(wrap(least, '  '), 3), ...(tightest ? clipped(wrap(`  ${tightest}`, '    '), 2) : [])];
}

const measureStep = (finding: Finding, voice: Voice, setIn: SetIn): string[] => {
  const { measure } = tellFully(finding, voice);
  const place = setIn(finding);
  return measure ? [`Measure${place === '' ? '' : ` for ${place}`}: ${measure}`] : [];
};

/** So many are shown. */
const MOST_STEPS = 2;

/** What to change and measure first. */
function nextSteps(
  heeds: readonly Gathered[],
  voice: Voice,
  setIn: SetIn,
  ladder: Ladder | undefined,
): string[] {
  const steps = ladder ? tellLadder(ladder, voice).steps : [];
  const changes = steps.map(({ what, word }, i) => {
    const others = i === MOST_STEPS - 1 ? steps.length - MOST_STEPS : 0;
    const more = others > 0 ? `; ${others} more ${others === 1 ? 'step' : 'steps'}: heedway ladder` : '';
    return `→ ${steps.length > 1 ? `${i + 1}. ` : ''}${what} (then: ${word}${more})`;
  });
  const measures = heeds.flatMap(({ finding }) => measureStep(finding, voice, setIn));
  return [...changes, ...new Set(measures)]
    .slice(0, MOST_STEPS)
    .flatMap((step) => clipped(wrap(step, '  '), 2));
}

function moreText({ findings }: Answer, groups: readonly Gathered[]): string {
  const notes = groups.filter(({ finding }) => finding.severity === 'notes').length;
  const assumed = assumedByWeight(findings).length;
  return `${notes} ${notes === 1 ? 'note' : 'notes'}, ${assumed} assumed. Reasons, margins and sums: --why. Everything: --all`;
}

/** @param all every finding by itself, every assumption, counts for every rail */
export function longText(
  answer: Answer,
  voice: Voice,
  { why, all }: { readonly why: boolean; readonly all: boolean },
  { tried = [], setIn = nowhere, invented }: Beside = {},
): string {
  const groups = all
    ? answer.findings
        .filter((f) => f.severity !== 'assumed')
        .map((finding) => ({ finding, all: [finding], near: false }))
    : gathered(answer.findings);
  const lines = [
    word(answer, voice, invented),
    ...(tried.length > 0 ? [TRIED, ...tried.map((change) => `  ${change}`)] : []),
    sentence(answer, voice),
  ].filter((line) => line !== '');
  let number = 0;
  for (const severity of ['forbids', 'unknown', 'limits', 'notes'] as const) {
    const some = groups.filter(({ finding }) => finding.severity === severity);
    if (some.length === 0) continue;
    lines.push('', headings[severity]);
    for (const group of some) {
      lines.push(`  ${++number}. ${tellGathered(group, voice)}`);
      if (why) lines.push(...whyLines(group.finding, voice, setIn));
    }
  }
  lines.push(...assumedLines(answer, all));
  lines.push(
    '',
    'Cars',
    all ? countsText(answer.cars, voice) : countLines(answer.cars, voice).join('\n'),
    '',
    CAUTION,
  );
  return lines.join('\n');
}

function whyLines(finding: Finding, voice: Voice, setIn: SetIn): string[] {
  const told = tellFully(finding, voice);
  const margin = told.margin === '' ? '' : ` Margin ${told.margin}.`;
  return [
    `     ${told.why}`,
    `     Source: ${told.source}.${margin} How sure: ${told.sure}.`,
    ...(finding.sum ? sumLines(finding.sum, voice) : []),
    ...measureStep(finding, voice, setIn).map((step) => `     ${step}`),
    ...finding.remedies.map((remedy) => `     → ${tellRemedy(remedy, voice)}`),
  ];
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

/** Those that would change the word first; with all of them, all. */
function assumedLines({ findings }: Answer, all: boolean): string[] {
  const list = assumedByWeight(findings);
  if (list.length === 0) return [];
  const shown = all ? list : list.slice(0, MOST_ASSUMED);
  const rest = list.length - shown.length;
  return [
    '',
    'Assumed',
    ...shown.map((a) => `  - ${a.of} (${a.where.join(', ')}). Source: ${a.source}`),
    ...(rest > 0 ? [`  and ${rest} more that weigh less: --all`] : []),
  ];
}
