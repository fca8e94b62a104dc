/** What is being tried, and the answer before and after. */
import type { Finding } from '../../../engine/questions/finding.ts';
import { tellChange, tellVerdict } from '../../../words/finding.ts';
import type { Voice } from '../../../words/voice.ts';
import { answer, before, trials, undoTrial } from '../../state/session.ts';

export function Trying({ voice: v }: { readonly voice: Voice }) {
  const told = trials.value.map(({ change, from }) => tellChange(change, { ...v, outing: from }));
  const least = (a: typeof answer.value): string => {
    const today = a?.cars.find((c) => c.railState === v.outing.conditions.railState);
    return today?.least === null || today === undefined ? 'cannot tell' : `${today.least}`;
  };
  return (
    <section class="trying" aria-label="Trying">
      <h2>Trying: {told.join(', then ')}</h2>
      <table>
        <thead>
          <tr>
            <th />
            <th>before</th>
            <th>with it</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th>answer</th>
            <td>{before.value && tellVerdict(before.value.verdict)}</td>
            <td>{answer.value && tellVerdict(answer.value.verdict)}</td>
          </tr>
          <tr>
            <th>findings that hold or limit</th>
            <td>{heavy(before.value?.findings)}</td>
            <td>{heavy(answer.value?.findings)}</td>
          </tr>
          <tr>
            <th>cars at most</th>
            <td>{least(before.value)}</td>
            <td>{least(answer.value)}</td>
          </tr>
        </tbody>
      </table>
      <button type="button" class="main" onClick={undoTrial}>
        Undo this
      </button>
    </section>
  );
}

const heavy = (findings: readonly Finding[] | undefined): number =>
  (findings ?? []).filter(
    (f) => f.severity === 'forbids' || f.severity === 'unknown' || f.severity === 'limits',
  ).length;
