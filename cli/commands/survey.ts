/** heedway survey: a line file from a surveyed CSV or GPX. */
import { readSurvey } from '../../desk/survey.ts';
import { type Advice, choices, type ImportOptions, type SurveyChoices } from '../../papers/import/types.ts';
import { writeFile as writeText } from '../../papers/index.ts';
import { mostBytes } from '../../papers/text.ts';
import { adviceWords } from '../../words/survey.ts';
import { type Command, common, type Options, UsageFault } from '../command.ts';
import { openFile, refusal } from '../open.ts';
import { writeOut } from '../write.ts';

interface SurveyOptions extends Options {
  readonly name?: string;
  readonly gauge: string;
  readonly lengths?: string;
  readonly shape?: string;
  readonly bends?: string;
  readonly out?: string;
}

export const surveyCommand: Command = {
  name: 'survey',
  declare: (program, run) => {
    common(program.command('survey <file>'))
      .description('Make a line file from a survey: CSV with units in its header, or GPX 1.1.')
      .option('--name <name>', 'name of the line')
      .option('--gauge <gauge>', 'gauge of the line', '7-1/4 in')
      .option('--lengths <unit>', 'ft or m, where its header does not say')
      .option('--shape <shape>', 'loop or point-to-point')
      .option('--bends <hand>', 'left or right: the way of radii without a sign')
      .option('--out <file>', 'write the line file here')
      .action((path: string, options: SurveyOptions) => run(() => survey(path, options), options));
  },
};

/** The line of a survey, CSV or GPX. */
export async function surveyedLine(path: string, about: ImportOptions) {
  const { content } = await openFile(path, mostBytes(path));
  const { made, notes, advice, problems, asksLengths } = await readSurvey(content, path, about);
  if (asksLengths)
    throw new UsageFault(
      `${refusal(problems).message}\nFeet or metres? Say --lengths ft or --lengths m.`,
      problems,
    );
  if (!made) throw refusal(problems);
  return { line: made.json, read: made.line, notes, advice };
}

const chosen = <T extends string>(
  flag: string,
  text: string | undefined,
  values: readonly T[],
): T | undefined => {
  if (text === undefined) return undefined;
  const value = values.find((v) => v === text);
  if (value === undefined) throw new UsageFault(`--${flag}: found ${text}; expected ${values.join(' or ')}`);
  return value;
};

type Flags = Readonly<Partial<Record<'lengths' | 'shape' | 'bends', string>>>;

/** What the flags say of it. */
export function choicesOf(flags: Flags): SurveyChoices {
  const lengths = chosen('lengths', flags.lengths, ['ft', 'm']);
  const shape = chosen('shape', flags.shape, [choices.loop.shape, choices['end to end'].shape]);
  const bends = chosen('bends', flags.bends, ['left', 'right']);
  return { ...(lengths ? { lengths } : {}), ...(shape ? { shape } : {}), ...(bends ? { bends } : {}) };
}

/** In the words of the page, with the flag for its button. */
export const tellAdvice = (advice: readonly Advice[]): string[] =>
  advice.map((one) => {
    const { say, flag } = adviceWords[one];
    return flag === undefined ? say : `${say} ${flag}`;
  });

async function survey(path: string, options: SurveyOptions) {
  const about: ImportOptions = {
    name: options.name ?? 'Surveyed line',
    gauge: options.gauge,
    ...choicesOf(options),
  };
  const { line, notes, advice } = await surveyedLine(path, about);
  const text = writeText(line);
  if (options.out) await writeOut(options.out, text);
  const said = [...notes, ...tellAdvice(advice)].map((n) => `- ${n}`).join('\n');
  return {
    text: options.out ? `Line written into ${options.out}\n${said}` : `${text}\n${said}`,
    json: { line, notes, advice: advice.map((one) => ({ of: one, ...adviceWords[one] })) },
    exit: 0,
  };
}
