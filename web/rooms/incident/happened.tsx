/** What happened, facts only: kind by one tap, what was seen, where; the rest for who has it. */
import { useSignal } from '@preact/signals';
import { incidentContent, type Written as Said } from '../../../desk/incident/content.ts';
import { ASK, dutiesFor } from '../../../desk/incident/duties.ts';
import { railStates } from '../../../engine/things/rail.ts';
import {
  type Hurt,
  hurts,
  type IncidentKind,
  incidentKinds,
} from '../../../papers/record/incident-fields.ts';
import { trips } from '../../../records/service.ts';
import { localTime } from '../../../records/time.ts';
import { blameIn, hurtWords, incidentWords } from '../../../words/records/incident.ts';
import { shortHash } from '../../../words/records/record.ts';
import { emptied } from '../../parts/emptied.ts';
import { Written } from '../../parts/written.tsx';
import { type Kept, person, record, saying } from '../../state/records.ts';
import { outing, speech } from '../../state/session.ts';
import { Anew, amending } from '../records/anew.tsx';
import { Chosen, written } from './fields.tsx';

const none = ['', 'not said'] as const;
const same = (of: readonly string[]) => [none, ...of.map((one) => [one, one] as const)];

export function Happened({ now }: { readonly now: Kept }) {
  const what = useSignal<IncidentKind | ''>('');
  const facts = useSignal('');
  const where = { place: useSignal(''), at: useSignal('') };
  const more = {
    vehicle: useSignal(''),
    axle: useSignal(''),
    side: useSignal(''),
    speed: useSignal(''),
    rail: useSignal(''),
    direction: useSignal(''),
    hurt: useSignal(''),
    departure: useSignal(''),
  };
  const saw = useSignal('');
  const when = useSignal('');
  const anew = useSignal('');
  const told = useSignal('');
  const kind = what.value;
  const blame = kind === '' ? undefined : blameIn(kind, facts.value);
  const keep = async (): Promise<void> => {
    const empty = emptied([what, facts, saw, when, anew, ...Object.values(where), ...Object.values(more)]);
    try {
      const { axle, ...rest } = written({ ...where, ...more });
      const said = {
        what: kind,
        facts: facts.value.trim(),
        ...rest,
        ...(axle === undefined ? {} : { axle: Number(axle) }),
      } as Said;
      const content = incidentContent(said, outing.value ?? undefined, speech.value.system);
      const seen = [];
      for (const name of saw.value.split(',').map((one) => one.trim()))
        if (name !== '') seen.push(await person(name));
      const { row } = await record({
        kind: 'incident',
        content: { ...content, ...(seen.length === 0 ? {} : { saw: seen }) },
        ...(when.value === '' ? {} : { said: localTime(new Date(when.value)) }),
        ...amending(anew),
      });
      told.value = `Recorded as ${shortHash(row.hash)}.`;
      empty();
    } catch (fault) {
      told.value = saying(fault);
    }
  };
  const places = outing.value?.line.places ?? [];
  const out = trips(now.entries).slice(-10).reverse();
  return (
    <section aria-label="What happened" class="happened">
      <h2>What happened</h2>
      <p class="kinds" role="group" aria-label="Kind">
        {incidentKinds.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={kind === one}
            onClick={() => {
              what.value = one;
            }}
          >
            {incidentWords[one]}
          </button>
        ))}
      </p>
      <p class="asked">
        <label>
          What was seen, in its order; facts only{' '}
          <textarea
            rows={3}
            value={facts.value}
            onInput={(e) => {
              facts.value = e.currentTarget.value;
            }}
          />
        </label>
      </p>
      {blame !== undefined && (
        <p role="status">
          “{blame}” says whose doing it was. What was seen helps more, and a record is never altered.
        </p>
      )}
      <div class="pairs">
        <Chosen
          label="Near"
          value={where.place}
          of={[none, ...places.map(({ name }) => [name, name] as const)]}
        />
        <Written label="Or along the line, by its boards" value={where.at} placeholder="380 ft" />
        <Chosen
          label="Worst that came to anybody"
          value={more.hurt}
          of={[none, ...hurts.map((one) => [one, hurtWords[one]] as const)]}
        />
      </div>
      <details>
        <summary>Vehicle and wheel, speed, rail, which run, who saw it, when</summary>
        <div class="pairs">
          <Chosen
            label="Vehicle that was first"
            value={more.vehicle}
            of={same(outing.value?.train.vehicles.map(({ name }) => name) ?? [])}
          />
          <Written label="Axle, from the front" value={more.axle} inputMode="numeric" />
          <Chosen label="Side, facing the way it ran" value={more.side} of={same(['left', 'right'])} />
          <Written label="Speed" value={more.speed} placeholder="3 mph" />
          <Chosen label="Rail there" value={more.rail} of={same(railStates)} />
          <Chosen label="Ran" value={more.direction} of={same(['forward', 'reverse'])} />
          <Chosen
            label="Which run"
            value={more.departure}
            of={[
              none,
              ...out.map(
                ({ departure, left, day }) => [departure.first.row.hash, `${left.train}, ${day}`] as const,
              ),
            ]}
          />
          <Written label="Who saw it, with commas; names stand apart" value={saw} />
          <Written label="When; now, if nothing is said" value={when} type="datetime-local" />
          <Anew now={now} kind="incident" value={anew} />
        </div>
      </details>
      <button
        type="button"
        class="main wide"
        disabled={kind === '' || facts.value.trim() === ''}
        onClick={() => void keep()}
      >
        Record it
      </button>
      <p role="status">{told.value}</p>
      {kind !== '' && <Duties what={kind} hurt={more.hurt.value} />}
    </section>
  );
}

function Duties({ what, hurt }: { readonly what: IncidentKind; readonly hurt: string }) {
  const found = dutiesFor({ what, ...(hurt === '' ? {} : { hurt: hurt as Hurt }) });
  if (found.length === 0) return null;
  return (
    <details>
      <summary>Does anybody have to be told? {found.length} examples</summary>
      <p>{ASK}</p>
      <ul>
        {found.map(({ id, country, where, says, deadline, source }) => (
          <li key={id}>
            <strong>{country}</strong> ({where}): {says} Deadline: {deadline}.{' '}
            <small>Source: {source}.</small>
          </li>
        ))}
      </ul>
    </details>
  );
}
