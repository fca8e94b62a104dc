/** heedway brake-design: which cylinder, lever and number of braked cars stop the train in a distance. */
import { designTables, readDesign, type WrittenDesign } from '../../desk/brake-design.ts';
import { designFor } from '../../desk/brakes.ts';
import { blockMaterials } from '../../engine/things/vehicle/types.ts';
import { type Command, common, type Options, UsageFault, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';
import { tableText } from '../text.ts';

interface DesignOptions extends Options, WrittenDesign {
  readonly all?: boolean;
}

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
      .option('--block <material>', blockMaterials.join(', '), 'cast-iron')
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
  const read = readDesign(options, outing.conditions.reaction);
  if (!read.ok) throw new UsageFault(read.problems.map((p) => p.message).join('\n'), read.problems);
  const result = designFor(outing, read.request);
  const tables = designTables(result, read.request, options.all === true, voiceOf(options, outing));
  return {
    text: tables.map(tableText).join('\n\n'),
    json: { request: read.request, ...result },
    exit: result.designs.some((d) => d.feasible) ? 0 : 20,
  };
}
