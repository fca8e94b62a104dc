/** How high may the seat be? */
import { useState } from 'preact/hooks';
import { riddenCars, usualSeat, type WrittenSeat } from '../../../desk/builder/seat-height.ts';
import type { BuilderProps } from './builder-room.tsx';
import { Answer, useBuilt } from './reckoned.tsx';

export function Seat({ outing, voice, of }: BuilderProps) {
  const cars = riddenCars(outing);
  const [changed, setChanged] = useState<Partial<WrittenSeat>>({});
  const usual = usualSeat(outing, voice.system);
  const car = cars.some((v) => v.id === changed.car) ? changed.car : usual.car;
  const written: WrittenSeat = { ...usual, ...changed, car: car ?? '' };
  const { system, wording } = voice;
  const reply = useBuilt(
    JSON.stringify([of, system, wording, written]),
    cars.length === 0 ? undefined : { build: { kind: 'seat', written }, outing, speech: { system, wording } },
  );
  if (cars.length === 0)
    return <p class="hero-line">Nobody sits on a car of this outing: seat its people first.</p>;
  const set = (changes: Partial<WrittenSeat>): void => setChanged({ ...changed, ...changes });
  return (
    <>
      <div class="asked">
        <label>
          Car
          <select value={written.car} onChange={(e) => set({ car: e.currentTarget.value })}>
            {cars.map((v) => (
              <option key={v.id} value={v.id}>
                {v.name}
              </option>
            ))}
          </select>
        </label>
        <label>
          who leans
          <select value={written.who} onChange={(e) => set({ who: e.currentTarget.value })}>
            <option value="all">all of the car</option>
            <option value="one">one alone</option>
          </select>
        </label>
        <label>
          how far
          <input value={written.lean} onInput={(e) => set({ lean: e.currentTarget.value })} />
        </label>
        <label>
          speed, if another
          <input value={written.speed} onInput={(e) => set({ speed: e.currentTarget.value })} />
        </label>
      </div>
      <Answer reply={reply} />
    </>
  );
}
