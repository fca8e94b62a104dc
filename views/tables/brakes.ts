/** The brakes as tables of words, the same on the screen, in the terminal and on paper. */

import { type BrakeLook, slidesIn } from '../../desk/brakes.ts';
import type { TrainFill } from '../../engine/things/brake/fill.ts';
import { isVacuumKind } from '../../engine/things/brake/kinds/index.ts';
import { printQuantity } from '../../units/index.ts';
import { describedAt, fieldLabel } from '../../words/field.ts';
import { brakeKindWords, outcomeWords } from '../../words/findings/brakes.ts';
import { tellRail } from '../../words/rails.ts';
import type { WordTable } from '../../words/table.ts';
import { chainage, say, trade, type Voice, vehicleAt } from '../../words/voice.ts';

/** A time of the brakes, to a hundredth of a second, never too short. */
export const brakeTime = ({ system }: Pick<Voice, 'system'>, time: number | undefined): string => {
  if (time === undefined) return '';
  return Number.isFinite(time)
    ? printQuantity(time, 'time', { system, toward: 'up', digits: 2 })
    : 'not reached';
};

/** All tables there are something to say in, in reading order. */
export const brakeTables = (look: BrakeLook, voice: Voice): readonly WordTable[] =>
  [
    ...look.data.apply.map((fill, i) => fillTable(fill, look.data.release[i], voice)),
    ratioTable(look, voice),
    reserveTable(look, voice),
    lossTable(look, voice),
  ].filter((t) => t.rows.length > 0 || t.note !== undefined);

function fillTable(fill: TrainFill, release: TrainFill, voice: Voice): WordTable {
  const kind = brakeKindWords(fill.kind);
  const pressure = isVacuumKind(fill.kind) ? 'vacuum' : 'gaugePressure';
  const recharges = release.gears.some((g) => g.recharged !== undefined);
  const rows = fill.gears.map((g) => {
    const off = release.gears.find((r) => r.vehicle === g.vehicle && r.gear === g.gear);
    return [
      vehicleAt(voice, g.vehicle),
      brakeTime(voice, g.t10),
      brakeTime(voice, g.t90),
      brakeTime(voice, g.full),
      say(voice, { si: g.pressure, kind: pressure }, 'down'),
      `${Math.floor(g.ofWorking * 100)} %`,
      say(voice, { si: g.block, kind: 'force' }, 'down'),
      brakeTime(voice, off?.t90),
      ...(recharges ? [brakeTime(voice, off?.recharged)] : []),
    ];
  });
  const byRule = [...new Set(fill.gears.flatMap((g) => g.assumed))];
  const unknown = fill.gears.length === 0 ? 'How it fills cannot be told: parts are missing.' : undefined;
  const note =
    unknown ??
    (byRule.length > 0
      ? `Taken by rule, not measured: ${byRule.map((key) => partWords(key, voice)).join(', ')}.`
      : undefined);
  const last = recharges ? ['recharged'] : [];
  return {
    title: `${kind}, applied fully: times of the air alone, from the handle`,
    head: ['', '10 %', '90 %', 'full', 'in cylinder', 'of stated force', 'at blocks', 'released', ...last],
    rows,
    ...(note === undefined ? {} : { note }),
  };
}

/** A part by the name that it has on its vehicle's paper. */
function partWords(key: string, voice: Voice): string {
  const about = describedAt(`vehicle.brakes.rigging.${key}`);
  return about ? fieldLabel(about, voice.wording) : key;
}

function ratioTable({ data }: BrakeLook, voice: Voice): WordTable {
  const { outing } = voice;
  return {
    title: 'Brake ratio (force on the rail ÷ weight), first to slide on top',
    head: ['', trade(voice.wording, 'truck'), 'loaded', 'empty', 'may slide when', 'empty when'],
    rows: data.ratios.map((r) => [
      vehicleAt(voice, r.vehicle),
      outing.train.vehicles[r.vehicle].groups[r.group].name,
      say(voice, { si: r.loaded, kind: 'ratio' }, 'up'),
      say(voice, { si: r.empty, kind: 'ratio' }, 'up'),
      slidesIn(outing, r.loaded).map(tellRail).join(', ') || 'never',
      slidesIn(outing, r.empty).map(tellRail).join(', ') || 'never',
    ]),
    ...(data.ratios.length === 0 ? { note: 'No brake answers the driver.' } : {}),
  };
}

function reserveTable({ data }: BrakeLook, voice: Voice): WordTable {
  const pressure = (si: number | undefined): string =>
    si === undefined ? '' : say(voice, { si, kind: 'gaugePressure' }, 'down');
  return {
    title: 'Applications without recharging',
    head: ['', 'full', 'useful', 'pressure after 1st', '2nd', '3rd'],
    rows: data.reserves.map((r) => [
      r.gear ? vehicleAt(voice, r.vehicle) : `${vehicleAt(voice, r.vehicle)}, main reservoir`,
      `${r.full}`,
      `${r.useful}`,
      ...[0, 1, 2].map((i) => pressure(r.pressures[i])),
    ]),
  };
}

function lossTable({ data }: BrakeLook, voice: Voice): WordTable {
  return {
    title: 'Without what works it',
    head: ['', 'brake', 'hose or cable parts', 'engine fails'],
    rows: data.losses.map(({ vehicle, gear, loss }) => [
      vehicleAt(voice, vehicle),
      brakeKindWords(gear.name),
      outcomeWords[loss.parted],
      outcomeWords[loss.engineFails],
    ]),
  };
}

/** How the train stands, in sentences. */
export function standingWords({ data }: BrakeLook, voice: Voice): readonly string[] {
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
  ];
}
