/** What whoever surveyed the line may know better: pressed, it is read anew so, and pressed again as before. */
import { type Advice, choices, type SurveyChoices } from '../../papers/import/types.ts';
import { adviceWords } from '../../words/survey.ts';

interface Props {
  readonly advice: readonly Advice[];
  readonly choose: (choice: SurveyChoices) => void;
}

export const SurveyAdvice = ({ advice, choose }: Props) => (
  <ul class="advice">
    {advice.map((one) => {
      const { say, button, see } = adviceWords[one];
      return (
        <li key={one}>
          {say}{' '}
          {button !== undefined && one in choices && (
            <button type="button" onClick={() => choose(choices[one as keyof typeof choices])}>
              {button}
            </button>
          )}
          {see && <a href={`#${see.at}`}>{see.words}</a>}
        </li>
      );
    })}
  </ul>
);
