/** Does it clear: what is left at every structure of one outing, and what its train must be left, curve by curve. */
import { turnFindings, turnOf } from '../engine/answer/chainage.ts';
import { inquire } from '../engine/answer/inquiry.ts';
import { ranked } from '../engine/answer/verdict.ts';
import { openOuting } from '../engine/outing/open.ts';
import type { Outing } from '../engine/outing/types.ts';
import {
  type KeptClear,
  keptClear,
  type NotTold,
  notTold,
} from '../engine/questions/clearance/kept-clear.ts';
import type { Passing, Spread } from '../engine/questions/clearance/look.ts';
import { type Across, lookAtPlatforms } from '../engine/questions/clearance/platforms.ts';
import { clearance } from '../engine/questions/clearance/question.ts';
import { betweenTrains, lookAtSidings, type SidingRoom } from '../engine/questions/clearance/sidings.ts';
import { trackFindings } from '../engine/questions/clearance/tracks.ts';
import type { Finding } from '../engine/questions/finding.ts';
import type { CurveElement, Line, Structure } from '../engine/things/line/types.ts';

/** A curve with its easements, and how far the train reaches in it and just beside it, m. */
export interface ClearCurve {
  readonly from: number;
  readonly to: number;
  /** Sharpest in it, m; which hand, as the train runs. */
  readonly radius: number;
  readonly hand: 'left' | 'right';
  readonly inside: number;
  readonly outside: number;
}

export interface Clear {
  /** Of each structure and side the vehicle with the least room. */
  readonly nearest: readonly Passing[];
  readonly structures: readonly Structure[];
  readonly curves: readonly ClearCurve[];
  /** Of each platform and side the vehicle with the widest gap. */
  readonly platforms: readonly Across[];
  readonly sidings: readonly SidingRoom[];
  readonly trainLength: number;
  /** On straight level track, m; undefined with `kept`. */
  readonly straight?: number;
  readonly kept?: KeptClear;
  /** Vehicles without which it is told, or cannot be. */
  readonly notTold: NotTold;
  /** Wanted between two trains. */
  readonly margin: { readonly value: number; readonly source: string };
  readonly findings: readonly Finding[];
  /** Chainages of the rest are in the running direction; this turns them into the line's own. */
  readonly at: (s: number) => number;
}

export function lookAtClear(outing: Outing): Clear {
  const inquiry = inquire(outing);
  const asked = inquiry.of(clearance);
  const { line } = openOuting(outing);
  const kept = keptClear(inquiry.context);
  return {
    nearest: nearestOf(asked.data.passings),
    structures: line.structures ?? [],
    platforms: widestOf(lookAtPlatforms(inquiry.context).across),
    sidings: lookAtSidings(inquiry.context),
    trainLength: inquiry.context.loaded.length,
    // Of a train that can stand everywhere only those that nobody measured are left.
    notTold: kept ? { unmeasured: kept.without, cannotStand: [] } : notTold(inquiry.context),
    margin: betweenTrains(outing),
    curves: kept ? curvesOf(line, kept) : [],
    ...(kept ? { kept, straight: Math.min(...kept.left, ...kept.right) } : {}),
    findings: ranked(turnFindings(outing, [...asked.findings, ...trackFindings(inquiry.context)])),
    at: turnOf(outing),
  };
}

/** Least of the body and of its people, m. */
export const leftOf = ({ body, people }: Passing): number =>
  Math.min(...[body, people].map((s: Spread | null) => s?.high.left ?? Infinity));

function nearestOf(passings: readonly Passing[]): Passing[] {
  const least = new Map<string, Passing>();
  for (const p of passings) {
    const key = `${p.structure.id} ${p.side}`;
    const known = least.get(key);
    if (!known || leftOf(p) < leftOf(known)) least.set(key, p);
  }
  return [...least.values()].sort((a, b) => a.structure.from - b.structure.from);
}

function widestOf(across: readonly Across[]): Across[] {
  const widest = new Map<string, Across>();
  for (const one of across) {
    const key = `${one.platform.id} ${one.side}`;
    const known = widest.get(key);
    if (!known || one.gap.value > known.gap.value) widest.set(key, one);
  }
  return [...widest.values()].sort((a, b) => a.platform.from - b.platform.from);
}

/** Ends reach out so far before and after a curve, m: never taken as less than a pace or three. */
const BESIDE = 3;
export const besideCurve = ({ longest }: KeptClear): number => Math.max(BESIDE, longest);

function curvesOf({ curves }: Line, kept: KeptClear): ClearCurve[] {
  const beside = besideCurve(kept);
  return joined(curves).map((pieces) => {
    const [from, to] = [pieces[0].from, pieces[pieces.length - 1].to];
    const sharp = pieces
      .flatMap((p) => [p.startCurvature, p.endCurvature])
      .reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    const hand = sharp > 0 ? 'left' : 'right';
    const most = (of: readonly number[]): number =>
      of.reduce(
        (widest, reach, i) =>
          kept.at[i] >= from - beside && kept.at[i] <= to + beside ? Math.max(widest, reach) : widest,
        0,
      );
    const [left, right] = [most(kept.left), most(kept.right)];
    const [inside, outside] = hand === 'left' ? [left, right] : [right, left];
    return { from, to, radius: 1 / Math.abs(sharp), hand, inside, outside };
  });
}

/** Pieces of one hand that follow each other without a straight between. */
function joined(curves: readonly CurveElement[]): CurveElement[][] {
  const groups: CurveElement[][] = [];
  const handOf = (c: CurveElement): number => Math.sign(c.startCurvature + c.endCurvature);
  for (const curve of curves) {
    const last = groups[groups.length - 1];
    const before = last?.[last.length - 1];
    if (before && curve.from - before.to < 1e-6 && handOf(before) === handOf(curve)) last.push(curve);
    else groups.push([curve]);
  }
  return groups;
}
