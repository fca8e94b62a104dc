/** Brake design from what people write, and its result as tables of words. */

import type { Kind, Quantity } from '../engine/base/quantity.ts';
import type {
  BrakeDesign,
  DesignLimit,
  DesignRequest,
  DesignResult,
} from '../engine/questions/brakes/design.ts';
import { type BlockMaterial, blockMaterials } from '../engine/things/vehicle/types.ts';
import { parseQuantity } from '../units/index.ts';
import { tellRail } from '../words/rails.ts';
import type { WordTable } from '../words/table.ts';
import { distance, say, type Voice } from '../words/voice.ts';

/** As written; one of `pressure` and `vacuum`. */
export interface WrittenDesign {
  readonly distance: string;
  readonly speed: string;
  readonly grade: string;
  readonly pressure?: string | undefined;
  readonly vacuum?: string | undefined;
  readonly spring: string;
  readonly block: string;
  readonly efficiency: string;
  readonly cylinders: string;
  readonly deadTime: string;
  readonly buildUp: string;
  readonly reaction?: string | undefined;
  readonly engine: boolean;
}

export interface DesignProblem {
  readonly field: keyof WrittenDesign;
  readonly message: string;
}

type ReadDesign =
  | { readonly ok: true; readonly request: DesignRequest }
  | { readonly ok: false; readonly problems: readonly DesignProblem[] };

/** @param reaction taken where none is written */
export function readDesign(written: WrittenDesign, reaction: Quantity): ReadDesign {
  const problems: DesignProblem[] = [];
  const read = (field: keyof WrittenDesign, kind: Kind, least: number, most: number): number => {
    const parsed = parseQuantity(String(written[field] ?? ''), kind, field);
    if (!parsed.ok) problems.push({ field, message: parsed.problem.message });
    else if (parsed.si >= least && parsed.si <= most) return parsed.si;
    else problems.push({ field, message: `${field}: found ${written[field]}, which is out of range` });
    return Number.NaN;
  };
  const air = written.pressure !== undefined;
  if (air === (written.vacuum !== undefined)) {
    problems.push({ field: 'pressure', message: 'expected a pressure or a vacuum, one of them' });
  }
  if (!blockMaterials.includes(written.block as BlockMaterial)) {
    problems.push({
      field: 'block',
      message: `block: found ${written.block}; expected ${blockMaterials.join(', ')}`,
    });
  }
  const working = air
    ? read('pressure', 'gaugePressure', 1000, 2e6)
    : read('vacuum', 'vacuum', 1000, 101_325);
  const request: DesignRequest = {
    distance: read('distance', 'length', 0.5, 500),
    speed: read('speed', 'speed', 0.1, 20),
    grade: read('grade', 'grade', -0.15, 0.15),
    pressure: spread(working, 0.05),
    efficiency: spread(read('efficiency', 'ratio', 0.1, 1), 0.1, 1),
    block: written.block as BlockMaterial,
    springForce: read('spring', 'force', 0, 1e4),
    cylindersPerCar: read('cylinders', 'count', 1, 8),
    deadTime: spread(read('deadTime', 'time', 0, 30), 0.3),
    buildUp: spread(read('buildUp', 'time', 0, 60), 0.3),
    reaction: written.reaction === undefined ? reaction : spread(read('reaction', 'time', 0, 10), 0),
    withEngine: written.engine,
  };
  return problems.length > 0 ? { ok: false, problems } : { ok: true, request };
}

/** A stated figure with its spread either way (workshop practice, no source). */
function spread(value: number, share: number, most = Infinity): Quantity {
  const [low, high] = [value * (1 - share), Math.min(most, value * (1 + share))];
  return { value, low, high, how: 'stated', source: 'as written, spread by rule' };
}

const limitWords: Readonly<Record<DesignLimit, string>> = {
  'lever-out-of-reach': 'lever ratio beyond 12',
  'spring-not-overcome': 'does not overcome its spring',
  'too-long': 'does not stop in time',
  'slides-loaded': 'slides although loaded',
  'slides-empty': 'slides when empty',
};

/** Needed force by number of braked cars, and the designs. @param all list those too that do not do */
export function designTables(
  result: DesignResult,
  request: DesignRequest,
  all: boolean,
  voice: Voice,
): readonly WordTable[] {
  const force = (si: number): string => say(voice, { si, kind: 'force' }, 'up');
  const asked = `To stop in ${distance(voice, request.distance, 'down')} from ${say(voice, { si: request.speed, kind: 'speed' })} on ${say(voice, { si: request.grade, kind: 'grade' })}, rail ${tellRail(voice.outing.conditions.railState)}`;
  const listed = result.designs.filter((d) => d.feasible || all);
  // Where every car is braked the number of them says nothing.
  const from = request.everyCar ? 1 : 0;
  const ratio = say(voice, { si: result.adhesion, kind: 'ratio' }, 'down');
  const empty = listed.some((d) => d.limits.includes('slides-empty'))
    ? ' Those that slide when empty need less pressure, or an empty-load lever, on an empty train.'
    : '';
  const needed: WordTable[] = [
    {
      title: asked,
      head: ['braked cars', 'retarding force per car'],
      rows: result.needed.map((n) => [
        `${n.brakedCars}`,
        n.force === null ? 'none does: the rail gives no more' : force(n.force),
      ]),
    },
  ];
  const few = request.everyCar && listed.length > 0;
  return [
    ...(few ? [] : needed),
    {
      title: few ? asked : 'Cylinders and levers, each proved by stopping again',
      head: [
        'braked cars',
        'bore',
        'lever',
        'force per car',
        'ratio loaded',
        'empty',
        'likely stop',
        'cautious',
        'spare',
        'but',
      ].slice(from),
      rows: listed.map((d) => designRow(d, voice).slice(from)),
      note:
        listed.length === 0
          ? 'No cylinder does it. Brake more cars, allow more distance or less speed, or leave cars behind.'
          : `The rail may give no more than ${ratio} today: a ratio above it slides.${empty}`,
    },
  ];
}

function designRow(d: BrakeDesign, voice: Voice): string[] {
  const usable = d.force > 0;
  const ratio = (si: number): string => (usable ? say(voice, { si, kind: 'ratio' }, 'up') : '');
  const stop = (metres: number): string => (Number.isFinite(metres) ? distance(voice, metres, 'up') : 'none');
  return [
    `${d.brakedCars}`,
    say(voice, { si: d.bore, kind: 'length' }),
    usable ? `${d.leverRatio}` : '',
    usable ? say(voice, { si: d.force, kind: 'force' }, 'up') : '',
    ratio(d.loadedRatio),
    ratio(d.emptyRatio),
    stop(d.likelyStop),
    stop(d.cautiousStop),
    Number.isFinite(d.margin) ? `${Math.floor(d.margin * 100)} %` : '',
    d.limits.map((l) => limitWords[l]).join(', '),
  ];
}
