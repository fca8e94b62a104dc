/** One person of the crew: yes or no by one tap, signed on and off where there are records, and what he or she could take over. */
import { useSignal } from '@preact/signals';
import type { OnSheet } from '../../../desk/crew.ts';
import { applyChange, type Change } from '../../../engine/outing/change.ts';
import type { Outing } from '../../../engine/outing/types.ts';
import { atWork } from '../../../engine/questions/crew/at-work.ts';
import type { Duty } from '../../../engine/things/duty.ts';
import { changedPaper } from '../../../papers/changed.ts';
import { slug } from '../../../papers/compile/line.ts';
import { turnWords } from '../../../papers/record/fields.ts';
import { nameIn } from '../../../records/names.ts';
import { refused, turns } from '../../../records/turns.ts';
import { tellChange } from '../../../words/change.ts';
import { tellTurn, turnTold } from '../../../words/records/record.ts';
import { clock, kept, person, record, saying } from '../../state/records.ts';
import { change, type Json, paper, speech } from '../../state/session.ts';

interface Props {
  readonly one: OnSheet;
  readonly outing: Outing;
}

export function Person({ one, outing }: Props) {
  const { name, does, signedOff, hours, could } = one;
  return (
    <li>
      <p>
        <strong>{name}</strong> {does}
      </p>
      <p>
        <small>
          {signedOff.length === 0 ? 'No competence shown.' : `${signedOff.join('; ')}.`}
          {hours === '' ? '' : ` ${hours}.`}
        </small>
      </p>
      <Says name={name} outing={outing} />
      <p class="row">
        {could.map((duty) => (
          <TakeOver key={duty} name={name} duty={duty} outing={outing} />
        ))}
      </p>
      {kept.value?.me && <SignOn name={name} />}
    </li>
  );
}

const asks = [
  { says: 'sober', rule: 'soberDeclared', words: 'Nothing drunk or taken that dulls' },
  { says: 'fit', rule: 'fitDeclared', words: 'Fit to work' },
] as const;

function Says({ name, outing }: { readonly name: string; readonly outing: Outing }) {
  const said = outing.crew?.find((one) => one.name === name);
  return (
    <>
      {asks
        .filter(({ rule }) => outing.host[rule]?.value)
        .map(({ says, words }) => (
          <p key={says} class="row" role="group" aria-label={`${name}: ${words}`}>
            <span>{words}?</span>
            {([true, false] as const).map((value) => (
              <button
                key={`${value}`}
                type="button"
                aria-pressed={said?.[says] === value}
                onClick={() => declare(name, says, said?.[says] === value ? undefined : value)}
              >
                {value ? 'yes' : 'no'}
              </button>
            ))}
          </p>
        ))}
    </>
  );
}

/** Into the crew of the paper; who is not listed yet comes onto the list. */
function declare(name: string, says: 'sober' | 'fit', value: boolean | undefined): void {
  const crew = (paper.value['crew'] ?? []) as readonly Json[];
  const at = crew.findIndex((one) => slug(String(one['name'])) === slug(name));
  const { [says]: _was, ...rest } = at < 0 ? ({ name } as Json) : crew[at];
  const next = value === undefined ? rest : { ...rest, [says]: value };
  change({ ...paper.value, crew: at < 0 ? [...crew, next] : crew.map((one, i) => (i === at ? next : one)) });
}

function TakeOver({
  name,
  duty,
  outing,
}: {
  readonly name: string;
  readonly duty: Duty;
  readonly outing: Outing;
}) {
  const by = outing.crew?.find((one) => one.name === name);
  const worker = atWork(outing).find((one) => one.duty === duty);
  if (!by || !worker) return null;
  const what: Change =
    duty === 'lookout'
      ? { kind: 'look-out', at: worker.said?.looksOutAt ?? '', by: by.id }
      : { kind: 'relieve', rider: worker.id, by: by.id };
  const words = tellChange(what, { ...speech.value, outing });
  return (
    <button
      type="button"
      onClick={() => change(changedPaper(paper.value, outing, applyChange(outing, what)) as Json)}
    >
      {words[0].toUpperCase() + words.slice(1)}
    </button>
  );
}

/** What can be said of the turn now; recorded, and its hours written into the outing. */
function SignOn({ name }: { readonly name: string }) {
  const fault = useSignal('');
  const free = useSignal('');
  const now = kept.value;
  if (!now) return null;
  const mine =
    [...turns(now.entries)].find(([who]) => slug(nameIn(now.names, who)) === slug(name))?.[1] ?? [];
  const last = mine.at(-1);
  const at = Date.parse(clock.now());
  const can = turnWords.filter((what) => refused(what, mine, at) === undefined);
  const say = async (what: (typeof turnWords)[number]): Promise<void> => {
    try {
      const since = what === 'on' && free.value !== '' ? { freeSince: free.value } : {};
      await record({ kind: 'turn', content: { person: await person(name), what, ...since } });
      fault.value = '';
    } catch (error) {
      fault.value = saying(error);
    }
  };
  return (
    <p class="row">
      {can.includes('on') && (
        <label>
          Free since{' '}
          <input
            type="datetime-local"
            value={free.value}
            onInput={(e) => {
              free.value = e.currentTarget.value;
            }}
          />
        </label>
      )}
      {can.map((what) => (
        <button key={what} type="button" onClick={() => void say(what)}>
          {turnTold[what][0].toUpperCase() + turnTold[what].slice(1)}
        </button>
      ))}
      {last && <small role="status">{tellTurn(last)}</small>}
      {fault.value !== '' && <span role="alert">{fault.value}</span>}
    </p>
  );
}
