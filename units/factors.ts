/**
 * Units that people write, with exact factors to SI. Every factor is a definition, written as one.
 */
import { FOOT, GRAVITY, INCH, MPH, POUND, POUND_FORCE } from '../engine/base/constants.ts';
import type { Kind } from '../engine/base/quantity.ts';

const PSI = POUND_FORCE / (INCH * INCH);
const MMHG = 133.322387415; // conventional millimetre of mercury: 13 595.1 kg/m³ · g · 1 mm
const MILE = 5280 * FOOT;
const LONG_TON = 2240 * POUND;
const SHORT_TON = 2000 * POUND;

export interface Unit {
  /** How it is printed. */
  readonly name: string;
  /** Other spellings, lower case. */
  readonly also: readonly string[];
  readonly factor: number;
  /** SI = value·factor + offset. */
  readonly offset?: number;
}

const unit = (name: string, factor: number, ...also: string[]): Unit => ({ name, factor, also });

const lengths = [
  unit('m', 1, 'metre', 'metres', 'meter', 'meters'),
  unit('mm', 1e-3),
  unit('cm', 1e-2),
  unit('km', 1e3),
  unit('in', INCH, '"', 'inch', 'inches', '″', '”', "''"),
  unit('ft', FOOT, "'", 'foot', 'feet', '′', '’'),
  unit('yd', 3 * FOOT, 'yard', 'yards'),
  unit('chain', 66 * FOOT, 'chains'),
  unit('mile', MILE, 'miles', 'mi'),
];

const masses = [
  unit('kg', 1),
  unit('g', 1e-3),
  unit('tonne', 1000, 'tonnes'),
  unit('lb', POUND, 'lbs', 'pound', 'pounds'),
  unit('oz', POUND / 16),
  unit('st', 14 * POUND, 'stone'),
  unit('cwt', 112 * POUND),
  unit('long ton', LONG_TON, 'long tons', 'uk ton', 'uk tons'),
  unit('short ton', SHORT_TON, 'short tons', 'us ton', 'us tons'),
];

const forces = [
  unit('N', 1, 'newton', 'newtons'),
  unit('kN', 1e3),
  unit('lbf', POUND_FORCE, 'lb', 'lbs', 'pounds'),
  unit('kgf', GRAVITY, 'kp'),
];

const pressures = [
  unit('Pa', 1),
  unit('kPa', 1e3),
  unit('MPa', 1e6),
  unit('bar', 1e5),
  unit('mbar', 100),
  unit('hPa', 100),
];
const mercury = [
  unit('inHg', 25.4 * MMHG, 'in hg', 'inches of mercury', '"hg'),
  unit('mmHg', MMHG, 'mm hg', 'torr'),
];
const psi = unit('psi', PSI, 'psig', 'lb/in²', 'lbf/in²', 'lb/sq in', 'lb per sq in');

const perTon = [
  unit('N/kN', 1e-3),
  unit('N/N', 1),
  unit('lb/long ton', POUND_FORCE / (LONG_TON * GRAVITY), 'lb/uk ton', 'lbf/long ton'),
  unit('lb/short ton', POUND_FORCE / (SHORT_TON * GRAVITY), 'lb/us ton', 'lbf/short ton'),
  unit('kg/t', 1e-3, 'kgf/t', 'kg/tonne'),
  unit('%', 1e-2),
  unit('‰', 1e-3),
];

const slopes = [unit('%', 1e-2, 'percent', 'per cent'), unit('‰', 1e-3, 'permille', 'mm/m'), unit('m/m', 1)];

/** Units of each kind; the first imperial and metric ones are chosen in print.ts. */
export const unitsByKind: Readonly<Record<Kind, readonly Unit[]>> = {
  length: lengths,
  area: [
    unit('m²', 1, 'm2'),
    unit('cm²', 1e-4, 'cm2'),
    unit('mm²', 1e-6, 'mm2'),
    unit('in²', INCH * INCH, 'in2', 'sq in'),
    unit('ft²', FOOT * FOOT, 'ft2', 'sq ft'),
  ],
  volume: [
    unit('m³', 1, 'm3'),
    unit('l', 1e-3, 'L', 'litre', 'litres', 'liter', 'liters'),
    unit('cm³', 1e-6, 'cm3', 'cc'),
    unit('in³', INCH ** 3, 'in3', 'cu in'),
    unit('ft³', FOOT ** 3, 'ft3', 'cu ft'),
    unit('US gal', 231 * INCH ** 3),
    unit('UK gal', 4.54609e-3),
  ],
  speed: [
    unit('m/s', 1),
    unit('km/h', 1 / 3.6, 'kph', 'kmh', 'km/hr'),
    unit('mph', MPH, 'mi/h'),
    unit('ft/s', FOOT, 'fps', 'ft/sec'),
  ],
  acceleration: [
    unit('m/s²', 1, 'm/s2'),
    unit('ft/s²', FOOT, 'ft/s2'),
    unit('g', GRAVITY),
    unit('mph/s', MPH),
  ],
  time: [
    unit('s', 1, 'sec', 'second', 'seconds'),
    unit('min', 60, 'minute', 'minutes'),
    unit('h', 3600, 'hr', 'hour', 'hours'),
  ],
  mass: masses,
  force: forces,
  pressure: [...pressures, ...mercury, unit('psia', PSI), unit('atm', 101325)],
  gaugePressure: [...pressures, psi],
  vacuum: [...pressures, ...mercury, psi],
  grade: slopes,
  angle: [unit('rad', 1), unit('°', Math.PI / 180, 'deg', 'degree', 'degrees')],
  curvature: [unit('1/m', 1), unit('1/ft', 1 / FOOT)],
  ratio: [unit('%', 1e-2, 'percent', 'per cent')],
  count: [],
  specificForce: perTon,
  energy: [
    unit('J', 1),
    unit('kJ', 1e3),
    unit('ft·lbf', FOOT * POUND_FORCE, 'ft-lb', 'ft-lbf', 'ft lb', 'ft·lb'),
    unit('Wh', 3600),
    unit('kWh', 3.6e6),
  ],
  power: [unit('W', 1), unit('kW', 1e3), unit('hp', 550 * FOOT * POUND_FORCE)],
  stiffness: [
    unit('N/m', 1),
    unit('kN/m', 1e3),
    unit('N/mm', 1e3),
    unit('MN/m', 1e6),
    unit('lbf/in', POUND_FORCE / INCH, 'lb/in'),
    unit('lbf/ft', POUND_FORCE / FOOT, 'lb/ft'),
  ],
  flow: [
    unit('m³/s', 1, 'm3/s'),
    unit('l/s', 1e-3),
    unit('l/min', 1e-3 / 60),
    unit('m³/h', 1 / 3600, 'm3/h'),
    unit('cfm', FOOT ** 3 / 60, 'ft³/min', 'ft3/min'),
  ],
  temperature: [
    unit('K', 1),
    { name: '°C', also: ['c', 'degc'], factor: 1, offset: 273.15 },
    { name: '°F', also: ['f', 'degf'], factor: 5 / 9, offset: 459.67 * (5 / 9) },
  ],
  stress: [...pressures, unit('GPa', 1e9), unit('psi', PSI), unit('ksi', 1000 * PSI)],
  twist: slopes,
  momentum: [unit('N·s', 1, 'ns', 'kg·m/s'), unit('lbf·s', POUND_FORCE, 'lb·s')],
  moment: [
    unit('N·m', 1, 'nm'),
    unit('lbf·ft', POUND_FORCE * FOOT, 'lb-ft', 'lb·ft', 'ft-lb'),
    unit('lbf·in', POUND_FORCE * INCH, 'lb-in'),
  ],
};

/** Units that may follow each other in one figure, from large to small: 12 ft 6 in, 3 t 2 cwt, 12 st 4 lb. */
export const chainsOfUnits: Readonly<Partial<Record<Kind, readonly (readonly string[])[]>>> = {
  length: [
    ['mile', 'yd', 'ft', 'in'],
    ['m', 'cm', 'mm'],
  ],
  mass: [
    ['long ton', 'cwt', 'lb', 'oz'],
    ['st', 'lb', 'oz'],
    ['kg', 'g'],
  ],
  time: [['h', 'min', 's']],
};

/** Words that mean different things to different people, with what to write instead. */
export const ambiguous: Readonly<Partial<Record<Kind, Readonly<Record<string, string>>>>> = {
  mass: {
    t: '"tonne" (1,000 kg), "long ton" (2,240 lb) or "short ton" (2,000 lb)',
    ton: '"tonne" (1,000 kg), "long ton" (2,240 lb) or "short ton" (2,000 lb)',
    tons: '"tonne" (1,000 kg), "long ton" (2,240 lb) or "short ton" (2,000 lb)',
  },
  specificForce: {
    'lb/ton': '"lb/long ton" or "lb/short ton"',
    'lb/t': '"lb/long ton" or "lb/short ton"',
  },
  pressure: { psi: '"psia" for absolute pressure; a gauge shows pressure above the atmosphere' },
  gaugePressure: {
    psia: '"psi" as the gauge shows it, above the atmosphere',
    inhg: 'a pressure above the atmosphere in psi, bar or kPa; "inHg" is a vacuum',
  },
  volume: { gal: '"US gal" or "UK gal"' },
};

/** The unit of a kind by any of its spellings; case counts only where two units differ by it (mm, Mm). */
export function findUnit(kind: Kind, text: string): Unit | undefined {
  const list = unitsByKind[kind];
  const lower = text.toLowerCase();
  return (
    list.find((u) => u.name === text) ??
    list.find((u) => u.name.toLowerCase() === lower) ??
    list.find((u) => u.also.includes(lower) || u.also.includes(text))
  );
}
