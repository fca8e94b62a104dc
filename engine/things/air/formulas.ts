/** Air: flow through an orifice, vessels that equalise, the standard atmosphere, what vacuum is left. */
import { AIR_GAMMA, AIR_GAS_CONSTANT, GRAVITY, STANDARD_ATMOSPHERE } from '../../base/constants.ts';

/** Sea-level temperature of the standard atmosphere, K. */
export const STANDARD_TEMPERATURE = 288.15;
/** Fall of temperature with height, K/m, up to 11 km. */
const LAPSE = 0.0065;

/** Pressure ratio at and below which the flow through an orifice is choked: (2/(γ+1))^(γ/(γ−1)) = 0.528. */
export const CRITICAL_RATIO: number = (2 / (AIR_GAMMA + 1)) ** (AIR_GAMMA / (AIR_GAMMA - 1));

/** Mass flow ÷ (C·A·p₁/√(R·T)) of an orifice by its pressure ratio p₂/p₁, 0 to 1. */
export function flowNumber(pressureRatio: number): number {
  const ratio = Math.max(pressureRatio, CRITICAL_RATIO);
  return flowAboveCritical(ratio, ratio ** (1 / AIR_GAMMA));
}

/** The same of a ratio r above the critical one whose root q = r^(1/γ) is there already: one power instead of three. */
export const flowAboveCritical = (r: number, q: number): number =>
  Math.sqrt(((2 * AIR_GAMMA) / (AIR_GAMMA - 1)) * (q * q - r * q));

/**
 * Mass flow of air through an orifice, kg/s; isentropic, choked or not.
 *
 * W = C·A·p₁/√(R·T₁) · √(2γ/(γ−1)·(r^(2/γ) − r^((γ+1)/γ))), r = p₂/p₁, held at 0.528 when choked.
 * upstream, downstream Pa absolute, downstream ≤ upstream · area m² · temperature K upstream ·
 * coefficient C 1 for a rounded nozzle, 0.61–0.65 for a sharp edge.
 * Source: de Saint-Venant and Wantzel; checked with Moss 1906.
 */
export function orificeMassFlow(
  upstream: number,
  downstream: number,
  area: number,
  coefficient: number,
  temperature: number,
): number {
  if (downstream >= upstream) return 0;
  const scale = (coefficient * area * upstream) / Math.sqrt(AIR_GAS_CONSTANT * temperature);
  return scale * flowNumber(downstream / upstream);
}

/** Volume that a mass flow fills as free air, m³/s, at `pressure` (Pa) and `temperature` (K). */
export function freeAirFlow(massFlow: number, pressure: number, temperature: number): number {
  return (massFlow * AIR_GAS_CONSTANT * temperature) / pressure;
}

/**
 * Absolute pressure of vessels opened to each other, Pa: Σ pᵢVᵢ/Σ Vᵢ (Boyle, one temperature).
 *
 * pressure Pa absolute · volume m³ > 0. Just after a quick opening the gas is not yet at one
 * temperature; this is the pressure once it is. Source: Boyle's law.
 */
export function equalisedPressure(
  vessels: readonly { readonly pressure: number; readonly volume: number }[],
): number {
  const gas = vessels.reduce((sum, vessel) => sum + vessel.pressure * vessel.volume, 0);
  const volume = vessels.reduce((sum, vessel) => sum + vessel.volume, 0);
  return gas / volume;
}

/**
 * Pressure of the standard atmosphere, Pa: p₀·(1 − L·h/T₀)^(g/(R·L)).
 *
 * altitude m geopotential, −1,000 to 11,000 · seaLevel p₀ Pa, the day's pressure reduced to sea level.
 * Source: US Standard Atmosphere 1976, lowest layer.
 */
export function atmosphericPressure(altitude: number, seaLevel: number = STANDARD_ATMOSPHERE): number {
  const exponent = GRAVITY / (AIR_GAS_CONSTANT * LAPSE);
  return seaLevel * (1 - (LAPSE * altitude) / STANDARD_TEMPERATURE) ** exponent;
}

/**
 * Greatest vacuum (depression) to be had, Pa: atmosphere of the place less what the ejector or pump leaves.
 *
 * altitude m · lowest Pa absolute, the least pressure that the equipment reaches, 0 for the physical bound ·
 * seaLevel Pa. Negative where the equipment leaves more than the atmosphere has: no vacuum at all.
 */
export function vacuumLimit(altitude: number, lowest = 0, seaLevel: number = STANDARD_ATMOSPHERE): number {
  return atmosphericPressure(altitude, seaLevel) - lowest;
}
