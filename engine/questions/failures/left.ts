/**
 * Which brakes are left when one thing fails and the crew do all they can with the rest.
 *
 * | fails | left |
 * |---|---|
 * | nothing | what answers the driver |
 * | hose or cable, couplers shut | as `wholeLeft` has it |
 * | supply of the train brake | automatic comes on; straight air while its reservoir is known to hold a full \
 * application; electric as wired; the engine's own brake, unless current works it too |
 * | driver | what a guard works from the guard's place |
 * | a vehicle's brake cut out by its cock | all but that one |
 * | a cock in the pipe left shut | what the driver still reaches |
 *
 * Common practice, no source.
 */

import type { OutingContext } from '../../outing/open.ts';
import { dayAir } from '../../things/air/day.ts';
import { brakeOf, isElectric, isThrough, keptIn } from '../../things/brake/kinds/index.ts';
import { reserves, whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { type GearState, gearStates, pipeCrosses } from '../../things/brake/system.ts';
import { after } from '../../things/brake/times.ts';
import { type BrakesLeft, brakesWhere, guardAt, type Left, wholeLeft } from '../part/brakes-left.ts';

export const failures = ['nothing', 'hose', 'supply', 'driver', 'cock', 'pipe'] as const;
export type Failure = (typeof failures)[number];

/** One way in which a thing may fail: behind or on a vehicle, by index. */
export interface Case {
  readonly failure: Failure;
  readonly vehicle?: number;
  readonly left: BrakesLeft;
}

/** Every single failure that this train can have. */
export function casesOf(context: OutingContext): Case[] {
  const { train } = context.outing;
  const states = gearStates(context.outing);
  const through = states.filter((s) => s.answers && isThrough(s.gear.kind));
  const braked = [...new Set(through.map((s) => s.vehicle))];
  const gaps = train.vehicles
    .slice(1)
    .flatMap((_, gap) => (through.some((s) => pipeCrosses(train, gap, s.gear.kind)) ? [gap] : []));
  const at = (failure: Failure, vehicle: number, left: BrakesLeft): Case => ({ failure, vehicle, left });
  return [
    { failure: 'nothing', left: brakesWhere(context, driven) },
    ...gaps.map((gap) => at('hose', gap, wholeLeft(context, gap, true))),
    ...(through.length > 0 ? [{ failure: 'supply' as const, left: withoutSupply(context, states) }] : []),
    { failure: 'driver', left: withoutDriver(context) },
    ...braked.map((v) => at('cock', v, brakesWhere(context, cutOut(v)))),
    ...gaps.map((gap) => at('pipe', gap, shutBehind(context, gap))),
  ];
}

const driven = ({ answers, signalled }: GearState): Left =>
  answers ? (signalled ? 'signalled' : 'works') : 'none';

const cutOut =
  (vehicle: number) =>
  (state: GearState): Left =>
    state.answers && state.vehicle === vehicle && isThrough(state.gear.kind) ? 'lost' : driven(state);

/** A guard works what is the guard's own. */
const guards = (context: OutingContext, { vehicle, gear, why }: GearState): boolean =>
  gear.workedBy === 'guard' && why === 'worked-by-another' && guardAt(context, vehicle);

function withoutSupply(context: OutingContext, states: readonly GearState[]): BrakesLeft {
  const air = dayAir(context.outing.conditions).pressure;
  const stored = reserves(context.loaded, air).some((r) => keptIn(r.kind) === 'main reservoir' && r.full > 0);
  const current = states.some((s) => s.answers && isElectric(s.gear.kind));
  return brakesWhere(context, (state) => {
    const { gear, answers } = state;
    if (!answers) return guards(context, state) && !isThrough(gear.kind) ? 'works' : 'none';
    if (keptIn(gear.kind) === 'main reservoir') return stored ? driven(state) : 'lost';
    if (brakeOf(gear.kind).worked === 'engine')
      return current && !gear.hand && !gear.parking ? 'unknown' : driven(state);
    if (!isThrough(gear.kind)) return driven(state);
    const { engineFails } = whenSupplyIsLost(gear);
    return engineFails === 'applies' ? 'alone' : engineFails === 'unknown' ? 'unknown' : 'lost';
  });
}

/** Nobody at the handle: nothing comes on by itself, for nothing has parted. */
function withoutDriver(context: OutingContext): BrakesLeft {
  const notice = context.outing.assumed.guardNotice;
  const left = brakesWhere(context, (state) =>
    guards(context, state) ? 'works' : state.answers ? 'lost' : 'none',
  );
  return {
    ...left,
    groups: left.groups.map((g) => ({
      ...g,
      deadTime: { ...after(notice, g.deadTime), how: 'assumed' },
    })),
  };
}

function shutBehind(context: OutingContext, gap: number): BrakesLeft {
  const { outing } = context;
  const train = { ...outing.train, pipeBrokenAfter: [...outing.train.pipeBrokenAfter, gap] };
  const idOf = ({ vehicle, gear }: GearState): string => `${vehicle} ${gear.id}`;
  const reached = new Set(gearStates({ ...outing, train }).flatMap((s) => (s.answers ? [idOf(s)] : [])));
  return brakesWhere(context, (state) =>
    state.answers && !reached.has(idOf(state)) ? 'lost' : driven(state),
  );
}
