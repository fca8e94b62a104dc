/** Reads surveys beside the page, which stays alive meanwhile. */
import { readSurvey, type Survey } from '../desk/survey.ts';
import type { ImportOptions } from '../papers/import/types.ts';

export interface SurveyAsk {
  readonly bytes: Uint8Array;
  readonly file: string;
  readonly about: Omit<ImportOptions, 'share'>;
}

export type SurveyReply = { readonly share: number } | { readonly survey: Survey };

const reply = (message: SurveyReply): void => postMessage(message);

addEventListener('message', ({ data }: MessageEvent<SurveyAsk>) => {
  const about = { ...data.about, share: (share: number) => reply({ share }) };
  void readSurvey(data.bytes, data.file, about).then((survey) => reply({ survey }));
});
