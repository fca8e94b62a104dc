/** The platform: who rides, where they sit, how much each car keeps on its lightest wheel, and what one move does. */

import { boarded } from '../../../desk/make-up.ts';
import { fileForm } from '../../../papers/fields.ts';
import { Changed } from '../../parts/changed.tsx';
import { Group } from '../../parts/form/group.tsx';
import { People } from '../../parts/people.tsx';
import { SeatThem } from '../../parts/seat-them.tsx';
import { asked, outing, paper, voice } from '../../state/session.ts';
import { Trying } from '../answer/trying.tsx';
import { CarCard, carryRider, initials } from './car-card.tsx';
import { Margins } from './margins.tsx';
import { NextRider, nextRider } from './next-rider.tsx';
import { RiderPanel } from './rider-panel.tsx';
import { chosen, seatUnder, step, train } from './state.ts';

const everybody = {
  ...fileForm('outing'),
  fields: fileForm('outing').fields.filter((f) => f.key === 'riders'),
};

export function ThePeople({ rests }: { readonly rests: boolean }) {
  const v = voice.value;
  if (!train.value || !v) return null;
  return (
    <>
      <div inert={rests}>
        <div class="platform-now">
          {outing.value && <People outing={outing.value} />}
          {outing.value && <Margins of={outing.value} />}
        </div>
        <p>
          Tap an empty seat to put the next rider there. Tap a rider to take them in hand; drag them to
          another seat. The small arrow under a car marks the middle of its weight.
        </p>
        <NextRider />
        <Platform />
        <ol class="cars">
          {train.value.vehicles.map((loaded) => (
            <CarCard key={loaded.vehicle.id} loaded={loaded} />
          ))}
        </ol>
      </div>
      {asked.value && asked.value.trials.length > 0 && <Trying asked={asked.value} />}
      <Changed />
      <SeatThem voice={v} />
      <details class="fold">
        <summary>Everybody as a table</summary>
        <section class="paper">
          <Group
            json={paper.value}
            form={everybody}
            path={[]}
            always={['riders']}
            columns={['weight', 'typical', 'vehicle', 'seat']}
          />
        </section>
      </details>
    </>
  );
}
/** Riders without a seat. */
function Platform() {
  const waiting = (outing.value?.riders ?? [])
    .map((rider, index) => ({ rider, index }))
    .filter(({ rider }) => rider.vehicle === undefined || rider.seat === undefined);
  const inHand = waiting.find((w) => w.index === chosen.value);
  return (
    <section
      class={seatUnder.value === 'platform' ? 'platform under' : 'platform'}
      data-platform="platform"
      aria-label="On the platform"
    >
      <p class="row">
        <strong>On the platform:</strong>
        {waiting.length === 0 && <span>nobody</span>}
        {waiting.map(({ rider, index }) => (
          <button
            type="button"
            key={rider.id}
            class={`token ${rider.ageGroup}`}
            aria-pressed={chosen.value === index}
            aria-label={`${rider.name}, on the platform`}
            onClick={() => {
              chosen.value = chosen.value === index ? null : index;
            }}
            onPointerDown={(e) => carryRider(e, index, rider.name)}
          >
            {initials(rider)}
          </button>
        ))}
        <button
          type="button"
          onClick={() => step(boarded(paper.value, nextRider()), 'A rider waits on the platform.')}
        >
          One more
        </button>
      </p>
      {inHand && <RiderPanel key={inHand.rider.id} index={inHand.index} />}
    </section>
  );
}
