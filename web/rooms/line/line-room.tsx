/** Line and rules: the day, the line, the host's rules; each field as people write it. */
import '../../look/rooms.css';
import './line.css';
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { fileForm } from '../../../papers/fields.ts';
import { place } from '../../doors.ts';
import { ChangedBar } from '../../parts/changed-bar.tsx';
import { Choices } from '../../parts/form/choices.ts';
import { Group } from '../../parts/form/group.tsx';
import { choicesFor } from '../../parts/outing-choices.ts';
import { SurveyImport } from '../../parts/survey-import.tsx';
import { paper } from '../../state/session.ts';
import { PlanView } from '../answer/plan-view.tsx';
import { StripView } from '../answer/strip-view.tsx';
import { HostRules } from './host-rules.tsx';

const parts = [
  { id: 'day', title: 'The day', View: Day },
  { id: 'line', title: 'Line', View: LinePaper },
  { id: 'host', title: "Host's rules", View: Host },
] as const;

/** Kept while another room is looked at. */
const open = signal<(typeof parts)[number]['id']>('day');

export function Room() {
  const at = place.value;
  useEffect(() => {
    const asked = parts.find(({ id }) => id === at.part);
    if (asked) open.value = asked.id;
  }, [at]);
  const { View } = parts.find((p) => p.id === open.value) ?? parts[0];
  return (
    <Choices.Provider value={choicesFor}>
      <h1>Line and rules</h1>
      <p>
        Write figures as you would: 12 ft 6 in, 4-7/16 in, 1 in 80, 2 %, 20 inHg, 60 psi, 7 mph, 10 km/h. What
        was understood stands under each.
      </p>
      <p class="row" role="group" aria-label="Papers">
        {parts.map((p) => (
          <button
            type="button"
            key={p.id}
            aria-pressed={open.value === p.id}
            onClick={() => {
              open.value = p.id;
            }}
          >
            {p.title}
          </button>
        ))}
      </p>
      <View key={open.value} />
      <ChangedBar />
    </Choices.Provider>
  );
}

function Day() {
  return (
    <section class="paper">
      <Group
        json={paper.value}
        form={fileForm('outing')}
        path={[]}
        without={['riders']}
        always={['date', 'direction', 'plannedSpeed']}
      />
    </section>
  );
}

/** The table with the strip live beside it, above it on a phone. */
function LinePaper() {
  return (
    <div class="beside">
      <div class="beside-strip">
        <StripView />
        <PlanView />
      </div>
      <section class="paper">
        <details class="fold">
          <summary>Take a line from a survey</summary>
          <div class="inside">
            <SurveyImport />
          </div>
        </details>
        <Group
          json={paper.value['line']}
          form={fileForm('line')}
          path={['line']}
          always={['curves', 'places', 'speedLimits', 'sights', 'railStretches']}
        />
      </section>
    </div>
  );
}

function Host() {
  return (
    <section class="paper">
      <HostRules json={paper.value['host']} form={fileForm('host')} />
    </section>
  );
}
