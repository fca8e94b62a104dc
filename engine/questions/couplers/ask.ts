/**
 * Do the couplings bear it? Steady pull and the peaks of rough handling against their stated working load, and
 * what the peaks do sideways in curves. See docs/decisions for what each is compared with, and why.
 */

import { amount } from '../../base/quantity.ts';
import type { OutingContext } from '../../outing/open.ts';
import type { BrakedGroup } from '../../things/brake/force.ts';
import type { Vehicle } from '../../things/vehicle/types.ts';
import { taken } from '../assumptions/taken.ts';
import { inCurves, type PeakInCurves } from '../balance/climbing.ts';
import { careful } from '../balance/draws.ts';
import type { BalanceLook } from '../balance/look.ts';
import { dragsOf, steadyDraws, steadyPulls } from '../balance/pull.ts';
import { climbFinding } from '../balance/say-climb.ts';
import type { Finding, Severity } from '../finding.ts';
import { makeFinding, marginOf } from '../make.ts';
import type { Findings } from '../question.ts';
import { cautiousPeaks, type PeakScenario, type Peaks } from './peaks.ts';

export interface CouplerGap {
  readonly gap: number;
  /** Working load of the weaker coupler, N; null: not stated. */
  readonly strength: number | null;
  /** Both couplers' strength is stated. */
  readonly known: boolean;
  /** Greatest steady pull on the run, N, passed in one draw of a hundred, and the head's chainage there, m. */
  readonly steady: number;
  readonly steadyAt: number;
  /** Greatest peak pull and push, N, and the handling that makes them. */
  readonly pull: PeakForce;
  readonly push: PeakForce;
}

interface PeakForce {
  readonly force: number;
  readonly scenario: PeakScenario | null;
}

/** A peak's sideways part at its worst, one for each handling and way of the force. */
export interface CurvedPeak extends PeakInCurves {
  readonly scenario: PeakScenario;
  readonly way: 'pull' | 'push';
}

export interface CouplerData {
  readonly gaps: readonly CouplerGap[];
  readonly curves: readonly CurvedPeak[];
}

/** The brake may have to be used in a curve; how hard an engine starts, or brakes by itself, is in a hand. */
const severities: Readonly<Record<PeakScenario, Severity>> = {
  'full-brake': 'limits',
  'start-bunched': 'notes',
  'run-in': 'notes',
};

export function askCouplers(
  context: OutingContext,
  groups: readonly BrakedGroup[],
  look: BalanceLook,
  runs?: number,
): Findings<CouplerData> {
  const peaks = cautiousPeaks(context, groups, runs);
  const data = { gaps: gapsOf(context, look, peaks), curves: peaks.flatMap((p) => curved(context, look, p)) };
  const overloaded = data.gaps.flatMap((gap) => overload(context, gap));
  const inCurve = curveFindings(context, data.curves);
  const decides = inCurve.length > 0 || data.gaps.some((g) => g.strength !== null);
  return {
    findings: [
      ...overloaded,
      ...strengthUnknown(context, data.gaps),
      ...inCurve,
      ...(decides ? takenForPeaks(context, peaks) : []),
    ],
    data,
  };
}

/** What the peaks stand on that nobody stated. */
function takenForPeaks({ outing }: OutingContext, peaks: readonly Peaks[]): Finding[] {
  const { coupler, couplerSlack, couplerStiffness, throttle } = outing.assumed;
  const { vehicles } = outing.train;
  const without = (of: 'slack' | 'stiffness'): string[] =>
    vehicles.flatMap((v, i) => {
      const ends = [...(i > 0 ? [v.front] : []), ...(i < vehicles.length - 1 ? [v.rear] : [])];
      return ends.some((end) => end[of] === undefined) ? [v.name] : [];
    });
  const engines = peaks.some((p) => p.scenario === 'start-bunched')
    ? vehicles.filter((v) => v.traction).map((v) => v.name)
    : [];
  return [
    ...taken('coupler-slack', 'free movement of couplers', couplerSlack, without('slack')),
    ...taken('coupler-stiffness', 'stiffness of couplers', couplerStiffness, without('stiffness')),
    ...taken('coupler/damping', 'damping of couplers', coupler.damping, [outing.train.name]),
    ...taken('throttle', 'time in which the throttle is opened', throttle, engines),
  ];
}

function gapsOf(context: OutingContext, { track, grid }: BalanceLook, peaks: readonly Peaks[]): CouplerGap[] {
  const { vehicles } = context.loaded;
  const drags = dragsOf(context.loaded, track, grid);
  const steady = steadyPulls(context.loaded, drags, grid.length, 'running');
  const drawn = steadyDraws(context, drags, grid.length);
  return vehicles.slice(1).map((rear, gap) => {
    const along = steady.subarray(gap * grid.length, (gap + 1) * grid.length);
    const most = along.reduce((at, pull, j) => (pull > along[at] ? j : at), 0);
    return {
      gap,
      ...strengthOf(vehicles[gap].vehicle, rear.vehicle),
      steady: Math.max(0, careful(drawn(gap, most))),
      steadyAt: grid[most],
      pull: greatest(peaks, 'pull', gap),
      push: greatest(peaks, 'push', gap),
    };
  });
}

function strengthOf(front: Vehicle, rear: Vehicle): { strength: number | null; known: boolean } {
  const stated = [front.rear.strength, rear.front.strength].flatMap((s) => (s ? [s.low] : []));
  return { strength: stated.length > 0 ? Math.min(...stated) : null, known: stated.length === 2 };
}

function greatest(peaks: readonly Peaks[], way: 'pull' | 'push', gap: number): PeakForce {
  let most: PeakForce = { force: 0, scenario: null };
  for (const p of peaks) if (p[way][gap] > most.force) most = { force: p[way][gap], scenario: p.scenario };
  return most;
}

/** Starting, the train stands; otherwise it runs as fast as its balance lets it. */
function curved(context: OutingContext, look: BalanceLook, peaks: Peaks): CurvedPeak[] {
  const { scenario } = peaks;
  const speed = scenario === 'start-bunched' ? new Float64Array(look.grid.length) : look.permitted;
  return (['pull', 'push'] as const)
    .filter((way) => peaks[way].some((force) => force > 0))
    .map((way) => {
      const pulls = peaks.runs.map((gap) => gap[way].map((force) => (way === 'pull' ? force : -force)));
      return { scenario, way, ...inCurves(context, look, speed, pulls) };
    });
}

function overload({ outing }: OutingContext, row: CouplerGap): Finding[] {
  const { gap, strength, known, steady, steadyAt, pull } = row;
  if (strength === null) return [];
  const way = steady > strength ? 'steady' : 'peak';
  const found = way === 'steady' ? steady : pull.force;
  if (found <= strength) return [];
  return [
    makeFinding('coupler-overloaded', way === 'steady' ? 'forbids' : 'limits', 'parting', {
      where: {
        gap,
        vehicle: outing.train.vehicles[gap].id,
        ...(way === 'steady' ? { from: steadyAt, to: steadyAt } : {}),
      },
      found: amount(found, 'force'),
      required: amount(strength, 'force'),
      margin: marginOf(found, strength),
      facts: { way, scenario: pull.scenario ?? '', known },
      sure: 'assumed',
      source: 'stated working load of the coupler',
    }),
  ];
}

/** Said once, of the gap that is pulled hardest: should a coupling open, the train has parted, and that is asked. */
function strengthUnknown({ outing }: OutingContext, gaps: readonly CouplerGap[]): Finding[] {
  const unknown = gaps.filter((g) => !g.known);
  if (unknown.length === 0) return [];
  const worst = unknown.reduce((a, b) => (b.pull.force > a.pull.force ? b : a));
  return [
    makeFinding('coupler-strength-unknown', 'notes', 'parting', {
      where: { gap: worst.gap, vehicle: outing.train.vehicles[worst.gap].id },
      required: amount(Math.max(worst.pull.force, worst.steady), 'force'),
      facts: { scenario: worst.pull.scenario ?? '', gaps: unknown.length },
      sure: 'assumed',
      source: 'engine',
      measure: 'coupling.strength',
    }),
  ];
}

/** Worst first by what it weighs, and one of each kind for a vehicle. */
function curveFindings(context: OutingContext, curves: readonly CurvedPeak[]): Finding[] {
  const ordered = [...curves].sort(
    (a, b) => Number(severities[b.scenario] === 'limits') - Number(severities[a.scenario] === 'limits'),
  );
  const climbs = new Map<number, Finding>();
  const tips = new Map<number, Finding>();
  for (const { scenario, climb, tip } of ordered) {
    if (climb && climb.found > climb.limit && !climbs.has(climb.index))
      climbs.set(climb.index, {
        // A flange that nobody measured is noted: what it would do on the run is asked elsewhere.
        ...climbFinding(context, scenario, climb.shape.angleKnown ? severities[scenario] : 'notes', climb),
        sure: 'assumed',
      });
    if (tip && tip.share <= 0 && !tips.has(tip.index))
      tips.set(tip.index, tipFinding(context, scenario, tip));
  }
  return [...climbs.values(), ...tips.values()];
}

function tipFinding(
  { loaded }: OutingContext,
  scenario: PeakScenario,
  tip: NonNullable<PeakInCurves['tip']>,
): Finding {
  return makeFinding('coupler-jerk-tips', severities[scenario], 'balance', {
    where: { vehicle: loaded.vehicles[tip.index].vehicle.id, from: tip.at, to: tip.at },
    found: amount(tip.share, 'ratio'),
    required: amount(0, 'ratio'),
    margin: Math.min(tip.share, -1e-9),
    facts: { way: scenario },
    sure: 'assumed',
    source: 'moments about the rail',
  });
}
