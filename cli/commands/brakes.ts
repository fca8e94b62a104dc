/** heedway brakes: how the brakes come on along the train, what slides first, what is in reserve. */

import { type BrakeLook, lookAtBrakes } from '../../desk/brakes.ts';
import type { TrainFill } from '../../engine/things/brake/fill.ts';
import { brakePlot } from '../../views/brake-plot.ts';
import { brakeTables, brakeTime, standingWords } from '../../views/tables/brakes.ts';
import { brakeKindWords } from '../../words/findings/brakes.ts';
import { type Voice, vehicleAt } from '../../words/voice.ts';
import { type Command, common, finite, type Options, voiceOf } from '../command.ts';
import { asksRecords, type Gate } from '../gate.ts';
import { drawInto, findingsText, paragraphs, tableText, tellFully } from '../text.ts';

interface BrakesOptions extends Options {
  readonly svg?: string;
}

export const brakesCommand: Command = {
  name: 'brakes',
  declare: (program, run) => {
    asksRecords(common(program.command('brakes <outing>')))
      .description(
        'The brakes closely: time to come on along the train, brake ratio, what slides first, reserve, leak.',
      )
      .option('--svg <file>', 'draw how they come on into a file')
      .action((path: string, options: BrakesOptions) => run((gate) => brakes(gate, path, options), options));
  },
};

async function brakes(gate: Gate, path: string, options: BrakesOptions) {
  const outing = await gate.outing(path);
  const voice = voiceOf(options, outing);
  const look = lookAtBrakes(outing);
  const parts = [
    ...brakeTables(look, voice).map(tableText),
    standingWords(look, voice).join('\n'),
    findingsText(look.findings, voice),
  ];
  if (options.svg) parts.push(await draw(options.svg, look, voice));
  return {
    text: paragraphs(parts),
    json: brakesJson(look, voice),
    exit: look.findings.some((f) => f.severity === 'unknown') ? 30 : 0,
  };
}

async function draw(file: string, { data }: BrakeLook, voice: Voice): Promise<string> {
  const fill = data.apply.find((f) => f.gears.length > 0);
  if (!fill) return 'Nothing drawn: no brake of this train has its parts described.';
  const scene = brakePlot(fill, {
    title: `${brakeKindWords(fill.kind)}: how it comes on along the train`,
    vehicle: (index) => vehicleAt(voice, index),
    time: (t) => brakeTime(voice, t),
  });
  return drawInto(file, scene);
}

function brakesJson({ findings, data }: BrakeLook, voice: Voice): unknown {
  const fills = (list: readonly TrainFill[]): unknown =>
    list.map((fill) => ({
      kind: fill.kind,
      missing: fill.missing.map((m) => ({
        vehicle: voice.outing.train.vehicles[m.vehicle].id,
        part: m.part,
      })),
      gears: fill.gears.map((g) => ({
        vehicle: voice.outing.train.vehicles[g.vehicle].id,
        gear: g.gear.id,
        t10: finite(g.t10),
        t90: finite(g.t90),
        full: finite(g.full),
        pressure: g.pressure,
        ofWorking: g.ofWorking,
        block: g.block,
        ...(g.recharged === undefined ? {} : { recharged: finite(g.recharged) }),
        curve: g.curve,
        assumed: g.assumed,
      })),
    }));
  const id = (vehicle: number): string => voice.outing.train.vehicles[vehicle].id;
  return {
    apply: fills(data.apply),
    release: fills(data.release),
    ratios: data.ratios.map((r) => ({
      vehicle: id(r.vehicle),
      group: voice.outing.train.vehicles[r.vehicle].groups[r.group].id,
      loaded: r.loaded,
      empty: r.empty,
    })),
    reserves: data.reserves.map(({ gear, vehicle, ...r }) => ({
      vehicle: id(vehicle),
      gear: gear?.id ?? null,
      ...r,
    })),
    standing: {
      ...data.standing,
      time: finite(data.standing.time),
      unmeasured: data.standing.unmeasured.map((u) => ({ vehicle: id(u.vehicle), gear: u.gear.id })),
    },
    losses: data.losses.map((l) => ({ vehicle: id(l.vehicle), gear: l.gear.id, ...l.loss })),
    findings: findings.map((f) => ({ ...f, words: tellFully(f, voice) })),
  };
}
