/** The crew: who works this train, yes or no, signed on and off, who else could, and what of it is in the way. */
import '../../look/rooms.css';
import '../records/records.css';
import './crew.css';
import { useEffect } from 'preact/hooks';
import { asHostRules, publishedHours } from '../../../data/hours-rules.ts';
import { type CrewSheet, crewSheet } from '../../../desk/crew.ts';
import { type FieldForm, fileForm, type GroupForm } from '../../../papers/fields.ts';
import { ON_THE_GROUND } from '../../../words/crew.ts';
import { tellFinding } from '../../../words/finding.ts';
import { trade, type Voice } from '../../../words/voice.ts';
import { ChangedBar } from '../../parts/changed-bar.tsx';
import { Choices } from '../../parts/form/choices.ts';
import { Group } from '../../parts/form/group.tsx';
import { noWord } from '../../parts/no-word.ts';
import { choicesFor } from '../../parts/outing-choices.ts';
import { TrainDoors } from '../../parts/train-doors.tsx';
import { openRecords } from '../../state/records.ts';
import { change, type Json, outing, paper, problems, settings, voice } from '../../state/session.ts';
import { Person } from './person.tsx';

export function Room() {
  useEffect(() => void openRecords(), []);
  const [now, speaks] = [outing.value, voice.value];
  if (!now || !speaks) return <h1>Crew</h1>;
  const sheet = crewSheet(paper.value, now, { ...speaks, outing: now });
  return (
    <Choices.Provider value={choicesFor}>
      <TrainDoors />
      <h1>Crew</h1>
      <InTheWay sheet={sheet} speaks={{ ...speaks, outing: now }} />
      <section aria-label="Who works this train">
        {sheet.people.length === 0 && (
          <p>
            Nobody is named who works this train: who drives and who guards stands with{' '}
            <a href="#train/people">the people</a>, whoever stands by or looks out below.
          </p>
        )}
        <ul class="crew-list">
          {sheet.people.map((one) => (
            <Person key={one.name} one={one} outing={now} />
          ))}
        </ul>
      </section>
      <Ground sheet={sheet} speaks={{ ...speaks, outing: now }} />
      <Signals sheet={sheet} />
      <section class="paper" aria-label="Written down">
        <Group json={paper.value} form={crewForm} path={[]} always={['leaves', 'back', 'crew']} />
      </section>
      <Limits />
      <p>
        <a href="#due">Who is signed off</a> · <a href="#leave">Leave</a>
      </p>
      <ChangedBar />
    </Choices.Provider>
  );
}

/** Of the outing's paper what is of its crew. */
const crewForm: GroupForm = {
  ...(fileForm('outing') as GroupForm),
  fields: (fileForm('outing') as Extract<FieldForm, { form: 'group' }>).fields.filter(({ key }) =>
    ['leaves', 'back', 'crew', 'signals'].includes(key),
  ),
};

function InTheWay({ sheet, speaks }: { readonly sheet: CrewSheet; readonly speaks: Voice }) {
  // What was found of the papers as they could last be read says nothing of these.
  if (problems.value.length > 0) return <p>{noWord()}: nothing is said here until it can.</p>;
  return sheet.findings.length === 0 ? (
    <p>
      <strong>Nothing about the crew holds this train.</strong>
    </p>
  ) : (
    <section aria-label="In the way">
      <Findings all={sheet.findings} speaks={speaks} />
    </section>
  );
}

function Ground({ sheet: { ground }, speaks }: { readonly sheet: CrewSheet; readonly speaks: Voice }) {
  return ground.length === 0 || problems.value.length > 0 ? null : (
    <section aria-label={ON_THE_GROUND}>
      <h2>{ON_THE_GROUND}</h2>
      <Findings all={ground} speaks={speaks} />
    </section>
  );
}

const Findings = ({ all, speaks }: { readonly all: CrewSheet['findings']; readonly speaks: Voice }) => (
  <ul class="in-the-way">
    {all.map((finding, i) => {
      const { what, why } = tellFinding(finding, speaks);
      return (
        <li key={i} class={`is-${finding.severity}`}>
          <strong>{what}</strong> <small>{why}</small>
        </li>
      );
    })}
  </ul>
);

function Signals({ sheet: { signals, signalsToday, dress, dressExample } }: { readonly sheet: CrewSheet }) {
  return (
    <section aria-label="Signals and clothes">
      {(signals.length > 0 || signalsToday !== undefined) && (
        <>
          <h2>Signals of {trade(settings.value.wording, 'conductor')} and driver</h2>
          {signalsToday !== undefined && <p>{signalsToday}</p>}
          <dl class="signals">
            {signals.map(({ signal, means }) => (
              <div key={signal}>
                <dt>{signal}</dt>
                <dd>{means}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
      <p>
        Wear: {dress} {dressExample && <small>An example: the host’s own words win.</small>}
      </p>
    </section>
  );
}

/** Nobody's until a host takes them over. */
function Limits() {
  const host = (paper.value['host'] ?? {}) as Json;
  return (
    <details class="fold">
      <summary>Published limits of hours, as examples</summary>
      <div class="inside">
        {publishedHours.map((row) => (
          <p key={row.id}>
            {row.name}: {Object.entries(row.rules).length} rules, {row.source}.{' '}
            <button
              type="button"
              onClick={() => change({ ...paper.value, host: { ...host, ...asHostRules(row) } })}
            >
              Take over as this host’s rules
            </button>
          </p>
        ))}
        <p>
          What the host asks stands under <a href="#line">Line</a>, and can be changed and taken out there.
        </p>
      </div>
    </details>
  );
}
