/** What each letter of a sum's equation stands for: an input, a result, a constant of nature, or a step between. */
import { AIR_GAMMA, AIR_GAS_CONSTANT, GRAVITY, STANDARD_ATMOSPHERE } from '../base/constants.ts';
import type { Kind } from '../base/quantity.ts';
import type { Sum } from '../base/sum.ts';

/** By name, in SI. */
export const constants: Readonly<Record<string, { readonly value: number; readonly unit: string }>> = {
  gravity: { value: GRAVITY, unit: 'm/s²' },
  'air-at-sea-level': { value: STANDARD_ATMOSPHERE, unit: 'Pa' },
  'temperature-at-sea-level': { value: 288.15, unit: 'K' },
  'lapse-rate': { value: 0.0065, unit: 'K/m' },
  'gas-constant': { value: AIR_GAS_CONSTANT, unit: 'J/(kg·K), of air' },
  'heat-ratio': { value: AIR_GAMMA, unit: '' },
};

export interface Letter {
  readonly letter: string;
  /** An input's or a result's symbol, a constant's name, or what a step between is. */
  readonly name: string;
  readonly stands: 'input' | 'result' | 'constant' | 'between';
  readonly kind?: Kind;
  /** The equation takes it in this unit; absent: SI, or any that agree. */
  readonly unit?: string;
}

/** Every letter of a sum's equation, as it names them. */
export function lettersOf(sum: Sum): Letter[] {
  return sum.letters.split(', ').map((text) => {
    const [letter, ...rest] = text.split(' ');
    const [name, unit] = rest.join(' ').split(' in ');
    const input = sum.inputs.find((s) => s.symbol === name);
    const symbol = input ?? sum.results.find((r) => r.symbol === name);
    const stands = input ? 'input' : symbol ? 'result' : name in constants ? 'constant' : 'between';
    return {
      letter,
      name,
      stands,
      ...(symbol ? { kind: symbol.kind } : {}),
      ...(unit === undefined ? {} : { unit }),
    };
  });
}

/** The letter that stands for an input or a result; empty where the equation has none. */
export const letterOf = (sum: Sum, symbol: string): string =>
  lettersOf(sum).find(({ name }) => name === symbol)?.letter ?? '';
