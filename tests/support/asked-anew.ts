/**
 * What is asked again after a change, and what stands, against an inquiry begun from nothing. Runs in a bundle
 * (tests/support/bundled.ts).
 */
import { isDeepStrictEqual } from 'node:util';
import { inquire, type OpenInquiry } from '../../engine/answer/inquiry.ts';
import { questions } from '../../engine/answer/questions.ts';
import { applyChange, type Change } from '../../engine/outing/change.ts';
import type { Outing } from '../../engine/outing/types.ts';
import { isCar } from '../../engine/things/train/cars.ts';
import { dressed } from './dressed-outings.ts';

const care = { step: 1, samples: 20, couplerRuns: 2 };

/** A change of each kind that the outing has something for. */
function changesOf({ train: { vehicles }, riders, line, plannedSpeed }: Outing): Change[] {
  const cars = vehicles.filter(isCar);
  const last = cars[cars.length - 1];
  const ids = vehicles.map((v) => v.id);
  const free = cars
    .flatMap((v) => v.seats.map((s) => ({ vehicle: v.id, seat: s.id })))
    .find((s) => !riders.some((r) => r.vehicle === s.vehicle && r.seat === s.seat));
  const rider = riders.find((r) => r.duty === 'rider');
  const speed = (plannedSpeed ?? 3) / 2;
  return [
    { kind: 'slower-everywhere', speed },
    { kind: 'slower', from: line.length * 0.2, to: line.length * 0.4, speed },
    { kind: 'rail-state', state: 'sanded' },
    { kind: 'chains' },
    { kind: 'chain-size', grade: 30, size: 0.005 },
    { kind: 'chain-size', gap: 0, grade: 80, size: 0.01 },
    { kind: 'longer-coupling', gap: 0, by: 0.1 },
    { kind: 'coupler-raised', vehicle: ids[0], end: 'rear', by: 0.01 },
    { kind: 'part-lifted', vehicle: ids[0], part: 'ash pan', by: 0.01 },
    { kind: 'guard' },
    ...(cars.length > 1 ? [{ kind: 'fewer-cars' as const, leave: [last.id] }] : []),
    ...(rider ? [{ kind: 'fewer-riders' as const, leave: [rider.id] }] : []),
    ...(rider && free ? [{ kind: 'seat' as const, moves: [{ rider: rider.id, ...free }] }] : []),
    ...(last
      ? [
          { kind: 'ballast' as const, vehicle: last.id, mass: 20, height: 0.1 },
          { kind: 'parking-brake' as const, vehicle: last.id, force: 100 },
          { kind: 'order' as const, order: [ids[0], ...ids.slice(1).reverse()] },
        ]
      : []),
  ];
}

const scratch = (key: string, value: unknown): boolean =>
  key === 'trace' || (key === 'vehicle' && typeof value === 'object');

/** All but where a model keeps the last stop that it was asked for, and vehicles, which are as they stood. */
export function figures(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  if (Array.isArray(value)) return value.map(figures);
  const kept = Object.entries(value).filter(([key, of]) => !scratch(key, of));
  return Object.fromEntries(kept.map(([key, of]) => [key, figures(of)]));
}

/** A third of the changes for each seed, all with three. */
const share = (seed: number) => (_: Change, i: number) => i % 3 === seed % 3;

/** Every change of an outing with the questions that say something else than asked anew; and how many stood. */
export function askedAnew(seed: number): { readonly differ: string[]; readonly stood: number } {
  const outing = dressed(seed);
  const before = inquire(outing, care);
  for (const question of questions) before.of(question);
  let stood = 0;
  const differ = changesOf(outing)
    .filter(share(seed))
    .flatMap((change) => {
      const changed = applyChange(outing, change);
      const [after, anew]: OpenInquiry[] = [inquire(changed, care, before), inquire(changed, care)];
      return questions.flatMap((question) => {
        const said = after.of(question);
        if (said === before.of(question)) stood++;
        return isDeepStrictEqual(figures(said), figures(anew.of(question)))
          ? []
          : [`${seed} ${change.kind}: ${question.id}`];
      });
    });
  return { differ, stood };
}
