/** How Heedway speaks: units, US or UK wording, and the outing whose vehicles and places it names. */

import type { Amount } from '../engine/base/quantity.ts';
import type { Outing } from '../engine/outing/types.ts';
import { printQuantity, type System, type Toward } from '../units/index.ts';

export type Wording = 'us' | 'uk';

export interface Voice {
  readonly system: System;
  readonly wording: Wording;
  readonly outing: Outing;
}

/** Trade words that differ across the Atlantic. */
const pairs = {
  grade: 'gradient',
  truck: 'bogie',
  trucks: 'bogies',
  switch: 'points',
  coupler: 'coupling',
  conductor: 'guard',
  engine: 'engine',
} as const;

export const trade = (wording: Wording, us: keyof typeof pairs): string =>
  wording === 'us' ? us : pairs[us];

/** A text in which trade words stand in braces by their US form, as {grade}, on the reader's shore. */
export const inWording = (text: string, wording: Wording): string =>
  text.replace(/\{(\w+)\}/g, (braces, us: string) =>
    us in pairs ? trade(wording, us as keyof typeof pairs) : braces,
  );

/** An amount in the voice's units, rounded toward the side asked for. */
/** A gradient in the UK is 1 in so many, as on its strip. */
export const say = (
  { system, wording }: Pick<Voice, 'system'> & Partial<Pick<Voice, 'wording'>>,
  { si, kind }: Amount,
  toward: Toward = 'nearest',
): string =>
  printQuantity(si, kind, {
    system,
    toward,
    ...(kind === 'grade' && wording === 'uk' && si !== 0 ? { unit: '1 in n' } : {}),
  });

/** A place along the line, always as a plain distance. */
export const chainage = (voice: Pick<Voice, 'system'>, metres: number, toward: Toward = 'nearest'): string =>
  voice.system === 'imperial'
    ? printQuantity(metres, 'length', { system: 'imperial', unit: 'ft', digits: 0, toward })
    : printQuantity(metres, 'length', { system: 'metric', unit: 'm', digits: 0, toward });

/** A distance along the line, rounded toward the side asked for. */
export const distance = (voice: Pick<Voice, 'system'>, metres: number, toward: Toward): string =>
  printQuantity(metres, 'length', {
    system: voice.system,
    toward,
    unit: voice.system === 'imperial' ? 'ft' : 'm',
    digits: voice.system === 'imperial' ? 0 : 1,
  });

/** Name of a vehicle by its place in the train, from 0. */
export const vehicleAt = ({ outing }: Pick<Voice, 'outing'>, index: number): string =>
  outing.train.vehicles[index].name;

export const riderName = ({ outing }: Pick<Voice, 'outing'>, id: string): string =>
  outing.riders.find((r) => r.id === id)?.name ?? id;

export function vehicleName(voice: Pick<Voice, 'outing'>, id: string | undefined): string {
  const vehicle = voice.outing.train.vehicles.find((v) => v.id === id);
  return vehicle?.name ?? id ?? 'the train';
}
