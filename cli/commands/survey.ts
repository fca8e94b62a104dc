/** heedway survey: a line file from a surveyed CSV or GPX. */
import { extname } from 'node:path';
import { DOMParser } from '@xmldom/xmldom';
import { importCsv } from '../../papers/import/csv.ts';
import { importGpx, type ParseXml } from '../../papers/import/gpx.ts';
import { readLine, writeFile as writeText } from '../../papers/index.ts';
import { type Command, common, type Options } from '../command.ts';
import { openFile, refusal } from '../open.ts';
import { writeOut } from '../write.ts';

interface SurveyOptions extends Options {
  readonly name?: string;
  readonly gauge: string;
  readonly out?: string;
}

export const surveyCommand: Command = {
  name: 'survey',
  declare: (program, run) => {
    common(program.command('survey <file>'))
      .description('Make a line file from a survey: CSV with units in its header, or GPX 1.1.')
      .option('--name <name>', 'name of the line')
      .option('--gauge <gauge>', 'gauge of the line', '7-1/4 in')
      .option('--out <file>', 'write the line file here')
      .action((path: string, options: SurveyOptions) => run(() => survey(path, options), options));
  },
};

const parseXml: ParseXml = (text) => {
  let fault: string | undefined;
  const onError = (_level: string, message: string): void => {
    fault ??= message.split('\n')[0];
  };
  try {
    const document = new DOMParser({ onError }).parseFromString(text, 'text/xml') as unknown as Document;
    return fault ? { fault } : { document };
  } catch (error) {
    return { fault: fault ?? String(error).split('\n')[0] };
  }
};

/** The line of a survey, CSV or GPX. */
export async function surveyedLine(path: string, about: { readonly name: string; readonly gauge: string }) {
  const { content } = await openFile(path);
  const gpx = extname(path).toLowerCase() === '.gpx';
  const imported = gpx ? importGpx(content, path, about, parseXml) : importCsv(content, path, about);
  if (imported.problems.length > 0 || !imported.line) {
    throw refusal(imported.problems);
  }
  return { line: imported.line, notes: imported.notes };
}

async function survey(path: string, options: SurveyOptions) {
  const about = { name: options.name ?? 'Surveyed line', gauge: options.gauge };
  const imported = await surveyedLine(path, about);
  const text = writeText(imported.line);
  // The line must read back as any other line file does.
  const read = await readLine({ path: options.out ?? 'line.json', content: text });
  if (!read.ok) throw refusal(read.problems);
  if (options.out) await writeOut(options.out, text);
  const said = imported.notes.map((n) => `- ${n}`).join('\n');
  return {
    text: options.out ? `Line written into ${options.out}\n${said}` : `${text}\n${said}`,
    json: { line: imported.line, notes: imported.notes },
    exit: 0,
  };
}
