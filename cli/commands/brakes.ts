/** heedway brakes: how the brakes come on along the train, what slides first, what is in reserve. */
import { writeFile } from 'node:fs/promises';
import { brakePlot } from '../../desk/brake-plot.ts';
import { type BrakeLook, lookAtBrakes, slidesIn } from '../../desk/brakes.ts';
import { sceneToSvg } from '../../desk/strip/scene.ts';
import type { TrainFill } from '../../engine/brake/fill.ts';
import { isVacuumKind } from '../../engine/brake/system.ts';
import { printQuantity } from '../../units/index.ts';
import { tellFinding, tellRail } from '../../words/finding.ts';
import { brakeKindWords, outcomeWords } from '../../words/findings/brakes.ts';
import { chainage, say, trade, type Voice } from '../../words/voice.ts';
import { type Command, common, type Options, table, voiceOf } from '../command.ts';
import { openOutingFile } from '../open.ts';

interface BrakesOptions extends Options {
  readonly svg?: string;
}

export const brakesCommand: Command = {
  name: 'brakes',
  declare: (program, run) => {
    common(program.command('brakes <outing>'))
      .description(
        'The brakes closely: time to come on along the train, brake ratio, what slides first, reserve, leak.',
      )
      .option('--svg <file>', 'draw how they come on into a file')
      .action((path: string, options: BrakesOptions) => run(() => brakes(path, options), options));
  },
};

async function brakes(path: string, options: BrakesOptions) {
  const outing = await openOutingFile(path);
  const voice = voiceOf(options, outing);
  const look = lookAtBrakes(outing);
  const parts = [
    ...look.data.apply.map((fill, i) => fillText(fill, look.data.release[i], voice)),
    ratioText(look, voice),
    reserveText(look, voice),
    standingText(look, voice),
    lossText(look, voice),
    findingText(look, voice),
  ];
  if (options.svg) parts.push(await draw(options.svg, look, voice));
  return {
    text: parts.filter((p) => p !== '').join('\n\n'),
    json: brakesJson(look, voice),
    exit: look.findings.some((f) => f.severity === 'unknown') ? 30 : 0,
  };
}

const nameOf = (voice: Voice, index: number): string => voice.outing.train.vehicles[index].name;

const seconds = ({ system }: Voice, time: number | undefined): string => {
  if (time === undefined) return '';
  return Number.isFinite(time)
    ? printQuantity(time, 'time', { system, toward: 'up', digits: 2 })
    : 'not reached';
};

function fillText(fill: TrainFill, release: TrainFill, voice: Voice): string {
  const kind = brakeKindWords(fill.kind);
  if (fill.gears.length === 0) return `${kind}: how it fills cannot be told, parts are missing.`;
  const pressure = isVacuumKind(fill.kind) ? 'vacuum' : 'gaugePressure';
  const recharges = release.gears.some((g) => g.recharged !== undefined);
  const rows = fill.gears.map((g) => {
    const off = release.gears.find((r) => r.vehicle === g.vehicle && r.gear === g.gear);
    return [
      nameOf(voice, g.vehicle),
      seconds(voice, g.t10),
      seconds(voice, g.t90),
      seconds(voice, g.full),
      say(voice, { si: g.pressure, kind: pressure }, 'down'),
      `${Math.floor(g.ofWorking * 100)} %`,
      say(voice, { si: g.block, kind: 'force' }, 'down'),
      seconds(voice, off?.t90),
      ...(recharges ? [seconds(voice, off?.recharged)] : []),
    ];
  });
  const byRule = [...new Set(fill.gears.flatMap((g) => g.assumed))];
  return [
    `${kind}, applied fully: times of the air alone, from the handle`,
    table([
      [
        '',
        '10 %',
        '90 %',
        'full',
        'in cylinder',
        'of stated force',
        'at blocks',
        'released',
        ...(recharges ? ['recharged'] : []),
      ],
      ...rows,
    ]),
    ...(byRule.length > 0 ? [`Taken by rule, not measured: ${byRule.join(', ')}.`] : []),
  ].join('\n');
}

function ratioText({ data }: BrakeLook, voice: Voice): string {
  if (data.ratios.length === 0) return 'No brake answers the driver.';
  const { outing } = voice;
  return [
    'Brake ratio (force on the rail ÷ weight), first to slide on top',
    table([
      ['', trade(voice.wording, 'truck'), 'loaded', 'empty', 'may slide when', 'empty when'],
      ...data.ratios.map((r) => [
        nameOf(voice, r.vehicle),
        outing.train.vehicles[r.vehicle].groups[r.group].name,
        say(voice, { si: r.loaded, kind: 'ratio' }, 'up'),
        say(voice, { si: r.empty, kind: 'ratio' }, 'up'),
        slidesIn(outing, r.loaded).map(tellRail).join(', ') || 'never',
        slidesIn(outing, r.empty).map(tellRail).join(', ') || 'never',
      ]),
    ]),
  ].join('\n');
}

function reserveText({ data }: BrakeLook, voice: Voice): string {
  if (data.reserves.length === 0) return '';
  return [
    'Applications without recharging',
    table([
      ['', 'full', 'useful', 'pressure after 1st', '2nd', '3rd'],
      ...data.reserves.map((r) => [
        r.gear ? nameOf(voice, r.vehicle) : `${nameOf(voice, r.vehicle)}, main reservoir`,
        `${r.full}`,
        `${r.useful}`,
        ...[0, 1, 2].map((i) =>
          r.pressures[i] === undefined
            ? ''
            : say(voice, { si: r.pressures[i], kind: 'gaugePressure' }, 'down'),
        ),
      ]),
    ]),
  ].join('\n');
}

function standingText({ data }: BrakeLook, voice: Voice): string {
  const { pull, at, parking, tight, time, unmeasured, parkingGrade } = data.standing;
  const force = (si: number, toward: 'up' | 'down'): string => say(voice, { si, kind: 'force' }, toward);
  const held =
    time === Infinity
      ? 'It stands by what does not leak.'
      : time > 0
        ? `It stands for ${Math.floor(time / 60)} min ${Math.floor(time % 60)} s, then the brakes have leaked too far.`
        : unmeasured.length > 0
          ? 'How long it stands cannot be told: a leak was not measured.'
          : 'It does not stand.';
  const grade = trade(voice.wording, 'grade');
  return [
    `Standing: the worst place (${chainage(voice, at)}) pulls with ${force(pull, 'up')}; parking brakes hold ${force(parking, 'down')}, all brakes ${force(tight, 'down')}.`,
    held,
    `Parking brakes alone hold this train on a ${grade} of ${say(voice, { si: parkingGrade, kind: 'grade' }, 'down')} at the most.`,
  ].join('\n');
}

function lossText({ data }: BrakeLook, voice: Voice): string {
  if (data.losses.length === 0) return '';
  return [
    'Without what works it',
    table([
      ['', 'brake', 'hose or cable parts', 'engine fails'],
      ...data.losses.map(({ vehicle, gear, loss }) => [
        nameOf(voice, vehicle),
        gear.name,
        outcomeWords[loss.parted],
        outcomeWords[loss.engineFails],
      ]),
    ]),
  ].join('\n');
}

function findingText({ findings }: BrakeLook, voice: Voice): string {
  return findings
    .map((f, i) => {
      const told = tellFinding(f, voice);
      const measure = told.measure ? `\n   Measure: ${told.measure}` : '';
      return `${i + 1}. ${told.what}\n   ${told.why}\n   Source: ${told.source}.${measure}`;
    })
    .join('\n');
}

async function draw(file: string, { data }: BrakeLook, voice: Voice): Promise<string> {
  const fill = data.apply.find((f) => f.gears.length > 0);
  if (!fill) return 'Nothing drawn: no brake of this train has its parts described.';
  const scene = brakePlot(fill, {
    title: `${brakeKindWords(fill.kind)}: how it comes on along the train`,
    vehicle: (index) => nameOf(voice, index),
    time: (t) => seconds(voice, t),
  });
  await writeFile(file, sceneToSvg(scene));
  return `Drawn into ${file}`;
}

function brakesJson({ findings, data }: BrakeLook, voice: Voice): unknown {
  const finite = (x: number | undefined): number | null => (x !== undefined && Number.isFinite(x) ? x : null);
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
    findings: findings.map((f) => ({ ...f, words: tellFinding(f, voice) })),
  };
}
