/**
 * One vessel filled or emptied through one orifice, in closed form.
 *
 * Two bounds of the same event: isothermal (walls keep the air at one temperature: slow, or small parts) and
 * adiabatic (no heat passes: quick, or large parts). Filling isothermally takes γ times as long, so the
 * isothermal figure is the later one and is what the brake questions use.
 *
 *   filling   n·(C·A·√(R·T)/V)·t = ∫ dr/ψ(r),    r = p/p_supply,    n = 1 isothermal, γ adiabatic
 *   emptying    (C·A·√(R·T)/V)·t = ∫ dr/(r·ψ(r)), r = p_outside/p,   isothermal; adiabatic with T falling
 *
 * ψ is the flow number of the orifice (constant when choked). With x = r^((γ−1)/γ) every integral is
 * elementary; the emptying ones use γ = 1.4 exactly (x = sin²θ). Source: own derivation from de Saint-Venant
 * and Wantzel's orifice; checked against an independent integrator and published blow-downs.
 */
import { AIR_GAMMA, AIR_GAS_CONSTANT } from '../../base/constants.ts';
import { CRITICAL_RATIO } from '../air/formulas.ts';

export type Thermal = 'isothermal' | 'adiabatic';

export interface Passage {
  /** Volume of the vessel, m³. */
  readonly volume: number;
  /** Flow coefficient times area, C·A, m². */
  readonly area: number;
  /** Temperature of the air upstream at the start, K. */
  readonly temperature: number;
}

/** √(2γ/(γ−1)): flow number of the orifice without its pressure term. */
const SWELL = Math.sqrt((2 * AIR_GAMMA) / (AIR_GAMMA - 1));
/** (γ−1)/γ */
const EXPONENT = (AIR_GAMMA - 1) / AIR_GAMMA;
/** Flow number when choked, 0.6847. */
export const CHOKED_NUMBER: number =
  SWELL * Math.sqrt(CRITICAL_RATIO ** (2 / AIR_GAMMA) - CRITICAL_RATIO ** (2 - EXPONENT));

const unit = ({ volume, area, temperature }: Passage): number =>
  volume / (area * Math.sqrt(AIR_GAS_CONSTANT * temperature));

function demand(holds: boolean, what: string): void {
  if (!holds) throw new RangeError(what);
}

/**
 * Time to raise a vessel's pressure from a supply held at constant pressure, s.
 *
 * @param from Pa absolute, ≥ 0  @param to Pa absolute, from ≤ to ≤ supply
 */
export function fillTime(
  passage: Passage,
  supply: number,
  from: number,
  to: number,
  thermal: Thermal = 'isothermal',
): number {
  demand(from >= 0 && to >= from && to <= supply, 'filling needs 0 ≤ from ≤ to ≤ supply');
  const n = thermal === 'adiabatic' ? AIR_GAMMA : 1;
  return (unit(passage) / n) * (fillIntegral(to / supply) - fillIntegral(from / supply));
}

/** ∫₀ʳ dr/ψ: linear while choked, then √(2γ/(γ−1))·(√(1−x*) − √(1−x)). */
function fillIntegral(r: number): number {
  if (r <= CRITICAL_RATIO) return r / CHOKED_NUMBER;
  const rest = (ratio: number): number => Math.sqrt(Math.max(0, 1 - ratio ** EXPONENT));
  return CRITICAL_RATIO / CHOKED_NUMBER + SWELL * (rest(CRITICAL_RATIO) - rest(r));
}

/** Pressure after filling for a time, Pa absolute; the supply's once it is reached (in finite time). */
export function filledPressure(
  passage: Passage,
  supply: number,
  from: number,
  time: number,
  thermal: Thermal = 'isothermal',
): number {
  demand(from >= 0 && from <= supply && time >= 0, 'filling needs 0 ≤ from ≤ supply and time ≥ 0');
  const n = thermal === 'adiabatic' ? AIR_GAMMA : 1;
  const done = fillIntegral(from / supply) + (time * n) / unit(passage);
  const chokedEnd = CRITICAL_RATIO / CHOKED_NUMBER;
  if (done <= chokedEnd) return supply * done * CHOKED_NUMBER;
  const rest = Math.sqrt(1 - CRITICAL_RATIO ** EXPONENT) - (done - chokedEnd) / SWELL;
  return rest <= 0 ? supply : supply * (1 - rest * rest) ** (1 / EXPONENT);
}

/**
 * Time to let a vessel down to a pressure through an orifice to constant outside pressure, s.
 *
 * @param from Pa absolute  @param to Pa absolute, outside ≤ to ≤ from
 */
export function emptyTime(
  passage: Passage,
  outside: number,
  from: number,
  to: number,
  thermal: Thermal = 'isothermal',
): number {
  demand(outside >= 0 && to >= outside && from >= to && to > 0, 'emptying needs outside ≤ to ≤ from');
  const scale = unit(passage);
  const edge = Math.min(Math.max(outside / CRITICAL_RATIO, to), from);
  const chokedPart =
    thermal === 'isothermal' ? chokedIsothermal(from, edge) : chokedAdiabatic(from, from, edge);
  if (edge <= to) return scale * chokedPart;
  const slow =
    thermal === 'isothermal'
      ? slowIsothermal(outside / edge, outside / to)
      : slowAdiabatic(outside / from, outside / edge, outside / to);
  return scale * (chokedPart + slow);
}

/** dp/dt = −ψ*·p: ln(p₁/p₂)/ψ* */
const chokedIsothermal = (from: number, to: number): number => Math.log(from / to) / CHOKED_NUMBER;

/** With T = T₀·(p/p₀)^((γ−1)/γ): (2/((γ−1)·ψ*))·((p₀/p₂)^e − (p₀/p₁)^e), e = (γ−1)/(2γ). */
const chokedAdiabatic = (start: number, from: number, to: number): number =>
  (2 / ((AIR_GAMMA - 1) * CHOKED_NUMBER)) *
  ((start / to) ** (EXPONENT / 2) - (start / from) ** (EXPONENT / 2));

const angle = (r: number): number => Math.asin(Math.min(1, Math.sqrt(r ** EXPONENT)));

/** (7/√7)·∫ csc⁶θ dθ between two pressure ratios. */
function slowIsothermal(from: number, to: number): number {
  const part = (theta: number): number => {
    const cot = 1 / Math.tan(theta);
    return cot + (2 / 3) * cot ** 3 + cot ** 5 / 5;
  };
  return SWELL * (part(angle(from)) - part(angle(to)));
}

/** (7/(γ√7))·(1/√x₀)·∫ csc⁵θ dθ: the falling temperature takes one power of sin θ away. */
function slowAdiabatic(start: number, from: number, to: number): number {
  const part = (theta: number): number => {
    const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
    return cos / (4 * sin ** 4) + (3 * cos) / (8 * sin ** 2) - (3 / 8) * Math.log(Math.tan(theta / 2));
  };
  return (SWELL / AIR_GAMMA / Math.sqrt(start ** EXPONENT)) * (part(angle(from)) - part(angle(to)));
}

/**
 * Time for a pump or ejector of constant suction to draw a vessel down, s: (V/S)·ln((p₁−p₀)/(p₂−p₀)).
 *
 * @param suction S, m³/s at the vessel's own pressure  @param lowest p₀, Pa absolute, that it reaches at last
 */
export function drawDownTime(volume: number, suction: number, from: number, to: number, lowest = 0): number {
  demand(to > lowest && from >= to && suction > 0, 'drawing down needs lowest < to ≤ from');
  return (volume / suction) * Math.log((from - lowest) / (to - lowest));
}

/**
 * Time for a compressor to raise a vessel, s: V·(p₂−p₁)/(p_air·q).
 *
 * @param freeAir q, m³/s of air as it is outside  @param atmosphere Pa
 */
export function pumpUpTime(
  volume: number,
  freeAir: number,
  from: number,
  to: number,
  atmosphere: number,
): number {
  demand(to >= from && freeAir > 0, 'pumping up needs from ≤ to');
  return (volume * (to - from)) / (atmosphere * freeAir);
}
