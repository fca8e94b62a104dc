/** What is being tried, and the answer before and after. */
import type { Asked, Told } from '../../../desk/asked.ts';
import { tellTrials } from '../../../desk/tell-trials.ts';
import { tellVerdict } from '../../../words/verdict.ts';
import { before, keepTrials, speech, told, undoTrial } from '../../state/session.ts';

export function Trying({ asked }: { readonly asked: Asked }) {
  const rows: readonly (readonly [string, (of: Told) => string])[] = [
    ['answer', (of) => tellVerdict(of.answer.verdict)],
    ['findings that hold or limit', (of) => `${heavy(of)}`],
    ['cars at most', least],
  ];
  const say = (of: Told | null, what: (of: Told) => string): string => (of ? what(of) : '…');
  return (
    <section class="trying" aria-label="Trying">
      <h2>Trying: {tellTrials(asked, speech.value).join(', then ')}</h2>
      <table>
        <thead>
          <tr>
            <th />
            <th>before</th>
            <th>with it</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, what]) => (
            <tr key={name}>
              <th>{name}</th>
              <td>{say(before.value, what)}</td>
              <td>{say(told.value, what)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <button type="button" class="main" onClick={undoTrial}>
          Undo this
        </button>{' '}
        <button type="button" onClick={() => void keepTrials()}>
          Write it into my papers
        </button>
      </p>
    </section>
  );
}

/** On the rail of that outing: a trial may be of another. */
function least({ asked, answer }: Told): string {
  const today = answer.cars.find((c) => c.railState === asked.outing.conditions.railState);
  if (!today) return '…';
  return today.least === null ? 'cannot tell' : `${today.least}`;
}

const heavy = ({ answer }: Told): number =>
  answer.findings.filter(
    (f) => f.severity === 'forbids' || f.severity === 'unknown' || f.severity === 'limits',
  ).length;
