/**
 * A wheelset against the track that it runs on. A wheelset within its limits on track within its limits can still strike
 * a frog or bind at a guard rail: the pair decides, never each by its own sheet.
 *
 *   wheel check  k = B + f           passes a frog if        k ≤ C,  C = G − w
 *   back to back B                   passes between guards if B ≥ F,  F = G − w − v
 *   play         p = G + e − (B + 2·f)
 *   tread        t = B + f + b − (G + e)
 *
 * B back to back, f flange thickness, b width of a wheel from back to outer face; G gauge, e its widening, w gap at the
 * guard rail, v gap at the frog's wing; C guard check, F guard face; p how far the wheelset moves from side to side; t how much
 * of the one tread still lies on its rail where the other flange touches its own. All m. Range: t below nothing, the
 * wheel drops in; p below nothing, it does not go between the rails. Source: 49 CFR 213.143 (check and face); North American
 * ridable-scale wheel standard (k ≤ G − w, B ≥ G − 2w); common engineering geometry.
 */
import type { Flangeway } from '../line/types.ts';
import type { Wheelset } from './types.ts';

export const wheelCheck = (backToBack: number, flange: number): number => backToBack + flange;

export const flangePlay = (gauge: number, widening: number, backToBack: number, flange: number): number =>
  gauge + widening - (backToBack + 2 * flange);

export const treadOnRail = (
  gauge: number,
  widening: number,
  backToBack: number,
  flange: number,
  width: number,
): number => backToBack + flange + width - (gauge + widening);

/** From gauge face of the frog to the guarding face, m; undefined: neither measured nor to be had from its gap. */
export const guardCheckOf = (
  { guardCheck, guard, gauge }: Flangeway,
  lineGauge: number,
): number | undefined => guardCheck ?? (guard === undefined ? undefined : (gauge ?? lineGauge) - guard);

/** Between the guarding faces, m. */
export const guardFaceOf = (
  { guardFace, guard, frog, gauge }: Flangeway,
  lineGauge: number,
): number | undefined =>
  guardFace ?? (guard === undefined || frog === undefined ? undefined : (gauge ?? lineGauge) - guard - frog);

/** Narrowest and widest reading round the wheels, m. */
export function backsOf({
  backToBack,
}: Wheelset): { readonly least: number; readonly most: number } | undefined {
  if (backToBack === undefined || backToBack.length === 0) return undefined;
  return { least: Math.min(...backToBack), most: Math.max(...backToBack) };
}

/** Most play of a vehicle's wheelsets on track of a gauge, m; undefined unless every axle is measured. */
export function playOf(
  {
    wheelsets = [],
    groups,
  }: { readonly wheelsets?: readonly Wheelset[]; readonly groups: readonly { readonly axles: number }[] },
  gauge: number,
): number | undefined {
  const axles = groups.reduce((sum, g) => sum + g.axles, 0);
  const plays = wheelsets.flatMap((w) => {
    const backs = backsOf(w);
    return backs && w.flangeThickness ? [flangePlay(gauge, 0, backs.least, w.flangeThickness.low)] : [];
  });
  return plays.length > 0 && plays.length >= axles ? Math.max(0, ...plays) : undefined;
}
