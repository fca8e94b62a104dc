/** The answer first: the strip, the findings with their sums and remedies, the counts. */

import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { lightLines } from '../../../desk/light-wheels.ts';
import { stretches } from '../../../desk/stretches.ts';
import type { Finding } from '../../../engine/finding/types.ts';
import { applyChange } from '../../../engine/outing/change.ts';
import { tellChange, tellFinding, tellRemedy, tellVerdict } from '../../../words/finding.ts';
import { reasonWords } from '../../../words/findings/stopping.ts';
import { chainage, distance, say, type Voice } from '../../../words/voice.ts';
import { Counts } from '../../parts/counts.tsx';
import { answer, before, outing, trial, voice } from '../../state/session.ts';
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
      </section>
      <Trying voice={say} />
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

/** What is being tried, and the answer before and after. */
function Trying({ voice: v }: { readonly voice: Voice }) {
  if (trial.value.length === 0 || !outing.value) return null;
  const told: string[] = [];
  let at = outing.value;
  for (const change of trial.value) {
    told.push(tellChange(change, { ...v, outing: at }));
    at = applyChange(at, change);
  }
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
      <button
        type="button"
        class="main"
        onClick={() => {
          trial.value = trial.value.slice(0, -1);
        }}
      >
        Undo this
      </button>
    </section>
  );
}

const heavy = (findings: readonly Finding[] | undefined): number =>
  (findings ?? []).filter(
    (f) => f.severity === 'forbids' || f.severity === 'unknown' || f.severity === 'limits',
  ).length;

const groups = [
  ['forbids', 'Holds', '■'],
  ['unknown', 'Cannot tell', '◆'],
  ['limits', 'Limits', '▲'],
  ['notes', 'Notes', '●'],
  ['assumed', 'Assumed', '○'],
] as const;

function Findings({ findings, voice: v }: { readonly findings: readonly Finding[]; readonly voice: Voice }) {
  return (
    <section aria-label="Findings">
      {groups.map(([severity, title, shape]) => {
        const list = findings
          .map((finding, i) => ({ finding, number: i + 1 }))
          .filter(({ finding }) => finding.severity === severity);
        if (list.length === 0) return null;
        if (severity === 'assumed') {
          return (
            <details key={severity} class="assumed">
              <summary>
                {shape} {title}: {list.length} values stand in for measurements
              </summary>
              <ul>
                {list.map(({ finding, number }) => (
                  <li key={number}>
                    {tellFinding(finding, v).what} <small>{finding.source}</small>
                  </li>
                ))}
              </ul>
            </details>
          );
        }
        return (
          <section key={severity}>
            <h2>
              <span aria-hidden="true">{shape}</span> {title}
            </h2>
            {list.map(({ finding, number }) => (
              <One key={`${finding.code}${number}`} finding={finding} number={number} voice={v} />
            ))}
          </section>
        );
      })}
    </section>
  );
}

function One({
  finding,
  number,
  voice: v,
}: {
  readonly finding: Finding;
  readonly number: number;
  readonly voice: Voice;
}) {
  const told = tellFinding(finding, v);
  const { from, to } = finding.where;
  return (
    <details class={`finding ${finding.severity}`}>
      <summary>
        <span class="number">{number}</span> {told.what}
      </summary>
      <p>{told.why}</p>
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
                trial.value = [...trial.value, remedy.change];
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
                <td>{chainage(v, s.from)}</td>
                <td>{chainage(v, s.to)}</td>
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
            {chainage(v, p.at)}:{' '}
            {p.kind === 'stop'
              ? `brake for ${p.what}`
              : `brake to ${say(v, { si: p.toSpeed, kind: 'speed' }, 'down')} by ${chainage(v, p.target)} (${p.what})`}
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

type SumView = typeof import('../../parts/sum-of.tsx').SumOf;
const sumView = signal<SumView | null>(null);

/** The sum behind a finding. The register of sums is large, and is loaded after the answer is on the screen. */
function SumOf(props: Parameters<SumView>[0]) {
  useEffect(() => {
    if (!sumView.value)
      void import('../../parts/sum-of.tsx').then((loaded) => {
        sumView.value = loaded.SumOf;
      });
  }, []);
  const View = sumView.value;
  return View && <View {...props} />;
}
