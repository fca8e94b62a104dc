/** The vehicle that is tested by itself; or those that ran, and whether riders were aboard. */
import { single } from '../../../desk/make-up.ts';
import type { Guide } from '../../../desk/measured/guide.ts';
import { usualName } from '../../../desk/measured/record.ts';
import type { Draft } from '../../parts/drafts.ts';
import { Tick } from '../../parts/tick.tsx';
import { paper } from '../../state/session.ts';

interface Props {
  readonly guide: Guide;
  readonly draft: Draft;
  /** Id of the vehicle that is tested by itself; undefined: nobody has said which. */
  readonly vehicle: string | undefined;
  readonly set: (draft: Draft) => void;
}

export function MadeOf({ guide, draft, vehicle, set }: Props) {
  const all = single(paper.value).map(({ id, name, vehicle }) => ({
    id: `${id}`,
    name: name ?? `${vehicle['name']}`,
  }));
  if (guide.with === 'vehicle')
    return (
      <p class="made-with">
        <label>
          Which vehicle{' '}
          <select
            value={vehicle ?? ''}
            onChange={(e) => set(chosen(draft, guide, all, e.currentTarget.value))}
          >
            <option value="">choose …</option>
            {all.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </p>
    );
  const { without = [] } = draft;
  return (
    <fieldset class="made-with">
      <legend>What ran</legend>
      {all.map(({ id, name }) => (
        <Tick
          key={id}
          on={!without.includes(id)}
          set={(on) => set({ ...draft, without: on ? without.filter((w) => w !== id) : [...without, id] })}
        >
          {name}
        </Tick>
      ))}
      <Tick on={draft.riders === true} set={(riders) => set({ ...draft, riders })}>
        the riders of the outing were aboard (never before the brakes are proved); else the driver alone
      </Tick>
    </fieldset>
  );
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Its name goes into the record's, unless somebody has called that otherwise: each car's test is a source of its own. */
function chosen(draft: Draft, { kind }: Guide, all: readonly Named[], id: string): Draft {
  const { vehicle, ...rest } = draft;
  const { name, date } = draft.record as { name?: string; date: string };
  const nameOf = (of: string | undefined): string =>
    usualName(kind, date, all.find((one) => one.id === of)?.name);
  const record = name === nameOf(vehicle) ? { ...draft.record, name: nameOf(id) } : draft.record;
  return id === '' ? { ...rest, record } : { ...rest, record, vehicle: id };
}
