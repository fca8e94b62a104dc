/** The vehicle that is tested by itself; or those that ran, and whether riders were aboard. */
import { single } from '../../../desk/make-up.ts';
import type { Guide } from '../../../desk/measured/guide.ts';
import { Tick } from '../../parts/tick.tsx';
import { paper } from '../../state/session.ts';
import type { Draft } from './drafts.ts';

interface Props {
  readonly guide: Guide;
  readonly draft: Draft;
  readonly set: (draft: Draft) => void;
}

export function Madewith({ guide, draft, set }: Props) {
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
            value={draft.vehicle ?? all[all.length - 1]?.id}
            onChange={(e) => set({ ...draft, vehicle: e.currentTarget.value })}
          >
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
