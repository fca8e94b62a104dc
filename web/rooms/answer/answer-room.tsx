/** The answer first: its figures and its sentence, the day, the strip, the findings with their sums and remedies, the counts. */

import { signal, useSignal } from '@preact/signals';
import type { VNode } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Told } from '../../../desk/asked.ts';
import { assumedByWeight } from '../../../desk/assumed.ts';
import { type Gathered, gathered, tellGathered } from '../../../desk/gathered.ts';
import { identityOf } from '../../../desk/identity.ts';
import { testOfAssumed } from '../../../desk/measured/which.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import type { Finding } from '../../../engine/questions/finding.ts';
import { tellRemedy } from '../../../words/change.ts';
import { tellFinding } from '../../../words/finding.ts';
import type { Voice } from '../../../words/voice.ts';
import { Counts } from '../../parts/counts.tsx';
import { Driving } from '../../parts/driving.tsx';
import { later } from '../../parts/later.tsx';
import { noWord } from '../../parts/no-word.ts';
import { asked, reading, speech, told, tryOut } from '../../state/session.ts';
import { Day } from './day.tsx';
import { About, Hero } from './hero.tsx';
import { focusOn } from './strip-state.ts';

/** On paper every finding stands with its reasons. */
const onPaper = signal(false);

function usePaper(): void {
  useEffect(() => {
    const paper = matchMedia('print');
    const ready = setTimeout(() => void import('../../parts/sum-of.tsx'), 3000);
    const look = (): void => {
      onPaper.value = paper.matches;
    };
    // Told before the page is laid out for paper; the media query alone would come too late in some browsers.
    const before = (): void => {
      onPaper.value = true;
    };
    paper.addEventListener('change', look);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', look);
    return () => {
      clearTimeout(ready);
      paper.removeEventListener('change', look);
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', look);
    };
  }, []);
}

export function Room() {
  usePaper();
  const now = told.value;
  const outing = asked.value?.outing;
  const drawn = useRef(false);
  const stands = useRef<VNode | null>(null);
  if (now) drawn.current = true;
  // For the moment in which a paper is read the room stands as it is: taken down and built up anew it costs more than all
  // else that a turn of the dial does. What tells something looks for itself whether there is a word.
  if (!outing && reading.value && stands.current) return stands.current;
  stands.current = outing ? (
    <Whole outing={outing} now={now} drawn={drawn.current} />
  ) : (
    <section class="title">
      <h1>May it leave?</h1>
      <p>{noWord()}</p>
    </section>
  );
  return stands.current;
}

function Whole({
  outing,
  now,
  drawn,
}: {
  readonly outing: Outing;
  readonly now: Told | null;
  readonly drawn: boolean;
}) {
  const voice = { ...speech.value, outing };
  return (
    <>
      <div class="first">
        <Hero voice={voice} />
        <About voice={voice} />
        <Day outing={outing} />
        {drawn && <AlsoToday />}
        {asked.value && asked.value.trials.length > 0 && <Trying asked={asked.value} />}
        <div class="strip-place">{drawn && <StripView />}</div>
        {drawn && <FromAbove />}
      </div>
      {now && now.answer.verdict !== 'go' && (
        <Ladder asked={now.asked} leaves={now.answer.verdict === 'limits'} />
      )}
      {now ? (
        <div class="columns">
          <Decides findings={now.answer.findings} voice={voice} />
          <aside>
            <Driving told={now} />
            <Counts told={now} />
          </aside>
          <Beside findings={now.answer.findings} voice={voice} />
        </div>
      ) : (
        <p>{noWord()}</p>
      )}
    </>
  );
}

/** Drawn when it is asked for. */
function FromAbove() {
  const open = useSignal(false);
  return (
    <details
      class="fold"
      onToggle={(e) => {
        open.value = e.currentTarget.open;
      }}
    >
      <summary>The line from above</summary>
      {open.value && <PlanView />}
    </details>
  );
}

const decisive = [
  ['forbids', 'Holds', '■'],
  ['unknown', 'Cannot tell', '◆'],
  ['limits', 'Limits', '▲'],
] as const;

interface Numbered {
  readonly group: Gathered;
  readonly number: number;
}

interface Heard {
  readonly findings: readonly Finding[];
  readonly voice: Voice;
}

/** Findings of one weight, numbered as on the strip. */
const ofWeight = (findings: readonly Finding[], severity: Finding['severity']): readonly Numbered[] =>
  gathered(findings)
    .map((group, i) => ({ group, number: i + 1 }))
    .filter(({ group }) => group.finding.severity === severity);

/** What decides the word. */
function Decides({ findings, voice }: Heard) {
  return (
    <section aria-label="Findings">
      {decisive.map(([severity, title, shape]) => (
        <Group key={severity} title={title} shape={shape} list={ofWeight(findings, severity)} voice={voice} />
      ))}
    </section>
  );
}

/** Notes shown at once; the others are one tap away. */
const NOTES = 4;

/** What is worth knowing beside it: the heaviest notes, the others folded, and what was assumed. */
function Beside({ findings, voice }: Heard) {
  const notes = ofWeight(findings, 'notes');
  const shown = notes.length > NOTES + 1 ? NOTES : notes.length;
  const rest = notes.slice(shown);
  return (
    <section aria-label="Notes">
      <Group title="Notes" shape="●" list={notes.slice(0, shown)} voice={voice} />
      {rest.length > 0 && (
        <details class="more-notes">
          <summary>● {rest.length} notes more</summary>
          {rest.map(({ group, number }) => (
            <One key={`${group.finding.code}${number}`} group={group} number={number} voice={voice} />
          ))}
        </details>
      )}
      <Assumed findings={findings} />
    </section>
  );
}

function Group({
  title,
  shape,
  list,
  voice,
}: {
  readonly title: string;
  readonly shape: string;
  readonly list: readonly Numbered[];
  readonly voice: Voice;
}) {
  if (list.length === 0) return null;
  return (
    <section>
      <h2>
        <span aria-hidden="true">{shape}</span> {title}
      </h2>
      {list.map(({ group, number }) => (
        <One key={`${group.finding.code}${number}`} group={group} number={number} voice={voice} />
      ))}
    </section>
  );
}

function Assumed({ findings }: Pick<Heard, 'findings'>) {
  const values = assumedByWeight(findings);
  if (values.length === 0) return null;
  return (
    <details class="assumed">
      <summary>
        ○ Assumed: {values.length} values stand in for measurements; first what would change the word first
      </summary>
      <ul>
        {values.map(({ key, of, where, source }) => (
          <li key={key}>
            {of} ({where.join(', ')}) <small>{source}</small>
            {testOfAssumed(key) && (
              <>
                {' '}
                <a href={`#measure/${testOfAssumed(key)}`}>measure it</a>
              </>
            )}
          </li>
        ))}
      </ul>
    </details>
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
  // Its reasons are told when somebody opens it: twenty that nobody reads weigh more than the strip at every turn of the dial.
  const open = useSignal(group.finding.severity === 'unknown');
  const reasons = open.value || onPaper.value;
  // What follows the word, counts and remedies, leaves most findings as they are.
  return useMemo(() => {
    const { finding, all } = group;
    return (
      <details
        class={`finding ${finding.severity}`}
        open={open.value}
        onToggle={(e) => {
          open.value = e.currentTarget.open;
        }}
      >
        <summary>
          <span class="number">{number}</span> {tellGathered(group, v)}
        </summary>
        {reasons && <p>{tellFinding(finding, v).why}</p>}
        {all.length > 1 && (
          <ul class="others">
            {all.slice(1).map((other) => {
              const { what } = tellFinding(other, v);
              return <li key={what}>{what}</li>;
            })}
          </ul>
        )}
        {reasons && <Reasons finding={finding} voice={v} />}
      </details>
    );
  }, [identityOf(group), number, v.system, v.wording, v.outing, open.value, reasons]);
}

function Reasons({ finding, voice: v }: { readonly finding: Finding; readonly voice: Voice }) {
  const told = tellFinding(finding, v);
  const { from, to } = finding.where;
  return (
    <>
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
            <dd>
              <FillIn finding={finding} />
            </dd>
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
    </>
  );
}

/** The register of sums is large, and trials come later: neither is needed for the answer. */
const SumOf = later(async () => (await import('../../parts/sum-of.tsx')).SumOf);
const FillIn = later(async () => (await import('./fill-in.tsx')).FillIn);
const Ladder = later(async () => (await import('../../parts/ladder.tsx')).Ladder);
const Trying = later(async () => (await import('./trying.tsx')).Trying);
/** Fetched once the first word is there: nobody waits for it. */
const StripView = later(async () => (await import('./strip-view.tsx')).StripView);
const PlanView = later(async () => (await import('./plan-view.tsx')).PlanView);
const AlsoToday = later(async () => (await import('../../parts/also-today.tsx')).AlsoToday);
