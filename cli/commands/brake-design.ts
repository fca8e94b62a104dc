/** heedway brake-design: which cylinder, lever and number of braked cars stop the train in a distance. */
import { designFor } from '../../desk/brakes.ts';
import type { BrakeDesign, DesignLimit, DesignRequest, DesignResult } from '../../engine/braking/design.ts';
import type { Kind, Quantity } from '../../engine/quantity.ts';
import type { BlockMaterial } from '../../engine/vehicle/types.ts';
import { distance, say, type Voice } from '../../words/voice.ts';
import { type Command, common, type Options, table, UsageFault, voiceOf } from '../command.ts';
import { openOutingFile, quantityOf } from '../open.ts';

interface DesignOptions extends Options {
  readonly distance: string;
  readonly speed: string;
  readonly grade: string;
  readonly pressure?: string;
  readonly vacuum?: string;
  readonly spring: string;
  readonly block: string;
  readonly efficiency: string;
  readonly cylinders: string;
  readonly deadTime: string;
  readonly buildUp: string;
  readonly reaction?: string;
  readonly engine: boolean;
  readonly all?: boolean;
}

const blocks: readonly BlockMaterial[] = ['cast-iron', 'composition', 'wood', 'steel', 'bronze', 'other'];

export const brakeDesignCommand: Command = {
  name: 'brake-design',
  declare: (program, run) => {
    common(program.command('brake-design <outing>'))
      .description(
        'Brakes for the cars of this train, loaded as in the outing: cylinder, lever ratio and number of braked cars that stop it in a distance. Each proposal is proved by stopping again.',
      )
      .requiredOption('--distance <distance>', 'to stop in, such as "60 ft"')
      .requiredOption('--speed <speed>', 'from, such as "7 mph"')
      .option('--grade <grade>', 'falls are negative, such as "-3 %"', '0 %')
      .option('--pressure <pressure>', 'air in the cylinders, such as "45 psi"')
      .option('--vacuum <vacuum>', 'or vacuum, such as "18 inHg"')
      .option('--spring <force>', 'return spring of a cylinder, such as "6 lbf"', '0 lbf')
      .option('--block <material>', blocks.join(', '), 'cast-iron')
      .option('--efficiency <ratio>', 'of the rigging', '0.8')
      .option('--cylinders <count>', 'per car', '1')
      .option('--dead-time <time>', 'until the blocks touch', '0.5 s')
      .option('--build-up <time>', 'from there to full', '1.5 s')
      .option(
        '--reaction <time>',
        "counted in the distance; the outing's where left out, 0 s from the handle",
      )
      .option('--no-engine', 'leave the engine and tender unbraked')
      .option('--all', 'also list what does not do, and why')
      .action((path: string, options: DesignOptions) => run(() => design(path, options), options));
  },
};

async function design(path: string, options: DesignOptions) {
  const outing = await openOutingFile(path);
  const voice = voiceOf(options, outing);
  const request = requestOf(options, outing.conditions.reaction);
  const result = designFor(outing, request);
  const good = result.designs.filter((d) => d.feasible);
  return {
    text: designText(result, request, options.all === true, voice),
    json: { request, ...result },
    exit: good.length > 0 ? 0 : 20,
  };
}

function requestOf(options: DesignOptions, reaction: Quantity): DesignRequest {
  const read = (text: string, kind: Kind, name: string, least: number, most = Infinity): number => {
    const si = quantityOf(text, kind, name);
    if (!(si >= least && si <= most)) throw new UsageFault(`${name}: found ${text}, which is out of range`);
    return si;
  };
  if ((options.pressure === undefined) === (options.vacuum === undefined)) {
    throw new UsageFault('expected --pressure or --vacuum, one of them');
  }
  if (!blocks.includes(options.block as BlockMaterial)) {
    throw new UsageFault(`--block: found ${options.block}; expected ${blocks.join(', ')}`);
  }
  const working =
    options.pressure === undefined
      ? read(options.vacuum ?? '', 'vacuum', '--vacuum', 1000, 101_325)
      : read(options.pressure, 'gaugePressure', '--pressure', 1000, 2e6);
  return {
    distance: read(options.distance, 'length', '--distance', 0.5, 500),
    speed: read(options.speed, 'speed', '--speed', 0.1, 20),
    grade: read(options.grade, 'grade', '--grade', -0.15, 0.15),
    pressure: spread(working, 0.05),
    efficiency: spread(read(options.efficiency, 'ratio', '--efficiency', 0.1, 1), 0.1, 1),
    block: options.block as BlockMaterial,
    springForce: read(options.spring, 'force', '--spring', 0),
    cylindersPerCar: read(options.cylinders, 'count', '--cylinders', 1, 8),
    deadTime: spread(read(options.deadTime, 'time', '--dead-time', 0, 30), 0.3),
    buildUp: spread(read(options.buildUp, 'time', '--build-up', 0, 60), 0.3),
    reaction:
      options.reaction === undefined
        ? reaction
        : spread(read(options.reaction, 'time', '--reaction', 0, 10), 0),
    withEngine: options.engine,
  };
}

/** A stated figure with its spread either way (workshop practice, no source). */
function spread(value: number, share: number, most = Infinity): Quantity {
  const [low, high] = [value * (1 - share), Math.min(most, value * (1 + share))];
  return { value, low, high, how: 'stated', source: 'command line, spread by rule' };
}

const limitWords: Readonly<Record<DesignLimit, string>> = {
  'lever-out-of-reach': 'lever ratio beyond 12',
  'spring-not-overcome': 'does not overcome its spring',
  'too-long': 'does not stop in time',
  'slides-loaded': 'slides although loaded',
  'slides-empty': 'slides when empty',
};

function designText(result: DesignResult, request: DesignRequest, all: boolean, voice: Voice): string {
  const force = (si: number): string => say(voice, { si, kind: 'force' }, 'up');
  const needed = table([
    ['braked cars', 'retarding force per car'],
    ...result.needed.map((n) => [
      `${n.brakedCars}`,
      n.force === null ? 'none does: the rail gives no more' : force(n.force),
    ]),
  ]);
  const listed = result.designs.filter((d) => d.feasible || all);
  const head = `To stop in ${distance(voice, request.distance, 'down')} from ${say(voice, { si: request.speed, kind: 'speed' })} on ${say(voice, { si: request.grade, kind: 'grade' })}, rail ${voice.outing.conditions.railState}`;
  if (listed.length === 0) {
    return [
      head,
      needed,
      'No cylinder does it. Brake more cars, allow more distance or less speed, or leave cars behind.',
    ].join('\n\n');
  }
  const row = (d: BrakeDesign): string[] => [
    `${d.brakedCars}`,
    say(voice, { si: d.bore, kind: 'length' }),
    Number.isFinite(d.leverRatio) && d.leverRatio <= 12 ? `${d.leverRatio}` : '',
    d.force > 0 ? force(d.force) : '',
    d.force > 0 ? say(voice, { si: d.loadedRatio, kind: 'ratio' }, 'up') : '',
    d.force > 0 ? say(voice, { si: d.emptyRatio, kind: 'ratio' }, 'up') : '',
    stop(d.likelyStop, voice),
    stop(d.cautiousStop, voice),
    Number.isFinite(d.margin) ? `${Math.floor(d.margin * 100)} %` : '',
    d.limits.map((l) => limitWords[l]).join(', '),
  ];
  return [
    head,
    needed,
    table([
      [
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
      ],
      ...listed.map(row),
    ]),
    `The rail may give no more than ${say(voice, { si: result.adhesion, kind: 'ratio' }, 'down')} today: a ratio above it slides.`,
    ...(listed.some((d) => d.limits.includes('slides-empty'))
      ? ['Those that slide when empty need less pressure, or an empty-load lever, on an empty train.']
      : []),
  ].join('\n\n');
}

const stop = (metres: number, voice: Voice): string =>
  Number.isFinite(metres) ? distance(voice, metres, 'up') : 'none';
