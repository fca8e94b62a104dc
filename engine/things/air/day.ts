/** The air of the day. */
import { STANDARD_ATMOSPHERE } from '../../base/constants.ts';
import { atmosphericPressure } from './formulas.ts';

export interface DayAir {
  /** Absolute pressure at the line, Pa. */
  readonly pressure: number;
  readonly seaLevel: number;
}

/** Air pressure of the day: measured (Pa), else by altitude (m), else sea level. */
export function dayAir(day: { readonly airPressure?: number; readonly altitude?: number }): DayAir {
  const pressure =
    day.airPressure ?? (day.altitude === undefined ? STANDARD_ATMOSPHERE : atmosphericPressure(day.altitude));
  return { pressure, seaLevel: STANDARD_ATMOSPHERE };
}
