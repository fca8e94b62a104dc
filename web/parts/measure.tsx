/** What to measure, in words; they come with the forms, after the first screen. */
import { settings } from '../state/session.ts';
import { later } from './later.tsx';

interface Props {
  /** Path of the field that is asked for. */
  readonly path: string;
}

export const Measure = later<Props>(async () => {
  const { tellMeasure } = await import('../../words/field.ts');
  return ({ path }) => <>{tellMeasure(path, settings.value.wording)}</>;
});
