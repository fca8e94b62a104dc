/** The answer first: the strip, the findings with their sums and remedies, the counts. */

import { assumedByWeight } from '../../../desk/assumed.ts';
import { type Gathered, gathered, tellGathered } from '../../../desk/gathered.ts';
import { lightLines } from '../../../desk/light-wheels.ts';
import { sentence } from '../../../desk/sentence.ts';
import { endsOf, stretches } from '../../../desk/stretches.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { tellFinding, tellRemedy } from '../../../words/finding.ts';
import { reasonWords } from '../../../words/findings/stopping.ts';
import { distance, early, say, type Voice } from '../../../words/voice.ts';
import { Counts } from '../../parts/counts.tsx';
import { later } from '../../parts/later.tsx';
import { answer, trials, tryOut, voice } from '../../state/session.ts';
import { focusOn } from './strip-state.ts';
import { StripView } from './strip-view.tsx';

export function AnswerRoom() {
  const now = answer.value;
  const say = voice.value;
  if (!now || !say) {
    return (
      <section class="title">
        <h1>May it leave?</h1>
        <p>Reading the papers …</p>
      </section>
    );
  }
  return (
    <>
      <section class="title">
        <h1>{say.outing.name}</h1>
        <p>
          {say.outing.train.name} on {say.outing.line.name}, rail {say.outing.conditions.railState}
          {say.outing.direction === 'reverse' ? ', run in reverse' : ''}
        </p>
        <p>{sentence(now, say)}</p>
      </section>
      {trials.value.length > 0 && <Trying voice={say} />}
      <StripView />
      <div class="columns">
        <Findings findings={now.findings} voice={say} />
        <aside>
          <Counts />
          <Speeds voice={say} />
        </aside>
      </div>
    </>
  );
}

const groups = [
  ['forbids', 'Holds', '■'],
  ['unknown', 'Cannot tell', '◆'],
  ['limits', 'Limits', '▲'],
  ['notes', 'Notes', '●'],
  ['assumed', 'Assumed', '○'],
] as const;

function Findings({ findings, voice: v }: { readonly findings: readonly Finding[]; readonly voice: Voice }) {
  const lines = gathered(findings);
  return (
    <section aria-label="Findings">
      {groups.map(([severity, title, shape]) => {
        if (severity === 'assumed') {
          const values = assumedByWeight(findings);
          if (values.length === 0) return null;
          return (
            <details key={severity} class="assumed">
              <summary>
                {shape} {title}: {values.length} values stand in for measurements; first what would change the
                word first
              </summary>
              <ul>
                {values.map(({ key, of, where, source }) => (
                  <li key={key}>
                    {of} ({where.join(', ')}) <small>{source}</small>
                  </li>
                ))}
              </ul>
            </details>
          );
        }
        const list = lines
          .map((group, i) => ({ group, number: i + 1 }))
          .filter(({ group }) => group.finding.severity === severity);
        if (list.length === 0) return null;
        return (
          <section key={severity}>
            <h2>
              <span aria-hidden="true">{shape}</span> {title}
            </h2>
            {list.map(({ group, number }) => (
              <One key={`${group.finding.code}${number}`} group={group} number={number} voice={v} />
            ))}
          </section>
        );
      })}
    </section>
  );
}

function One({
  group,
  number,
  voice: v,
}: {
  readonly group: Gathered;
  readonly number: number;
  readonly voice: Voice;
}) {
  const { finding, all } = group;
  const told = tellFinding(finding, v);
  const { from, to } = finding.where;
  return (
    <details class={`finding ${finding.severity}`}>
      <summary>
        <span class="number">{number}</span> {tellGathered(group, v)}
      </summary>
      <p>{told.why}</p>
      {all.length > 1 && (
        <ul class="others">
          {all.slice(1).map((other) => {
            const { what } = tellFinding(other, v);
            return <li key={what}>{what}</li>;
          })}
        </ul>
      )}
      <dl>
        {told.found !== '' && (
          <>
            <dt>found</dt>
            <dd>{told.found}</dd>
          </>
        )}
        {told.required !== '' && (
          <>
            <dt>required</dt>
            <dd>{told.required}</dd>
          </>
        )}
        {told.margin !== '' && (
          <>
            <dt>margin</dt>
            <dd>{told.margin}</dd>
          </>
        )}
        <dt>source</dt>
        <dd>{told.source}</dd>
        <dt>how sure</dt>
        <dd>{told.sure}</dd>
        {told.measure && (
          <>
            <dt>measure</dt>
            <dd>{told.measure}</dd>
          </>
        )}
        {finding.sum && <SumOf sum={finding.sum} voice={v} />}
      </dl>
      {from !== undefined && to !== undefined && (
        <button type="button" onClick={() => focusOn(from, to)}>
          Show on the strip
        </button>
      )}
      {finding.remedies.length > 0 && (
        <div class="remedies">
          <h3>Would clear it</h3>
          {finding.remedies.map((remedy) => (
            <button
              type="button"
              key={JSON.stringify(remedy.change)}
              onClick={() => {
                void tryOut(remedy.change);
                scrollTo({ top: 0 });
              }}
            >
              Try: {tellRemedy(remedy, v)}
            </button>
          ))}
        </div>
      )}
    </details>
  );
}

/** The strip in words: the same as a table. */
function Speeds({ voice: v }: { readonly voice: Voice }) {
  const map = answer.value?.speeds;
  if (!map) return null;
  const light = answer.value && lightLines(answer.value.wheels, v);
  return (
    <section class="speeds">
      <h2>How fast, where</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="Speeds along the line">
        <table>
          <thead>
            <tr>
              <th>from</th>
              <th>to</th>
              <th>at most</th>
              <th>cautious stop</th>
              <th>because of</th>
            </tr>
          </thead>
          <tbody>
            {stretches(map).map((s) => (
              <tr key={s.from}>
                <td>{endsOf(v, s)[0]}</td>
                <td>{endsOf(v, s)[1]}</td>
                <td>
                  <strong>{say(v, { si: s.speed, kind: 'speed' }, 'down')}</strong>
                </td>
                <td>
                  {Number.isFinite(s.cautiousStop) ? distance(v, s.cautiousStop, 'up') : 'does not stop'}
                </td>
                <td>{s.what === 'sight' ? 'sight' : s.what || reasonWords(s.reason)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <h3>Braking points</h3>
      <ul>
        {(answer.value?.brakingPoints ?? []).map((p) => (
          <li key={`${p.at}${p.what}`}>
            {early(v, p.at)}:{' '}
            {p.kind === 'stop'
              ? `brake for ${p.what}`
              : `brake to ${say(v, { si: p.toSpeed, kind: 'speed' }, 'down')} by ${early(v, p.target)} (${p.what})`}
          </li>
        ))}
      </ul>
      {light && (
        <>
          <h3>{light.title}</h3>
          <ul>
            {light.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** The register of sums is large, and trials come later: neither is needed for the answer. */
const SumOf = later(async () => (await import('../../parts/sum-of.tsx')).SumOf);
const Trying = later(async () => (await import('./trying.tsx')).Trying);
