/** Where wheels run light: the lightest wheel along the line gathered into places that a person can read. */
import type { WheelMap } from '../engine/questions/balance/wheel-map.ts';
import type { Voice } from '../words/voice.ts';
import { lightHeading, tellLightWheel, tellUnweighed } from '../words/wheels.ts';

export interface LightStretch {
  readonly from: number;
  readonly to: number;
  /** Where in it the wheel is lightest, its share of load left, and its vehicle. */
  readonly at: number;
  readonly share: number;
  readonly by: number;
}

/** Thin: this part, or less, of what a wheel may lose is left to it. Our own choice, no source. */
const THIN = 0.25;

export const thinShare = (required: number): number => required + THIN * (1 - required);

/** Stretches with a thin margin, in the order of the line. */
export function lightStretches(map: WheelMap): LightStretch[] {
  const thin = thinShare(map.required);
  const out: LightStretch[] = [];
  let first = -1;
  for (let j = 0; j <= map.at.length; j++) {
    if (j < map.at.length && map.share[j] < thin) {
      if (first < 0) first = j;
    } else if (first >= 0) {
      out.push(worstOf(map, first, j - 1));
      first = -1;
    }
  }
  return out;
}

/** The lightest wheel of all; undefined where no vehicle's centre of gravity is bounded. */
export function lightestPlace(map: WheelMap): LightStretch | undefined {
  const worst = worstOf(map, 0, map.at.length - 1);
  return worst.by < 0 ? undefined : worst;
}

function worstOf({ at, share, by }: WheelMap, first: number, last: number): LightStretch {
  let j = first;
  for (let i = first; i <= last; i++) if (share[i] < share[j]) j = i;
  return { from: at[first], to: at[last], at: at[j], share: share[j], by: by[j] };
}

/** Told to a person: every thin place in the line's order, or the lightest one; and whom it leaves out. */
export function lightLines(
  map: WheelMap,
  voice: Voice,
): { readonly title: string; readonly lines: readonly string[] } {
  const thin = lightStretches(map);
  const worst = lightestPlace(map);
  const told = thin.length > 0 ? thin : worst ? [worst] : [];
  const unknown = tellUnweighed(voice, map.unknown);
  return {
    title: lightHeading(thin.length > 0),
    lines: [...told.map((s) => tellLightWheel(voice, s)), ...(unknown ? [unknown] : [])],
  };
}
