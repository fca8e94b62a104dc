/** The day by flags: the same changes as on the first screen of the workbench, and what they changed beside the file. */

import type { Command as Program } from 'commander';
import { type Asked, asking } from '../desk/asked.ts';
import {
  hasWayBack,
  kindWords,
  oneFewer,
  oneMore,
  type PeopleKind,
  peopleKinds,
  withDark,
  withDaylight,
  withOthers,
  withRail,
  withSky,
  withWayBack,
} from '../desk/day.ts';
import { type OtherTrains, type Outing, otherTrainsWays } from '../engine/outing/types.ts';
import { type RailState, railStates } from '../engine/things/rail.ts';
import { readOuting } from '../papers/index.ts';
import { tellRail } from '../words/rails.ts';
import { UsageFault } from './command.ts';
import { refusal } from './open.ts';

export interface DayFlags {
  readonly rail?: string;
  readonly dark?: boolean;
  readonly daylight?: boolean;
  readonly people?: string;
  readonly back?: boolean;
  readonly others?: string;
  readonly wind?: string;
  readonly heat?: string;
  readonly lightning?: boolean;
  readonly visibility?: string;
}

export const dayFlags = (program: Program): Program =>
  program
    .option('--rail <state>', `the rail today: ${railStates.join(', ')}`)
    .option('--back', 'the way back over a line with two ends, the engine leading')
    .option('--others <word>', `other trains on the line meanwhile: ${otherTrainsWays.join(', ')}`)
    .option('--dark', 'it runs after dark')
    .option('--daylight', 'it runs by daylight')
    .option('--visibility <distance>', 'how far is seen today, in fog or by the engine’s light, as "80 ft"')
    .option('--wind <gusts>', 'the strongest gust, as "12 mph"')
    .option('--heat <temperature>', 'of the air in the shade, as "88 F"')
    .option('--lightning', 'lightning is about')
    .option('--no-lightning', 'somebody looked and listened: none is about')
    .option('--people <changes>', 'who comes and goes: "+2", "+1 heavy, -2 child"');

export interface OtherDay {
  readonly asked: Asked;
  /** "rail wet", "2 adults more". */
  readonly words: readonly string[];
}

type Json = Record<string, unknown>;
type Step = (paper: Json, outing: Outing) => Json;

/** The outing as the flags have it; undefined: they say nothing. */
export async function otherDay(asked: Asked, flags: DayFlags): Promise<OtherDay | undefined> {
  const steps = stepsOf(flags);
  if (steps.length === 0) return undefined;
  if (asked.trials.length > 0)
    throw new UsageFault('the day: found a file with what is tried on it; expected an outing by itself');
  let paper = asked.paper as Json;
  let outing = asked.outing;
  for (const [step] of steps) {
    paper = step(paper, outing);
    const read = await readOuting({ path: 'outing', content: JSON.stringify(paper) }, async () => undefined);
    if (!read.ok) throw refusal(read.problems);
    outing = read.value;
  }
  return { asked: asking(paper, outing), words: [...new Set(steps.map(([, words]) => words))] };
}

function stepsOf({
  rail,
  back,
  others,
  dark,
  daylight,
  people,
  ...sky
}: DayFlags): (readonly [Step, string])[] {
  if (dark && daylight) throw new UsageFault('--dark and --daylight: found both; expected one');
  return [
    ...(rail === undefined ? [] : [railStep(rail)]),
    ...(back ? [[wayBackStep, 'way back'] as const] : []),
    ...(others === undefined ? [] : [othersStep(others)]),
    ...(dark ? [[(paper: Json) => withDark(paper, true), 'after dark'] as const] : []),
    ...(daylight ? [[withDaylight, 'by daylight'] as const] : []),
    ...skySteps(sky),
    ...(people === undefined ? [] : peopleSteps(people)),
  ];
}

const othersWords: Readonly<Record<OtherTrains, string>> = {
  none: 'no other train on the line',
  'same-way': 'other trains that run the same way',
  'either-way': 'other trains that come either way',
};

function othersStep(said: string): readonly [Step, string] {
  const others = otherTrainsWays.find((way) => way === said);
  if (others !== undefined) return [(paper) => withOthers(paper, others), othersWords[others]];
  throw new UsageFault(`--others: found "${said}"; expected ${otherTrainsWays.join(', ')}`);
}

const wayBackStep: Step = (paper, outing) => {
  if (hasWayBack(outing)) return withWayBack(paper);
  throw new UsageFault(
    '--back: found a line that goes round, a route that sets back, or a train that does not come back with its engine leading; expected a line with two ends',
  );
};

const skySteps = ({ visibility, wind, heat, lightning }: DayFlags): (readonly [Step, string])[] => [
  ...(visibility === undefined
    ? []
    : [[(paper: Json) => withSky(paper, { visibility }), `${visibility} seen`] as const]),
  ...(wind === undefined ? [] : [[(paper: Json) => withSky(paper, { wind }), `wind ${wind}`] as const]),
  ...(heat === undefined
    ? []
    : [[(paper: Json) => withSky(paper, { temperature: heat }), `heat ${heat}`] as const]),
  ...(lightning === undefined
    ? []
    : [
        [
          (paper: Json) => withSky(paper, { lightning }),
          lightning ? 'lightning about' : 'no lightning',
        ] as const,
      ]),
];

function railStep(rail: string): readonly [Step, string] {
  if (!railStates.includes(rail as RailState))
    throw new UsageFault(`--rail: found ${rail}; expected ${railStates.join(', ')}`);
  return [(paper) => withRail(paper, rail as RailState), `rail ${tellRail(rail as RailState)}`];
}

const CHANGE = /^\s*([+-]\d{1,3})\s*([a-z]*)\s*$/;

/** One step for each person. */
function peopleSteps(text: string): (readonly [Step, string])[] {
  return text.split(',').flatMap((part) => {
    const [, number, named = ''] = CHANGE.exec(part) ?? [];
    const kind = (named === '' ? 'adult' : named) as PeopleKind;
    if (number === undefined || !peopleKinds.includes(kind) || Number(number) === 0)
      throw new UsageFault(
        `--people: found "${part.trim()}"; expected a number with + or - and ${peopleKinds.join(', ')}, such as "+1 heavy"`,
      );
    const count = Math.abs(Number(number));
    const more = Number(number) > 0;
    const words = `${count} ${kindWords[kind][count === 1 ? 0 : 1]} ${more ? 'more' : 'fewer'}`;
    const step: Step = (paper, outing) => {
      const next = (more ? oneMore : oneFewer)(paper, outing, kind);
      if (next) return next;
      throw new UsageFault(
        `--people: found ${part.trim()}; ${more ? 'so many seats are not free on the cars' : `so many (${kindWords[kind][1]}) are not aboard`}`,
      );
    };
    return Array.from({ length: count }, () => [step, words] as const);
  });
}
