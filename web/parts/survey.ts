/** A survey file read beside the page, with how far it is; the paper is not touched. */
import type { Survey } from '../../desk/survey.ts';
import type { SurveyChoices } from '../../papers/import/types.ts';
import { fileProblem } from '../../papers/problem.ts';
import { mostBytes } from '../../papers/text.ts';
import type { SurveyAsk, SurveyReply } from '../survey-worker.ts';

export interface Reading {
  readonly done: Promise<Survey>;
  /** Leave it unread: `done` never comes. */
  readonly stop: () => void;
}

const refused = (file: string, found: string, expected: string): Survey => ({
  file,
  notes: [],
  advice: [],
  problems: [fileProblem(file, { path: [], found, expected })],
});

/**
 * @param gauge of the line that it may replace, as written there
 * @param choices what whoever surveyed it says of it
 */
export function readingSurvey(
  file: File,
  gauge: string,
  share: (done: number) => void,
  choices: SurveyChoices = {},
): Reading {
  let worker: Worker | undefined;
  let stopped = false;
  const read = async (): Promise<Survey> => {
    const most = mostBytes(file.name) / 1024 / 1024;
    const size = file.size / 1024 / 1024;
    if (size > most) return refused(file.name, `a file of ${size.toFixed(1)} MB`, `at most ${most} MB`);
    const about = { name: file.name.replace(/\.\w+$/, ''), gauge, ...choices };
    const ask: SurveyAsk = { bytes: new Uint8Array(await file.arrayBuffer()), file: file.name, about };
    return stopped ? new Promise(() => {}) : beside(ask);
  };
  const beside = async (ask: SurveyAsk): Promise<Survey> => {
    try {
      worker = new Worker(new URL('../survey-worker.ts', import.meta.url), { type: 'module' });
    } catch {
      return refused(ask.file, 'a browser that does nothing beside its page', 'another, or the command line');
    }
    const one = worker;
    const survey = await new Promise<Survey>((done) => {
      one.addEventListener('message', ({ data }: MessageEvent<SurveyReply>) =>
        'survey' in data ? done(data.survey) : share(data.share),
      );
      one.addEventListener('error', () =>
        done(refused(ask.file, 'a survey over which the reading stopped', 'one that can be read')),
      );
      one.postMessage(ask);
    });
    one.terminate();
    return survey;
  };
  return {
    done: read(),
    stop: () => {
      stopped = true;
      worker?.terminate();
    },
  };
}
