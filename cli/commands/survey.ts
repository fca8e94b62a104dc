/** heedway survey: a line file from a surveyed CSV or GPX. */
import { readSurvey } from '../../desk/survey.ts';
import type { ImportOptions } from '../../papers/import/types.ts';
import { writeFile as writeText } from '../../papers/index.ts';
import { mostBytes } from '../../papers/text.ts';
import { type Command, common, type Options, UsageFault } from '../command.ts';
import { openFile, refusal } from '../open.ts';
import { writeOut } from '../write.ts';

interface SurveyOptions extends Options {
  readonly name?: string;
  readonly gauge: string;
  readonly lengths?: string;
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
      .option('--out <file>', 'write the line file here')
      .action((path: string, options: SurveyOptions) => run(() => survey(path, options), options));
  },
};

/** The line of a survey, CSV or GPX. */
export async function surveyedLine(path: string, about: ImportOptions) {
  const { content } = await openFile(path, mostBytes(path));
  const { made, notes, problems, asksLengths } = await readSurvey(content, path, about);
  if (asksLengths)
    throw new UsageFault(
      `${refusal(problems).message}\nFeet or metres? Say --lengths ft or --lengths m.`,
      problems,
    );
  if (!made) throw refusal(problems);
  return { line: made.json, read: made.line, notes };
}

export function lengthsOf(lengths: string | undefined): Pick<ImportOptions, 'lengths'> {
  if (lengths === undefined) return {};
  if (lengths === 'ft' || lengths === 'm') return { lengths };
  throw new UsageFault(`--lengths: found ${lengths}; expected ft or m`);
}

async function survey(path: string, options: SurveyOptions) {
  const about: ImportOptions = {
    name: options.name ?? 'Surveyed line',
    gauge: options.gauge,
    ...lengthsOf(options.lengths),
  };
  const { line, notes } = await surveyedLine(path, about);
  const text = writeText(line);
  if (options.out) await writeOut(options.out, text);
  const said = notes.map((n) => `- ${n}`).join('\n');
  return {
    text: options.out ? `Line written into ${options.out}\n${said}` : `${text}\n${said}`,
    json: { line, notes },
    exit: 0,
  };
}
