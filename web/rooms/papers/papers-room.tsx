/** The papers behind the answer: the day, the line, the host's rules, every vehicle; each field as people write it. */
import '../../look/rooms.css';
import './papers.css';
import { signal, useSignal } from '@preact/signals';
import { fileForm } from '../../../papers/fields.ts';
import { Choices } from '../../parts/form/choices.ts';
import { Group } from '../../parts/form/group.tsx';
import { type Path, valueAt } from '../../parts/form/path.ts';
import { SurveyImport } from '../../parts/survey-import.tsx';
import { type Json, outing, paper } from '../../state/session.ts';
import { StripView } from '../answer/strip-view.tsx';
import { HostRules } from './host-rules.tsx';
import { Shelf } from './shelf.tsx';

const parts = [
  { id: 'day', title: 'The day', View: Day },
  { id: 'line', title: 'Line', View: LinePaper },
  { id: 'host', title: "Host's rules", View: Host },
  { id: 'vehicles', title: 'Vehicles', View: Vehicles },
  { id: 'riders', title: 'Riders', View: Riders },
] as const;

/** Kept while another room is looked at. */
const open = signal<(typeof parts)[number]['id']>('day');

export function Room() {
  const { View } = parts.find((p) => p.id === open.value) ?? parts[0];
  return (
    <Choices.Provider value={choicesFor}>
      <h1>Line, rules, day</h1>
      <Shelf />
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
    </Choices.Provider>
  );
}

/** Names that the outing itself gives: vehicles and seats for riders, axle groups for brakes. */
function choicesFor(path: Path): readonly string[] | undefined {
  const key = path[path.length - 1];
  const vehicles = outing.value?.train.vehicles ?? [];
  if (path[0] === 'riders' && key === 'vehicle') return vehicles.map((v) => v.id);
  if (path[0] === 'riders' && key === 'seat') {
    const at = valueAt(paper.value, [...path.slice(0, -1), 'vehicle']);
    const cars = vehicles.filter((v) => at === undefined || v.id === at);
    return [...new Set(cars.flatMap((v) => v.seats.map((s) => s.name)))];
  }
  if (path.includes('brakes') && key === 'on') {
    const groups = valueAt(paper.value, [...path.slice(0, path.indexOf('brakes')), 'axleGroups']);
    return Array.isArray(groups) ? groups.map((g: Json) => String(g['name'])) : undefined;
  }
  return path.includes('pipeBrokenAfter') ? vehicles.map((v) => v.id) : undefined;
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

function Vehicles() {
  const chosen = useSignal(0);
  const members = (valueAt(paper.value, ['train', 'vehicles']) as Json[] | undefined) ?? [];
  const at = Math.min(chosen.value, members.length - 1);
  const call = (m: Json): string =>
    `${m['name'] ?? valueAt(m, ['vehicle', 'name']) ?? '?'}${Number(m['count'] ?? 1) > 1 ? ` × ${m['count']}` : ''}`;
  return (
    <section class="paper">
      <Group json={paper.value['train']} form={fileForm('train')} path={['train']} without={['vehicles']} />
      <p class="row" role="group" aria-label="Vehicles of the train">
        {members.map((m, i) => (
          <button
            type="button"
            key={i}
            aria-pressed={i === at}
            onClick={() => {
              chosen.value = i;
            }}
          >
            {call(m)}
          </button>
        ))}
        <a href="#train">Change the make-up</a>
      </p>
      {members[at] && (
        <Group
          key={at}
          json={members[at]['vehicle']}
          form={fileForm('vehicle')}
          path={['train', 'vehicles', at, 'vehicle']}
          always={['centreHeight', 'bearing', 'brakes', 'seats']}
        />
      )}
    </section>
  );
}

function Riders() {
  const form = fileForm('outing');
  const riders = { ...form, fields: form.fields.filter((f) => f.key === 'riders') };
  return (
    <section class="paper">
      <Group
        json={paper.value}
        form={riders}
        path={[]}
        always={['riders']}
        columns={['weight', 'typical', 'vehicle', 'seat']}
      />
    </section>
  );
}
