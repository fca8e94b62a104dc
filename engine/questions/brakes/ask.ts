/** What the brakes have to say: how they fill, how evenly the train is braked and what slides first, what is left without the supply. */
import { GRAVITY } from '../../base/constants.ts';
import { amount } from '../../base/quantity.ts';
import { pick } from '../../base/spread.ts';
import type { SumRef } from '../../base/sum.ts';
import { asWritten, type OutingContext, timesFound } from '../../outing/open.ts';
import { worstRail } from '../../outing/rails.ts';
import { fillTrain, type TrainFill } from '../../things/brake/fill.ts';
import { type AirKind, airKinds } from '../../things/brake/kinds/index.ts';
import { reserves, whenSupplyIsLost } from '../../things/brake/reserve.ts';
import { brakeRatios, type GroupRatio } from '../../things/brake/slide.ts';
import { gearStates } from '../../things/brake/system.ts';
import { unsanded } from '../../things/rail.ts';
import { taken } from '../assumptions/taken.ts';
import type { Finding } from '../finding.ts';
import { makeFinding } from '../make.ts';
import type { Findings } from '../question.ts';
import { type Filling, fillingFindings } from './filling.ts';
import { standing } from './standing.ts';
import { idOf } from './vehicle-id.ts';
import { type WithoutSupply, withoutSupplyFindings } from './without-supply.ts';

export interface BrakeData extends Filling, WithoutSupply {
  /** First to slide first. */
  readonly ratios: readonly GroupRatio[];
}

export function askBrakes(opened: OutingContext): Findings<BrakeData> {
  const context = asWritten(opened);
  const { outing, loaded, air } = context;
  const states = gearStates(outing);
  const answers = new Set(states.flatMap((s) => (s.answers ? [s.gear] : [])));
  const kinds = airKinds.filter((kind) =>
    states.some((s) => s.answers && s.gear.kind === kind && !s.gear.force),
  );
  const fill =
    (action: 'apply' | 'release') =>
    (kind: AirKind): TrainFill =>
      fillTrain(loaded, kind, action, air.pressure, outing.assumed.brakeParts);
  const data: BrakeData = {
    apply: kinds.map(fill('apply')),
    release: kinds.map(fill('release')),
    ratios: brakeRatios(loaded, outing.assumed, air, (gear) => answers.has(gear)),
    reserves: reserves(loaded, air.pressure),
    standing: standing(context),
    losses: states.map(({ vehicle, gear }) => ({ vehicle, gear, loss: whenSupplyIsLost(gear) })),
  };
  return {
    data,
    findings: [
      ...fillingFindings(context, data),
      ...uneven(context, data.ratios),
      ...slidesFirst(context, data.ratios),
      ...withoutSupplyFindings(context, data),
      ...partsTaken(opened, data),
      ...taken(
        'another-driver',
        'time until another driver, signalled by the leading one, brakes',
        outing.assumed.anotherDriver,
        states.filter((s) => s.signalled).map((s) => outing.train.vehicles[s.vehicle].name),
      ),
    ],
  };
}

/** What stands in where parts, and not a stopwatch, tell the times. */
function partsTaken(opened: OutingContext, { apply }: BrakeData): Finding[] {
  const { brakeParts } = opened.outing.assumed;
  const { vehicles } = opened.outing.train;
  const untimed = timesFound(opened).filter((t) => t.gear.deadTime === undefined);
  const names = (electric: boolean): string[] =>
    untimed
      .flatMap((t) =>
        (t.gear.kind === 'electric') === electric ? vehicles.filter((v) => v.id === t.vehicle) : [],
      )
      .map((v) => v.name);
  const byRule = apply.flatMap(({ gears }) => gears.filter((g) => g.assumed.length > 0));
  return [
    ...taken(
      'brake-parts/mechanical',
      'handle, valve and slack before the air counts',
      brakeParts.mechanical,
      names(false),
    ),
    ...taken(
      'brake-parts/electric-dead',
      'dead time of the electric brake',
      brakeParts.electricDead,
      names(true),
    ),
    ...taken(
      'brake-parts/by-rule',
      'volumes of the brake taken by rule',
      brakeParts.byRule,
      byRule.map((g) => vehicles[g.vehicle].name),
    ),
  ];
}

/** Vehicles braked much more strongly than others for their weight. */
function uneven(context: OutingContext, ratios: readonly GroupRatio[]): Finding[] {
  if (ratios.length < 2) return [];
  const [strong, weak] = [ratios[0], ratios[ratios.length - 1]];
  const { value: most, source } = context.outing.assumed.practice.uneven;
  if (strong.vehicle === weak.vehicle || strong.loaded <= most * weak.loaded) return [];
  return [
    // Design advice: nothing is used up, so it carries no margin.
    makeFinding('brake-ratio-uneven', 'notes', 'brakes', {
      where: { vehicle: idOf(context, strong.vehicle) },
      found: amount(strong.loaded, 'ratio'),
      required: amount(most * weak.loaded, 'ratio'),
      facts: { weak: idOf(context, weak.vehicle), least: amount(weak.loaded, 'ratio') },
      sum: ratioSum(strong),
      source,
    }),
  ];
}

function slidesFirst(context: OutingContext, ratios: readonly GroupRatio[]): Finding[] {
  const first = ratios[0];
  if (!first) return [];
  const { outing } = context;
  const adhesion = unsanded(outing.assumed, worstRail(context, outing.conditions.railState));
  const vehicle = outing.train.vehicles[first.vehicle];
  const low = pick(adhesion, -1);
  if (first.empty <= low && first.loaded <= low) return [];
  return [
    makeFinding('slides-first', 'notes', 'brakes', {
      where: { vehicle: vehicle.id },
      found: amount(first.loaded, 'ratio'),
      required: amount(low, 'ratio'),
      margin: low / first.loaded - 1,
      facts: {
        group: vehicle.groups[first.group].name,
        empty: amount(first.empty, 'ratio'),
        order: ratios
          .map((r) => `${outing.train.vehicles[r.vehicle].name}: ${groupName(context, r)}`)
          .join(', '),
      },
      sum: ratioSum(first),
      source: adhesion.source ?? 'rail state',
      sure: 'assumed',
    }),
  ];
}

/** Brake ratio of one group, loaded as today. */
const ratioSum = ({ force: { value }, loaded }: GroupRatio): SumRef => ({
  id: 'brake-ratio',
  inputs: { force: value, mass: value / loaded / GRAVITY },
});

const groupName = ({ outing }: OutingContext, r: GroupRatio): string =>
  outing.train.vehicles[r.vehicle].groups[r.group].name;
