/** The make-up of the train: order, equipment from the shed, and who sits where, drawn to scale. */
import '../../look/rooms.css';
import './train.css';
import { useEffect } from 'preact/hooks';
import { Counts } from '../../parts/counts.tsx';
import { CountsBar } from '../../parts/counts-bar.tsx';
import { carried } from '../../parts/drag.ts';
import { Inks } from '../../parts/inks.tsx';
import { boarded } from '../../parts/make-up.ts';
import { openShed } from '../../parts/shed.ts';
import { outing, paper, problems, told as session, voice } from '../../state/session.ts';
import { CarCard, carryRider, initials } from './car-card.tsx';
import { NextRider, nextRider } from './next-rider.tsx';
import { RiderPanel } from './rider-panel.tsx';
import { ShedRow } from './shed-row.tsx';
import { chosen, lifted, seatUnder, step, told, train } from './state.ts';
import { Yard } from './yard.tsx';

export function Room() {
  useEffect(() => {
    void openShed();
    return () => {
      lifted.value = null;
      chosen.value = null;
    };
  }, []);
  if (!train.value || !voice.value) return null;
  const broken = problems.value.length > 0;
  return (
    <div class="make-up">
      <Inks />
      <h1>Train and riders</h1>
      {broken && <p>Mend the papers first, or undo: the make-up rests until they can be read.</p>}
      <CountsBar />
      <div inert={broken}>
        <Yard />
        <ShedRow />
        <h2>Riders</h2>
        <p>
          Tap an empty seat to put the next rider there. Tap a rider to take them in hand; drag them to
          another seat. The small arrow under a car marks the middle of its weight.
        </p>
        <NextRider />
        <Platform />
        <ol class="cars">
          {train.value.vehicles.map((v) => (
            <CarCard key={v.vehicle.id} loaded={v} />
          ))}
        </ol>
      </div>
      <Counts told={session.value} />
      <p class="unseen" role="status">
        {told.value}
      </p>
      {carried.value && (
        <div
          class="ghost"
          style={{ left: `${carried.value.x}px`, top: `${carried.value.y}px` }}
          aria-hidden="true"
        >
          {carried.value.label}
        </div>
      )}
    </div>
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
