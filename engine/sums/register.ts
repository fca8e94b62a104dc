/** The register of sums, and the one way to evaluate them: out of range is a problem, never a number. */

import type { Sum, SumInputs, SumOutcome, SumProblem, SumSymbol } from '../base/sum.ts';
import { motionSums } from '../motion/sums.ts';
import { balanceSums } from '../questions/balance/sums.ts';
import { haulageSums } from '../questions/haul/sums.ts';
import { airSums } from '../things/air/sums.ts';
import { brakeSums } from '../things/brake/sums.ts';
import { chainSums } from '../things/chain/sums.ts';
import { clearanceSums } from '../things/clearance/sums.ts';
import { couplerSums } from '../things/coupler/sums.ts';
import { curveSums } from '../things/line/curve-sums.ts';
import { trackSums } from '../things/line/sums.ts';
import { turnoutSums } from '../things/line/turnout-sums.ts';
import { peopleSums } from '../things/rider/sums.ts';
import { humpSums } from '../things/vehicle/sums.ts';
import { wheelSums } from '../things/wheel/sums.ts';

export const sums: readonly Sum[] = [
  ...motionSums,
  ...haulageSums,
  ...airSums,
  ...brakeSums,
  ...curveSums,
  ...balanceSums,
  ...chainSums,
  ...couplerSums,
  ...trackSums,
  ...turnoutSums,
  ...wheelSums,
  ...clearanceSums,
  ...humpSums,
  ...peopleSums,
];

export const findSum = (id: string): Sum | undefined => sums.find((s) => s.id === id);

/** Evaluate with SI inputs. Unknown symbols, missing ones, values out of range or not finite are problems. */
export function evaluateSum(sum: Sum, given: SumInputs): SumOutcome {
  const problems: SumProblem[] = Object.keys(given)
    .filter((symbol) => !sum.inputs.some((s) => s.symbol === symbol))
    .map((symbol) => ({
      symbol,
      found: 'an unknown symbol',
      expected: sum.inputs.map((s) => s.symbol).join(', '),
    }));
  const inputs: Record<string, number> = {};
  for (const symbol of sum.inputs) {
    const value = given[symbol.symbol] ?? symbol.default;
    const problem =
      value === undefined
        ? { symbol: symbol.symbol, found: 'nothing', expected: rangeText(symbol) }
        : outOfRange(symbol, value);
    if (problem) problems.push(problem);
    else inputs[symbol.symbol] = value as number;
  }
  if (problems.length > 0) return { ok: false, problems };
  const values = sum.compute(inputs);
  if (!Array.isArray(values)) return { ok: false, problems: [values as SumProblem] };
  if (values.some((v) => !Number.isFinite(v))) {
    return {
      ok: false,
      problems: [
        {
          symbol: sum.results[0].symbol,
          found: 'no finite result',
          expected: 'inputs within the range of the formula',
        },
      ],
    };
  }
  return { ok: true, values: Object.fromEntries(sum.results.map((r, i) => [r.symbol, values[i]])) };
}

function outOfRange(symbol: SumSymbol, value: number): SumProblem | undefined {
  const { low, high, open, whole } = symbol;
  const bad =
    !Number.isFinite(value) ||
    (low !== undefined && (open ? value <= low : value < low)) ||
    (high !== undefined && value > high) ||
    (whole === true && !Number.isInteger(value));
  return bad ? { symbol: symbol.symbol, found: `${value}`, expected: rangeText(symbol) } : undefined;
}

/** Range in SI, for example `more than 0, at most 20`. */
export function rangeText({ low, high, open, whole }: SumSymbol): string {
  const parts: string[] = [];
  if (low !== undefined) parts.push(open ? `more than ${low}` : `at least ${low}`);
  if (high !== undefined) parts.push(`at most ${high}`);
  const range = parts.length > 0 ? parts.join(', ') : 'any finite value';
  return whole ? `a whole number, ${range}` : range;
}
