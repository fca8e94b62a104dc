/**
 * A brake cylinder: its piston runs out against the return spring, the volume grows with the stroke, and
 * only what the pressure has left over the spring reaches the blocks.
 *
 *   s = min(1, q·A/S)     V = V₀ + V_s·s     F = max(0, q·A − S)
 *
 * s share of the stroke, q pressure difference across the piston (Pa), A area of the piston (m²), S spring
 * (or weight of the piston) at full stroke (N), V₀ volume at rest and V_s swept volume (m³). The spring is
 * taken without preload: a preloaded one starts later and ends the same.
 */

/** Pressure that the friction of a seal takes at least, Pa: keeps the stroke defined without a spring. */
export const SEAL_PRESSURE = 2000;

export interface Piston {
  /** Volume on the working side at rest, m³. */
  readonly clearance: number;
  readonly swept: number;
  /** Pressure difference at which the stroke is done, Pa. */
  readonly strokeAt: number;
}

/** What stands behind the piston: constant pressure, or a closed chamber that the piston squeezes. */
export type Behind = { readonly pressure: number } | { readonly content: number; readonly volume: number };

export interface PistonState {
  /** Pa absolute on the working side and behind. */
  readonly pressure: number;
  readonly behind: number;
  /** 0 … 1 */
  readonly stroke: number;
}

/**
 * Pressures and stroke from the air on both sides, content = p·V (Pa·m³).
 *
 * @param pull the working side draws the piston in as its pressure falls (simple vacuum); else it pushes
 */
export function pistonState(piston: Piston, content: number, back: Behind, pull = false): PistonState {
  const { clearance, swept, strokeAt } = piston;
  const way = pull ? -1 : 1;
  const start = clearance + (pull ? swept : 0);
  const front = (s: number): number => content / (start + way * swept * s);
  const rear = (s: number): number =>
    'pressure' in back ? back.pressure : back.content / (back.volume - swept * s);
  const excess = (s: number): number => (way * (front(s) - rear(s))) / strokeAt - s;
  const slope = (s: number): number => {
    const squeezed = 'pressure' in back ? 0 : rear(s) / (back.volume - swept * s);
    return (-swept * (front(s) / (start + way * swept * s) + way * squeezed)) / strokeAt - 1;
  };
  const stroke = fallingRoot(excess, slope);
  return { pressure: front(stroke), behind: rear(stroke), stroke };
}

/** Root of a falling function on [0, 1], or the end that it does not reach: Newton's, kept between what encloses it. */
function fallingRoot(f: (s: number) => number, slope: (s: number) => number): number {
  let a = 0;
  let b = 1;
  const fa = f(0);
  const fb = f(1);
  if (fa <= 0) return 0;
  if (fb >= 0) return 1;
  let s = fa / (fa - fb);
  for (let i = 0; i < 60; i++) {
    const fs = f(s);
    if (Math.abs(fs) < 1e-14) return s;
    if (fs > 0) a = s;
    else b = s;
    const next = s - fs / slope(s);
    const to = next > a && next < b ? next : (a + b) / 2;
    if (Math.abs(to - s) < 1e-15) return to;
    s = to;
  }
  return s;
}

/** Volume on the working side at a share of the stroke, m³. */
export const workingVolume = ({ clearance, swept }: Piston, stroke: number, pull = false): number =>
  clearance + swept * (pull ? 1 - stroke : stroke);
