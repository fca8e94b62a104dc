/** heedway brake-design: which cylinder, lever and number of braked cars stop the train in a distance. */
import { readDesign, type WrittenDesign } from '../../desk/brake-design.ts';
import { askCylinder, usualDesign } from '../../desk/builder/cylinder.ts';
import { blockMaterials } from '../../engine/things/vehicle/types.ts';
import { type Command, common, type Options, UsageFault, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { taskText } from '../text.ts';

interface DesignOptions extends Options, Partial<WrittenDesign> {
  readonly fewer?: boolean;
  readonly all?: boolean;
}

export const brakeDesignCommand: Command = {
  name: 'brake-design',
  declare: (program, run) => {
    asksRecords(common(program.command('brake-design <outing>')))
      .description(
        'Which cylinder and lever for the cars of this train, loaded as in the outing, of stock bores in your units? What is left out is filled in so that it works: the steepest fall, the speed run at, what is left to stop in where least is seen. Each proposal is proved by stopping again.',
      )
      .option('--distance <distance>', 'to stop in, such as "60 ft"')
      .option('--speed <speed>', 'from, such as "7 mph"')
      .option('--grade <grade>', 'falls are negative, such as "-3 %"')
      .option('--pressure <pressure>', 'air in the cylinders, such as "45 psi"')
      .option('--vacuum <vacuum>', 'or vacuum, such as "18 inHg"')
      .option('--spring <force>', 'return spring of a cylinder, such as "6 lbf"')
      .option('--block <material>', blockMaterials.join(', '))
      .option('--efficiency <ratio>', 'of the rigging')
      .option('--cylinders <count>', 'per car')
      .option('--dead-time <time>', 'until the blocks touch')
      .option('--build-up <time>', 'from there to full')
      .option(
        '--reaction <time>',
        "counted in the distance; the outing's where left out, 0 s from the handle",
      )
      .option('--no-engine', 'leave the engine and tender unbraked')
      .option('--fewer', 'look at brakes on fewer cars too')
      .option('--all', 'also list what does not do, and why')
      .action((path: string, options: DesignOptions) => run((gate) => design(gate, path, options), options));
  },
};

async function design(gate: Gate, path: string, options: DesignOptions) {
  const outing = await gate.outing(path);
  const written = usualDesign(outing, options.units, options);
  const read = readDesign(written, outing.conditions.reaction);
  if (!read.ok) throw new UsageFault(read.problems.map((p) => p.message).join('\n'), read.problems);
  const { fewer = false, all = false } = options;
  const choice = { vacuum: written.vacuum !== undefined, fewer, all };
  const answer = askCylinder(outing, read.request, voiceOf(options, outing), choice);
  return {
    text: taskText(answer),
    json: { request: answer.request, best: answer.best ?? null, said: answer.said, ...answer.result },
    exit: answer.best ? 0 : 20,
  };
}
