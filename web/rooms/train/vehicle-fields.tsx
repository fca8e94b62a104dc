/** All that is written of the vehicle in hand, beside its drawing; what is written once for several alike says so. */
import { eachApart, entryAt, membersOf } from '../../../desk/make-up.ts';
import { fileForm } from '../../../papers/fields.ts';
import { Group } from '../../parts/form/group.tsx';
import { paper } from '../../state/session.ts';
import { lifted, step } from './state.ts';

export function VehicleFields() {
  const hand = lifted.value;
  if (hand?.from !== 'train') return null;
  const { entry, alike } = entryAt(paper.value, hand.index);
  const member = membersOf(paper.value)[entry];
  if (!member) return null;
  return (
    <section class="paper vehicle-fields" aria-label={`Figures of ${hand.label}`}>
      <h2>{hand.label}: its figures</h2>
      {alike > 1 && (
        <p class="row">
          Written once for all {alike} alike: a change is of all of them.
          <button
            type="button"
            onClick={() => step(eachApart(paper.value), `${hand.label} is written by itself.`)}
          >
            Only this one
          </button>
        </p>
      )}
      <Group
        key={`${entry}`}
        json={member.vehicle}
        form={fileForm('vehicle')}
        path={['train', 'vehicles', entry, 'vehicle']}
        always={['centreHeight', 'bearing', 'brakes', 'seats']}
      />
    </section>
  );
}
