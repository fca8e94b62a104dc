/** Where the line is slow or shut, lifted by saying why; and how it is made so. */
import { useSignal } from '@preact/signals';
import { restrictionContent, type WrittenLimit } from '../../../desk/incident/content.ts';
import { incidents } from '../../../records/incidents.ts';
import { openDefects } from '../../../records/inspections.ts';
import { type OpenRestriction, openRestrictions } from '../../../records/restrictions.ts';
import { incidentWords, speedOrShut } from '../../../words/records/incident.ts';
import { shortHash } from '../../../words/records/record.ts';
import { emptied } from '../../parts/emptied.ts';
import { Written } from '../../parts/written.tsx';
import { type Kept, record, saying } from '../../state/records.ts';
import { outing, speech } from '../../state/session.ts';
import { Chosen, written } from './fields.tsx';

export function Limits({ now }: { readonly now: Kept }) {
  const open = openRestrictions(now.entries);
  // Numbered on from what happened, as on the strip.
  const before = incidents(now.entries).length;
  if (open.length === 0) return null;
  return (
    <section aria-label="Slow or shut">
      <h2>Slow or shut until it is lifted</h2>
      <ul class="records">
        {open.map((one, i) => (
          <Limit key={one.from.first.row.hash} limit={one} number={before + i + 1} />
        ))}
      </ul>
    </section>
  );
}

function Limit({
  limit: { from, since },
  number,
}: {
  readonly limit: OpenRestriction;
  readonly number: number;
}) {
  const { line, from: begins, to, speed, why } = from.content as unknown as WrittenLimit;
  const { hash } = from.first.row;
  const done = useSignal('');
  const fault = useSignal('');
  const lift = async (): Promise<void> => {
    try {
      await record({ kind: 'lifted', content: { restriction: hash, why: done.value.trim() } });
    } catch (error) {
      fault.value = saying(error);
    }
  };
  return (
    <li>
      <span>
        {number}. <strong>{speedOrShut(speed)}</strong> {line}, {begins} to {to}: {why} (since {since},{' '}
        {shortHash(hash)})
      </span>
      <span class="written">
        <label>
          Why it need not be any more{' '}
          <input
            value={done.value}
            onInput={(e) => {
              done.value = e.currentTarget.value;
            }}
          />
        </label>
        <button type="button" disabled={done.value.trim() === ''} onClick={() => void lift()}>
          Lift it
        </button>
      </span>
      {fault.value !== '' && <p role="alert">{fault.value}</p>}
    </li>
  );
}

export function SetLimit({ now }: { readonly now: Kept }) {
  const [from, to, speed, why] = [useSignal(''), useSignal(''), useSignal(''), useSignal('')];
  const because = useSignal('');
  const shut = useSignal(false);
  const told = useSignal('');
  const line = outing.value?.line.name;
  const recent = incidents(now.entries).slice(-10).reverse();
  const amiss = openDefects(now.entries).filter(({ of }) => of === line);
  const ready =
    line !== undefined &&
    [from, to, why].every(({ value }) => value.trim() !== '') &&
    (shut.value || speed.value.trim() !== '');
  const set = async (): Promise<void> => {
    const empty = emptied([from, to, speed, why, because]);
    try {
      const { speed: most, ...rest } = written({ from, to, why, because, speed });
      const said = { line, ...rest, ...(shut.value ? {} : { speed: most }) } as WrittenLimit;
      const content = restrictionContent(said, outing.value ?? undefined, speech.value.system);
      const { row } = await record({ kind: 'restriction', content });
      told.value = `Recorded as ${shortHash(row.hash)}. It stands in the outing now, and the answer follows it.`;
      empty();
      shut.value = false;
    } catch (fault) {
      told.value = saying(fault);
    }
  };
  return (
    <section aria-label="Make the line slow or shut">
      <h2>Make {line ?? 'the line'} slow or shut</h2>
      <div class="pairs">
        <Written label="From, by its boards" value={from} placeholder="120 ft" />
        <Written label="To" value={to} placeholder="200 ft" />
        <p class="asked">
          <label class="tick">
            <input
              type="checkbox"
              checked={shut.value}
              onChange={(e) => {
                shut.value = e.currentTarget.checked;
              }}
            />{' '}
            Shut to every train
          </label>
        </p>
        {!shut.value && <Written label="Greatest speed there" value={speed} placeholder="3 mph" />}
        <Written label="Why, as drivers are told it" value={why} />
        <Chosen
          label="Because of"
          value={because}
          of={[
            ['', 'nothing that is recorded'],
            ...amiss.map(({ inspection, what }) => [inspection.first.row.hash, what] as const),
            ...recent.map(
              ({ from: { first }, said, day }) =>
                [first.row.hash, `${incidentWords[said.what]}, ${day}`] as const,
            ),
          ]}
        />
      </div>
      <button type="button" class="main wide" disabled={!ready} onClick={() => void set()}>
        {shut.value ? 'Shut it' : 'Make it slow'}
      </button>
      <p role="status">{told.value}</p>
    </section>
  );
}
